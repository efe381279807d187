/** Colours of each theme, by role. Hex only: every renderer of the drawing understands them. */

import type { NeedleState, Theme } from '$lib/core/index.ts';

/** How a piece of yarn is drawn: a line in a line. */
export interface Thread {
  /** Outline. */
  readonly edge: string;
  readonly fill: string;
  /** A thin broken line along the middle, or none. */
  readonly core: string | null;
}

/** How a needle is drawn. */
export interface Shaft {
  readonly fill: string;
  readonly line: string;
  /** Width of the outline. */
  readonly width: number;
  readonly dashes: string | null;
  /** A thin line along the middle that sets it off in print, or none. */
  readonly core: string | null;
}

/** Everything that has a colour. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly graphite: string;
  readonly rule: string;
  /** Yarn tones; sections take them in turn. */
  readonly threads: readonly Thread[];
  readonly shafts: Readonly<Record<NeedleState, Shaft>>;
}

function thread(fill: string, edge: string, core: string | null = null): Thread {
  return { fill, edge, core };
}

function shaft(fill: string, line: string, width: number, dashes: string | null = null): Shaft {
  return { fill, line, width, dashes, core: null };
}

/** The palettes. */
export const PALETTES: Readonly<Record<Theme, Palette>> = {
  light: {
    paper: '#f7f5f0',
    ink: '#26241f',
    graphite: '#5c574d',
    rule: '#8c8576',
    threads: [
      thread('#c6b593', '#7a6a4b'),
      thread('#93825f', '#51462f'),
      thread('#e2d9c6', '#9d8f74'),
      thread('#6f6149', '#38301f'),
      thread('#b09c7c', '#665739')
    ],
    shafts: {
      feeding: shaft('#26241f', '#26241f', 1),
      working: shaft('#fdfcf9', '#26241f', 1.6),
      holding: shaft('#d3cbbb', '#26241f', 1.1),
      resting: shaft('#ece7dc', '#8c8576', 0.9),
      free: shaft('#f7f5f0', '#5c574d', 1, '4 2.6')
    }
  },
  dark: {
    paper: '#1d1b18',
    ink: '#ece7dc',
    graphite: '#b3ac9e',
    rule: '#857e70',
    threads: [
      thread('#b5a482', '#100f0d'),
      thread('#87754f', '#100f0d'),
      thread('#ddd3be', '#2a261f'),
      thread('#6a5e47', '#0c0b0a'),
      thread('#988667', '#100f0d')
    ],
    shafts: {
      feeding: shaft('#ece7dc', '#ece7dc', 1),
      working: shaft('#1d1b18', '#ece7dc', 1.6),
      holding: shaft('#575043', '#b3ac9e', 1.1),
      resting: shaft('#2b2823', '#857e70', 0.9),
      free: shaft('#1d1b18', '#b3ac9e', 1, '4 2.6')
    }
  },
  print: {
    paper: '#ffffff',
    ink: '#000000',
    graphite: '#000000',
    rule: '#000000',
    threads: [
      thread('#ffffff', '#000000'),
      thread('#000000', '#ffffff'),
      thread('#ffffff', '#000000', '#000000'),
      thread('#000000', '#ffffff', '#ffffff'),
      thread('#ffffff', '#000000')
    ],
    shafts: {
      feeding: shaft('#000000', '#000000', 1),
      working: shaft('#ffffff', '#000000', 1.7),
      holding: { ...shaft('#ffffff', '#000000', 0.9), core: '#000000' },
      resting: shaft('#ffffff', '#000000', 0.5),
      free: shaft('#ffffff', '#000000', 0.8, '4 2.6')
    }
  }
};

/** The colour at a share of the way from one to another. */
export function mixColours(start: string, end: string, share: number): string {
  const [one, other] = [channels(start), channels(end)];
  const mixed = one.map((value, index) => Math.round(value + (other[index]! - value) * share));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

function channels(colour: string): number[] {
  return [1, 3, 5].map((start) => Number.parseInt(colour.slice(start, start + 2), 16));
}
