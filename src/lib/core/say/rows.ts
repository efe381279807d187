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
  const needles = needleOfGaps(breaks, stitches);
  for (const step of row.steps) byNeedle[needles[wrap(step.from, stitches)] ?? 0]?.push(step);
  return byNeedle.map((steps) => fold(steps.map((step) => step.operation)));
}

// A step belongs to the needle of its first stitch; what is made exactly at a break belongs to the later needle. A needle
// that has been emptied begins where the next one does and gets nothing.
function needleOfGaps(breaks: readonly number[], stitches: number): number[] {
  const needles = new Array<number>(stitches).fill(0);
  breaks.forEach((from, index) => {
    const to = breaks[(index + 1) % breaks.length]!;
    const load = breaks.length === 1 ? stitches : wrap(to - from, stitches);
    for (let offset = 0; offset < load; offset += 1) needles[wrap(from + offset, stitches)] = index;
  });
  return needles;
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
