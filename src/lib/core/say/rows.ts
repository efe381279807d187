/** Says what is worked on each needle in one row. */

import type { Row, Step } from '../model/fabric.ts';
import type { Operation } from '../model/operation.ts';
import { wrap } from '../model/ring.ts';

/**
 * The work of one row, needle by needle in the order of the needles; "" for a needle that is not worked.
 *
 * @param breaks - Breaks of the ring before the row, in the order of the needles.
 */
export function sayRow(row: Row, breaks: readonly number[]): string[] {
  const stitches = row.before.stitches.length;
  const byNeedle: Step[][] = breaks.map(() => []);
  for (const step of row.steps) byNeedle[needleOf(step, breaks, stitches)]?.push(step);
  return byNeedle.map((steps) => fold(steps.map((step) => step.operation)));
}

// A step belongs to the needle of its first stitch; what is made exactly at a break belongs to the later needle.
function needleOf(step: Step, breaks: readonly number[], stitches: number): number {
  let found = 0;
  let nearest = Infinity;
  breaks.forEach((from, index) => {
    const distance = wrap(step.from - from, stitches);
    if (distance < nearest) {
      nearest = distance;
      found = index;
    }
  });
  return found;
}

/** Neighbouring equal operations as one: "k8, p2, 3/3 RC, p1". */
function fold(operations: readonly Operation[]): string {
  const runs: { operation: Operation; times: number }[] = [];
  for (const operation of operations) {
    const last = runs.at(-1);
    if (last && last.operation.name === operation.name) last.times += 1;
    else runs.push({ operation, times: 1 });
  }
  return runs.map(({ operation, times }) => sayTimes(operation, times)).join(', ');
}

const COUNTED = new Set(['knit', 'purl', 'pick-up', 'cast-on', 'bind-off', 'slip']);

// k8 and p2 carry their number; any other operation that is repeated says how often.
function sayTimes(operation: Operation, times: number): string {
  const { name, family } = operation;
  if (COUNTED.has(family)) return /^[kp]$/u.test(name) ? `${name}${times}` : `${name} ${times}`;
  return times === 1 ? name : `[${name}] ${times} times`;
}
