/** Side notes in brackets that change nothing: (RS), (dec), (seam stitch), (about 26 rnds). */

import type { Cursor } from './cursor.ts';
import { startsNeedlePrefix } from './prefixes.ts';
import { startsInstruction } from './wording.ts';

/** Skips a bracket that holds words but no instruction, and tells whether there was one. */
export function skipNote(at: Cursor): boolean {
  const end = at.partner;
  if (at.peek()?.kind !== 'open' || end < 0) return false;
  if (at.looksLike(() => holdsWork(at, end))) return false;
  at.at = end + 1;
  return true;
}

const NOTE_WORD = /^(?:rs|ws|dec|inc|right|wrong|decrease|increase|see|about|approx|note)$/u;

function holdsWork(at: Cursor, end: number): boolean {
  at.at += 1;
  while (['open', 'asterisk'].includes(at.peek()?.kind ?? '') && at.at < end) at.at += 1;
  if (NOTE_WORD.test(at.text()) || at.peek()?.kind === 'close') return false;
  return startsCount(at) || startsInstruction(at) || startsNeedlePrefix(at);
}

function startsCount(at: Cursor): boolean {
  const token = at.peek();
  return token?.value !== null && token?.kind !== 'ordinal';
}
