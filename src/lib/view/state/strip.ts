/** Where everything stands on the break strip: one step of the strip for each stitch, from the beginning of round. */

import type { Layout } from '$lib/core/index.ts';
import type { RingOutline } from './answers/question.ts';

/** Least width of a stitch on the strip, in pixels; a narrower page scrolls. */
const LEAST_STEP = 8;
/** Room at either end, for the first and last handle. */
const END = 22;
/** Height of the tallest bar. */
export const BAR_HEIGHT = 56;

/** The bar of one gap, or of neighbouring gaps where no break can be. */
export interface Bar {
  /** The first gap. */
  readonly gap: number;
  /** Left edge. */
  readonly x: number;
  readonly width: number;
  /** 0 for a free gap. */
  readonly height: number;
  /** True where no break can be. */
  readonly cut: boolean;
  readonly title: string;
}

/** The label of a section or the sign of a marker. */
export interface StripLabel {
  readonly name: string;
  readonly x: number;
  readonly width: number;
}

/** The handle of a break. */
export interface Handle {
  /** Number of the break, from 1. */
  readonly number: number;
  readonly gap: number;
  readonly x: number;
  /** "break 2 after stitch 33, pays 0". */
  readonly words: string;
}

/** Everything to draw. */
export interface StripView {
  readonly width: number;
  /** Width of one stitch. */
  readonly step: number;
  readonly bars: readonly Bar[];
  readonly sections: readonly StripLabel[];
  readonly markers: readonly StripLabel[];
  readonly handles: readonly Handle[];
  /** Stitches of each needle, at the middle of its stretch. A needle across the BOR stands at its longer part. */
  readonly loads: readonly StripLabel[];
}

/** What the strip shows. */
export interface StripRequest {
  readonly ring: RingOutline;
  /** What a break at each gap pays; Infinity where none can be. */
  readonly prices: readonly number[];
  readonly layout: Layout;
  /** Width that there is, in pixels. */
  readonly room: number;
}

/** Lays the strip out. */
export function viewStrip({ ring, prices, layout, room }: StripRequest): StripView {
  const { stitches } = ring;
  const step = Math.max(LEAST_STEP, (room - 2 * END) / Math.max(stitches, 1));
  const at = (gap: number) => round(END + gap * step);
  const highest = Math.max(1, ...prices.filter(Number.isFinite));
  return {
    width: round(2 * END + stitches * step),
    step,
    bars: joinCuts(prices.map((price, gap) => barOf(price, { gap, x: at(gap), step, highest }))),
    sections: ring.sections.map(({ name, from, to }) => ({
      name: `${name} ${to - from}`,
      x: at(from),
      width: at(to) - at(from)
    })),
    markers: ring.markers.map(({ name, at: gap }) => ({ name, x: at(gap), width: 0 })),
    handles: layout.breaks.map((gap, index) => ({
      number: index + 1,
      gap,
      x: at(gap),
      words: sayBreak(index + 1, gap, prices[gap])
    })),
    loads: loadLabels(layout, stitches, at)
  };
}

/** The gap nearest to a place on the strip. */
export function gapAt(x: number, view: Pick<StripView, 'step'>): number {
  return Math.round((x - END) / view.step);
}

/** The layout with one break at another gap. A break stops one stitch short of its neighbours and of the strip's ends. */
export function moveBreak(
  layout: Layout,
  change: { readonly index: number; readonly to: number; readonly stitches: number }
): Layout {
  const { breaks } = layout;
  const { index, to, stitches } = change;
  const least = (breaks[index - 1] ?? -1) + 1;
  const most = (breaks[index + 1] ?? stitches) - 1;
  return { breaks: breaks.with(index, Math.max(least, Math.min(most, to))) };
}

function barOf(price: number, place: { gap: number; x: number; step: number; highest: number }): Bar {
  const cut = isCut(price);
  const height = cut ? BAR_HEIGHT : round((BAR_HEIGHT * price) / place.highest);
  const width = cut ? place.step : Math.max(2, Math.min(10, place.step * 0.5));
  const x = round(place.x - width / 2);
  return { gap: place.gap, x, width: round(width), height, cut, title: `${sayPlace(place.gap)}: ${sayPrice(price)}` };
}

// Neighbouring gaps where no break can be make one bar.
function joinCuts(bars: readonly Bar[]): Bar[] {
  const joined: Bar[] = [];
  for (const bar of bars) {
    const last = joined.at(-1);
    if (bar.cut && last?.cut) joined.push({ ...joined.pop()!, width: round(bar.x + bar.width - last.x) });
    else joined.push(bar);
  }
  return joined.filter(({ height }) => height > 0);
}

function isCut(price: number): boolean {
  return !Number.isFinite(price);
}

/** "after stitch 33", or "at the beginning of round". */
export function sayPlace(gap: number): string {
  return gap === 0 ? 'at the beginning of round' : `after stitch ${gap}`;
}

function sayPrice(price = 0): string {
  return isCut(price) ? 'cannot be' : `pays ${price}`;
}

function sayBreak(number: number, gap: number, price: number | undefined): string {
  return `break ${number} ${sayPlace(gap)}, ${sayPrice(price)}`;
}

function loadLabels(layout: Layout, stitches: number, at: (gap: number) => number): StripLabel[] {
  const { breaks } = layout;
  return breaks.map((from, index) => {
    const to = breaks[index + 1] ?? breaks[0]! + stitches;
    const [left, right] =
      to <= stitches || stitches - from >= to - stitches ? [from, Math.min(to, stitches)] : [0, to - stitches];
    return { name: `N${index + 1} ${to - from}`, x: at(left), width: at(right) - at(left) };
  });
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
