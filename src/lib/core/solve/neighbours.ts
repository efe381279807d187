/** What the steps on either side of a gap are, in ring order. */

import type { RepeatStretch, Row, Step } from '../model/fabric.ts';
import { wrap } from '../model/ring.ts';

/** The steps next to each gap of the ring before a row. */
export interface Neighbours {
  /** First step at or after the gap, one made in the gap included; `null` where nothing is worked. */
  readonly first: readonly (Step | null)[];
  /** Last step that takes the stitch before the gap. */
  readonly last: readonly (Step | null)[];
  /** The widest repeat around or at the gap, or `null`. */
  readonly repeat: readonly (RepeatStretch | null)[];
}

/** Finds the neighbours of every gap of a row. */
export function neighboursOf(row: Row): Neighbours {
  const stitches = row.before.stitches.length;
  const first = new Array<Step | null>(stitches).fill(null);
  const last = new Array<Step | null>(stitches).fill(null);
  const steps = row.side === 'RS' ? row.steps : [...row.steps].reverse();
  for (const step of steps) {
    const gap = wrap(step.from, stitches);
    first[gap] ??= step;
    for (let offset = 1; offset <= step.takes; offset += 1) last[wrap(step.from + offset, stitches)] = step;
  }
  return { first, last, repeat: repeatsAt(row, stitches) };
}

function repeatsAt(row: Row, stitches: number): (RepeatStretch | null)[] {
  const repeat = new Array<RepeatStretch | null>(stitches).fill(null);
  const narrowFirst = [...row.repeats].sort((left, right) => left.to - left.from - (right.to - right.from));
  for (const stretch of narrowFirst) {
    if (stretch.to - stretch.from < 2 * stretch.unit || stretch.unit < 2) continue;
    for (let gap = stretch.from; gap < stretch.to; gap += 1) repeat[wrap(gap, stitches)] = stretch;
  }
  return repeat;
}
