/** Stitches that are slipped from one needle to another: "sl first 2 sts of 2nd needle to 1st needle". */

import type { Arrangement, NeedleRef } from '../model/needle-words.ts';
import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { STITCH_WORDS } from './layouts.ts';
import { readEmpty, readNeedle } from './needle-names.ts';

/** Verbs that put stitches somewhere. */
export const VERBS = [
  'sl',
  'slip',
  'slide',
  'move',
  'transfer',
  'put',
  'place',
  'leave',
  'arrange',
  'slipping',
  'divide'
];

/** Reads two moves told with one verb: "slip rem 3 sts of 1st needle and rem 3 sts of 3rd needle onto the ends of 2nd needle". */
export function readTwoMoves(at: Cursor): readonly Arrangement[] | null {
  const first = at.at;
  if (!at.take(...VERBS)) return null;
  const sources = [at.attempt(readSource), at.skip('and', '&') ? at.attempt(readSource) : null];
  const to = sources.includes(null) ? null : readDestination(at);
  if (!to) return null;
  const span = at.span(first);
  return sources.map((source) => ({ kind: 'move-stitches', ...source!, end: null, to, until: null, span }));
}

function readSource(at: Cursor): { readonly count: Sized<number> | null; readonly from: NeedleRef } | null {
  at.skip('the', 'rem', 'remaining');
  const { count } = readWhich(at);
  const from = at.attempt(readFrom);
  return from ? { count, from } : null;
}

/** Reads a move: "Sl first 2 sts of 2nd needle to 1st needle", "slip 10 sts from N2 to N1", "sl next 16 sts onto N2". */
export function readMove(at: Cursor): Arrangement | null {
  const verb = at.take(...VERBS)?.text;
  if (!verb || (!/^sl/u.test(verb) && at.looksLike(() => (at.skip('the'), at.take('other'))))) return null;
  return readMoved(at);
}

/** Reads a move without its verb: one more of several. */
export function readMoved(at: Cursor): Arrangement | null {
  const first = at.at;
  const { end, count } = readWhich(at);
  const from = at.attempt(readFrom);
  const to = count === null && from === null ? null : readDestination(at);
  if (!to || (from === null && (end === null || end === 'last'))) return null;
  const until = at.attempt(readUntil);
  return { kind: 'move-stitches', count, end: end === 'ahead' ? null : end, from, to, until, span: at.span(first) };
}

// "until N3 has 20 sts", "until the third has 20".
function readUntil(at: Cursor): Sized<number> | null {
  if (!at.take('until')) return null;
  if (!readNeedle(at) && !(at.skip('the'), at.kind('ordinal'))) return null;
  if (!at.take('has', 'holds', 'carries')) return null;
  const count = readCount(at);
  at.skip(...STITCH_WORDS);
  return count;
}

// "the first 2 sts", "the last st", "the other 9 heel sts", "all".
function readWhich(at: Cursor): {
  readonly end: 'first' | 'last' | 'ahead' | null;
  readonly count: Sized<number> | null;
} {
  at.skip('the', 'all');
  const word = at.take('first', 'last', 'next', 'other')?.text ?? null;
  const count = readCount(at) ?? (word && /^st(?:itch)?$/u.test(at.text()) ? everySize(1) : null);
  if (count && at.scope.isSection(at.text())) at.at += 1;
  at.skip(...STITCH_WORDS);
  return { end: word === 'first' || word === 'last' ? word : word === null ? null : 'ahead', count };
}

function readFrom(at: Cursor): NeedleRef | null {
  return at.take('of', 'from', 'on') ? readNeedle(at) : null;
}

/** Reads "to 1st needle", "on to the beginning of the third needle", "onto one needle". */
export function readDestination(at: Cursor): NeedleRef | null {
  if (!at.take('to', 'onto') && !at.phrase('on to', 'on')) return null;
  at.attempt(() => {
    at.skip('the', 'other');
    return at.take('end', 'ends', 'beginning', 'beg', 'start', 'front', 'back') && at.take('of') ? true : null;
  });
  return readEmpty(at) ?? readNeedle(at);
}
