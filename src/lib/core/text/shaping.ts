/** Increases and decreases that the text leaves to the knitter to space: "inc 6 sts evenly", "dec 4 sts evenly around". */

import type { Instruction } from '../model/pattern.ts';
import type { Operation } from '../model/operation.ts';
import { operationNamed } from '../model/operations.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';

const MORE = ['inc', 'increase', 'increasing', 'm'];
const FEWER = ['dec', 'decrease', 'decreasing'];

/** Reads an evenly spaced increase or decrease. */
export function readEvenly(at: Cursor): Instruction | null {
  return at.attempt(() => {
    const first = at.at;
    const verb = at.take(...MORE, ...FEWER)?.text;
    if (!verb || (verb === 'm' && at.peek()?.glued)) return null;
    const count = readCount(at);
    if (!count) return null;
    at.skip('st', 'sts', 'stitch', 'stitches');
    if (!at.take('evenly') && !at.phrase('spaced evenly')) return null;
    at.skip('spaced', 'around', 'across', 'the', 'rnd', 'round', 'row', 'in', 'over', 'this');
    return { kind: 'evenly', operation: standardFor(at, FEWER.includes(verb)), count, span: at.span(first) };
  });
}

// The key of the pattern may say what "inc" and "dec" mean in it.
function standardFor(at: Cursor, fewer: boolean): Operation {
  const own = at.scope.key.find((entry) => entry.atoms.join(' ') === (fewer ? 'dec' : 'inc'));
  return own?.operation ?? operationNamed(fewer ? 'k2tog' : 'm1')!;
}
