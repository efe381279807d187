/** A layout followed through the rows of a stage, and the passes of each row over its needles. */

import type { Row, Stage, StatedLayout } from '../model/fabric.ts';
import { followGaps } from '../model/follow.ts';
import type { Layout } from '../model/layout.ts';
import { wrap } from '../model/ring.ts';

/**
 * Breaks of every row: entry `r` holds for the ring before row `r`, the last entry for the exit ring. Needle `i` begins
 * at the break with index `i`; the order of the needles never changes, though a moved BOR may turn the numbers round.
 * `relaid`: layouts that hold from their row on instead of what follows from the rows before; their numbers begin at the BOR.
 */
export function breaksByRow(
  stage: Stage,
  layout: Layout,
  relaid: readonly StatedLayout[] = []
): readonly (readonly number[])[] {
  const result: (readonly number[])[] = [layout.breaks];
  stage.rows.forEach((row, index) => {
    const followed = breaksAfter(row, result.at(-1)!);
    const told = relaid.find((stated) => stated.row === index + 1);
    result.push(told ? told.breaks : followed);
  });
  return result;
}

/** Breaks of the ring after a row, in the order of the needles. */
export function breaksAfter(row: Row, breaks: readonly number[]): number[] {
  const path = followGaps(row);
  return breaks.map((gap) => wrap(path.to[gap] ?? 0, row.after.stitches.length));
}

/** Stitches on each needle, in the order of the needles, for breaks in a ring of so many stitches. */
export function loadsBetween(breaks: readonly number[], stitches: number): number[] {
  if (breaks.length === 1) return [stitches];
  return breaks.map((from, index) => wrap(breaks[(index + 1) % breaks.length]! - from, stitches));
}

/** Index of the needle that holds the stitch at a position. */
export function needleAt(breaks: readonly number[], position: number, stitches: number): number {
  const loads = loadsBetween(breaks, stitches);
  const found = breaks.findIndex((from, index) => wrap(position - from, stitches) < loads[index]!);
  return Math.max(found, 0);
}

/**
 * The needles in the order in which a row works them. A round works all, beginning with the needle at its start; a flat
 * row those that carry its run, backwards on the wrong side.
 */
export function passesOf(row: Row, breaks: readonly number[]): number[] {
  const stitches = row.before.stitches.length;
  if (stitches === 0) return [];
  const first = needleAt(breaks, wrap(row.run.from, stitches), stitches);
  if (row.shape === 'round') {
    const start = needleAt(breaks, row.start, stitches);
    return breaks.map((_, index) => (start + index) % breaks.length);
  }
  const last = needleAt(breaks, wrap(row.run.to - 1, stitches), stitches);
  const count = wrap(last - first, breaks.length) + 1;
  const needles = Array.from({ length: count }, (_, index) => (first + index) % breaks.length);
  return row.side === 'RS' ? needles : needles.reverse();
}
