/** Numbers of stitches that a pattern needs: "mult of 8 sts + 1", "multiple of 12 sts plus 1". */

import type { Statement } from '../model/pattern.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { prose } from './rows.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Most words before the number is told. */
const MOST_WORDS = 14;

/** Reads a sentence that names such a number: it is kept as prose, and checked. */
export function readMultiple(at: Cursor): Statement[] | null {
  const first = at.at;
  for (let words = 0; words < MOST_WORDS && !/^mult(?:iple)?s?$/u.test(at.text()); words += 1) {
    if (!at.peek() || at.text() === '.') return null;
    at.at += 1;
  }
  if (!at.take('mult', 'multiple', 'multiples')) return null;
  at.skip('.', 'of');
  const of = readCount(at);
  at.skip(...STITCH_WORDS);
  const plus = of && at.take('+', 'plus') ? readCount(at) : null;
  if (!of) return null;
  while (at.peek() && at.text() !== '.') at.at += 1;
  const span = at.span(first);
  return [prose(at, span), { kind: 'multiple', of, plus: plus ?? [0], span }];
}
