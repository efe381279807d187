/** Lays text out on invented pages, as a printer would: every letter half as wide as its font is large. */

import type { Item, Page } from '$lib/opening/index.ts';

/** Where lines are set. Lengths are points. */
export interface Place {
  readonly x?: number;
  readonly y?: number;
  readonly fontSize?: number;
  /** Distance of baselines; 1.3 times the font size when left out. */
  readonly leading?: number;
  readonly bold?: boolean;
}

/** One piece of text. */
export function piece(text: string, place: Place = {}): Item {
  const { x = 50, y = 200, fontSize = 10, bold = false } = place;
  return { text, x, y, width: text.length * fontSize * 0.5, height: fontSize, fontSize, bold };
}

/** Lines below each other, one piece for every word; "" leaves a line empty. */
export function lines(texts: readonly string[], place: Place = {}): Item[] {
  const { x = 50, y = 200, fontSize = 10, leading = fontSize * 1.3 } = place;
  return texts.flatMap((text, row) => {
    let column = 0;
    return text.split(' ').flatMap((word) => {
      const at = x + column * fontSize * 0.5;
      column += word.length + 1;
      return word === '' ? [] : [piece(word, { ...place, x: at, y: y + row * leading })];
    });
  });
}

/** A page of 600 by 800 points. */
export function page(...items: readonly (Item | readonly Item[])[]): Page {
  return { width: 600, height: 800, items: items.flat() };
}
