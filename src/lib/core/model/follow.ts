/** Follows gaps through a row: where each gap of the ring before stands in the ring after, and what cuts it. */

import type { Row, Step } from './fabric.ts';
import { wrap } from './ring.ts';

/** Where the gaps of a ring go in one row. */
export interface GapPath {
  /** For each gap 0 to n - 1 of the ring before, its gap in the ring after. */
  readonly to: readonly number[];
  /** For each gap, the index of the step that cuts it, or -1. */
  readonly cutBy: readonly number[];
}

/**
 * Follows every gap of the ring through a row.
 *
 * A step that takes stitches on both sides of a gap cuts it; what the step makes then stays with the stitches before the
 * gap (the trade's convention for a decrease at a needle change). Stitches made exactly in a gap, by a yarn-over or a
 * make-one, come after it: they belong to the later needle. Only what is made at the very end of a row, as when stitches
 * are picked up there, stays on the needle that has just been filled. Time and memory grow with the ring.
 */
export function followGaps(row: Row): GapPath {
  const known = FOLLOWED.get(row);
  if (known) return known;
  const path = follow(row);
  FOLLOWED.set(row, path);
  return path;
}

// A row never changes, and every layout of it asks.
const FOLLOWED = new WeakMap<Row, GapPath>();

function follow(row: Row): GapPath {
  const before = row.before.stitches.length;
  const after = row.after.stitches.length;
  const to = new Array<number>(before).fill(-1);
  const cutBy = new Array<number>(before).fill(-1);
  const lastTaking = row.steps.findLastIndex((step) => step.takes > 0);
  for (const index of stepsInRingOrder(row)) {
    const step = row.steps[index]!;
    const gap = wrap(step.from, before);
    if (index > lastTaking && (step.from !== row.start || endsRing(step, gap))) continue;
    if (to[gap] === -1) to[gap] = wrap(step.at, after);
    for (let offset = 1; offset < step.takes; offset += 1) {
      const inside = wrap(step.from + offset, before);
      to[inside] = wrap(step.at + step.makes, after);
      cutBy[inside] = index;
    }
  }
  return { to: withResting(row, to), cutBy };
}

// A row that only makes stitches begins and ends in one gap; at the BOR they may lie behind all others: made at the end.
function endsRing(step: Step, gap: number): boolean {
  return gap === 0 && step.at > 0;
}

function stepsInRingOrder(row: Row): number[] {
  const indices = row.steps.map((_, index) => index);
  return row.side === 'WS' ? indices.reverse() : indices;
}

// Gaps that no step starts in move along with the untouched stitch after them, or else before them.
function withResting(row: Row, to: readonly number[]): number[] {
  if (!to.includes(-1)) return [...to];
  const positions = new Map(row.after.stitches.map((stitch, position) => [stitch.id, position]));
  const found = (position: number) => positions.get(row.before.stitches[wrap(position, to.length)]!.id);
  return to.map((gap, index) => {
    if (gap >= 0) return gap;
    const next = found(index);
    if (next !== undefined) return next;
    const previous = found(index - 1);
    return previous === undefined ? 0 : wrap(previous + 1, row.after.stitches.length);
  });
}
