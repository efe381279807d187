/** How patterns name markers: m, next marker, marker A, BOR. */

import type { Cursor } from './cursor.ts';

const MARKER_WORDS = ['m', 'mkr', 'mk', 'mkrs', 'marker', 'markers'];
const BOR_PHRASES = [
  ...['bor', 'bor m', 'bor marker', 'beg of rnd', 'beg of round', 'beginning of rnd', 'beginning of round'],
  ...['start of rnd', 'start of round', 'beginning of the round', 'beginning of the rnd', 'end of rnd marker']
].sort((left, right) => right.length - left.length);

/** A marker that a text points to. */
export interface MarkerName {
  /** `null`: the next one, or one without a name. */
  readonly name: string | null;
}

/** Reads "m", "marker A", "next marker", "BOR"; `null` when none stands here. */
export function readMarkerName(at: Cursor): MarkerName | null {
  return at.attempt(() => {
    at.skip('the', 'next', 'first', 'new');
    if (readBor(at)) return { name: 'BOR' };
    const known = at.scope.markerNames.get(at.text());
    if (known !== undefined && MARKER_WORDS.includes(at.text(1))) {
      at.at += 2;
      return { name: known };
    }
    const letter = at.peek()?.capital && /^[a-z]$/u.test(at.text()) ? at.peek(1) : null;
    if (letter && MARKER_WORDS.includes(letter.text)) return named(at, 2, at.peek()!.text);
    if (!at.take(...MARKER_WORDS)) return null;
    return { name: readLetter(at) };
  });
}

/** Reads "BOR", "beg of rnd" and the like. */
export function readBor(at: Cursor): boolean {
  return at.phrase(...BOR_PHRASES);
}

function named(at: Cursor, tokens: number, name: string): MarkerName {
  at.at += tokens;
  return { name: name.toUpperCase() };
}

/** Reads the letter or number that names a marker: "A" in "marker A", "2" in "m2". */
export function readLetter(at: Cursor): string | null {
  const token = at.peek();
  if (!token) return null;
  const isLetter = token.kind === 'word' && /^[a-z]$/u.test(token.text) && token.capital;
  const isNumber =
    token.kind === 'number' && (token.glued || at.peek(-1)?.text !== 'm') && Number.isInteger(token.value);
  if (!isLetter && !isNumber) return null;
  at.at += 1;
  return isLetter ? token.text.toUpperCase() : `m${token.text}`;
}
