/** Cables over a number of stitches that differs from size to size: C6 (8, 12) B. */

import type { Instruction } from '../model/pattern.ts';
import { operationNamed } from '../model/operations.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';

/** Reads such a name as one instruction for each size. */
export function readSizedCable(at: Cursor): readonly Instruction[] | null {
  return at.attempt(() => {
    const first = at.at;
    const letters = at.take('c', 't', 'cr', 'tw')?.text;
    if (letters === undefined || !at.peek()?.glued) return null;
    const totals = readCount(at);
    const end = at.take('f', 'b', 'l', 'r')?.text;
    if (!totals || totals.length < 2 || end === undefined) return null;
    const span = at.span(first);
    const instructions = totals.map((total, size): Instruction | null => {
      const operation = total === null ? null : operationNamed(`${letters}${total}${end}`);
      const count = totals.map((_, other) => (other === size ? 1 : null));
      return operation && { kind: 'work', operation, count, span };
    });
    const known = instructions.filter((instruction) => instruction !== null);
    return known.length > 0 ? known : null;
  });
}
