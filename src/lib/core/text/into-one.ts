/** Several stitches worked into one: (k1, p1, k1) in next st. */

import type { Instruction } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import type { ReadInner } from './instructions.ts';

const STITCH_WORDS = ['st', 'stitch'];

/** Reads a bracket that is followed by "in next st". */
export function readIntoOne(at: Cursor, readInner: ReadInner): readonly Instruction[] | null {
  return at.attempt(() => {
    const first = at.at;
    const end = at.partner;
    if (at.peek()?.kind !== 'open' || end < 0) return null;
    const from = at.at + 1;
    at.at = end + 1;
    if (!readInto(at)) return null;
    const body = readInner(at.within(from, end), () => false);
    return body.failed ? [] : [{ kind: 'into-one', body: body.instructions, span: at.span(first) }];
  });
}

// "in next st", "into the same st", "all in next stitch".
function readInto(at: Cursor): boolean {
  at.skip('all');
  if (!at.take('in', 'into')) return false;
  at.skip('the');
  return at.skip('next', 'same', '1', 'one', 'each') && at.take(...STITCH_WORDS) !== null;
}
