/** Turns in the middle of a row: turn, w&t, turn and make a double stitch. */

import type { Instruction } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';

const WRAPS = [
  ...['w & t', 'w + t', 'w / t', 'wrap and turn', 'wrap & turn', 'wrap next st and turn', 'wrap next st , turn', 'wt'],
  ...['wrap the next st and turn', 'wrap next stitch and turn', 'wrap st and turn', 'wrap 1 and turn']
];
const DOUBLES = ['mds', 'make ds', 'make double stitch', 'make a double stitch', 'ds'];

/** Reads a turn. */
export function readTurn(at: Cursor): Instruction | null {
  const first = at.at;
  if (at.phrase(...WRAPS)) return { kind: 'turn', mark: 'wrap', span: at.span(first) };
  if (!at.phrase('turn work', 'turn the work', 'turn') && !isLetter(at)) return null;
  const double = at.attempt(() => {
    at.skip(',', 'and', ';');
    return at.phrase(...DOUBLES) || null;
  });
  return { kind: 'turn', mark: double ? 'double' : 'none', span: at.span(first) };
}

// "T." alone.
function isLetter(at: Cursor): boolean {
  return at.peek()?.capital === true && at.take('t') !== null && at.atStop;
}
