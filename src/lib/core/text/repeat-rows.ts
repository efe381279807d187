/** Rows worked again: "Rep rnds 1 and 2 five more times", "Repeat these 2 rows 13 times more", "Rep dec rnd every other rnd until 32 sts rem". */

import type { NeedleRefs } from '../model/needle-words.ts';
import type { RowExtent, RowReference } from '../model/repeating.ts';
import type { Statement } from '../model/pattern.ts';
import { everySize } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readNoun, readNumbers } from './labels.ts';
import { readNeedles } from './needle-names.ts';
import { readEnding, readStop } from './stops.ts';
import { prose } from './rows.ts';
import { readTimes } from './times.ts';

type RepeatRows = Extract<Statement, { kind: 'repeat-rows' }>;

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Reads a sentence that works earlier rows again, with all its stages ("… then every rnd until 16 sts rem"). */
export function readRepeatRows(at: Cursor): Statement[] | null {
  const first = at.at;
  const verb = at.take('rep', 'repeat', 'rpt', 'work', 'cont', 'continue');
  if (!verb) return null;
  at.skip('working', 'repeating', 'rep');
  const isTotal = verb.text === 'work' && at.looksLike(readTheseAll);
  const rows = readReference(at);
  if (!rows) return null;
  const found = asTotal(readStage(at, { rows, first }), isTotal);
  if (!found) return null;
  const statements: Statement[] = [found];
  for (;;) {
    const start = at.at;
    const next = at.attempt(() => (skipThen(at) ? readNextStage(at, { rows, first: start }) : null));
    if (!next) return statements;
    statements.push(next);
  }
}

function skipThen(at: Cursor): boolean {
  at.skip(',', ';');
  at.skip('and');
  return at.take('then') !== null;
}

// "then every rnd until 16 sts rem" goes on with the same rows; "then rnds 1-5 again" names others.
function readNextStage(at: Cursor, told: { readonly rows: RowReference; readonly first: number }): RepeatRows | null {
  if (at.text() === 'every') return readStage(at, told);
  at.skip('rep', 'repeat', 'work');
  const rows = readReference(at);
  return rows && readStage(at, { ...told, rows });
}

// "Work the 8 rnds 3 times" counts the first time.
function readTheseAll(at: Cursor): boolean {
  return at.take('the') !== null && at.whole() !== null && readNoun(at) !== null;
}

function asTotal(statement: RepeatRows | null, isTotal: boolean): RepeatRows | null {
  if (!isTotal || statement?.extent.kind !== 'times') return statement;
  return { ...statement, extent: { ...statement.extent, meaning: 'total' } };
}

function readStage(at: Cursor, told: { readonly rows: RowReference; readonly first: number }): RepeatRows | null {
  const plainBetween = readEvery(at);
  const extent = readExtent(at);
  if (!extent && plainBetween === null) return isOnce(at, told);
  if (!extent) return null;
  const between = plainBetween ?? at.attempt(readEvery) ?? 0;
  return statement(at, { ...told, extent, plainBetween: between });
}

// "Work row 1 once more" is read by its times; a bare "Rep rnd 1." is once more too.
function isOnce(at: Cursor, told: { readonly rows: RowReference; readonly first: number }): RepeatRows | null {
  if (!at.skip('again', 'only') && !at.atStop) return null;
  return statement(at, { ...told, extent: { kind: 'times', count: everySize(1), meaning: 'more' }, plainBetween: 0 });
}

function statement(
  at: Cursor,
  told: {
    readonly rows: RowReference;
    readonly first: number;
    readonly extent: RowExtent;
    readonly plainBetween: number;
  }
): RepeatRows {
  const { rows, extent, plainBetween } = told;
  const sizes = at.scope.onlySizes;
  return { kind: 'repeat-rows', rows, extent, plainBetween, sizes, assertions: [], span: at.span(told.first) };
}

/** Reads "These 6 rnds form rib": prose, but "them" in what follows are these rows. */
export function readFormed(at: Cursor): Statement[] | null {
  const first = at.at;
  const rows = at.take('these', 'those', 'last') ? at.whole() : null;
  if (rows === null || !readNoun(at) || !/^(?:forms?|sets?|brings?|makes?|are|establish)$/u.test(at.text()))
    return null;
  at.scope.rowsFormed = rows;
  while (at.peek() && at.text() !== '.') at.at += 1;
  return [prose(at, at.span(first))];
}

/** Reads which rows are meant: "rnds 1 and 2", "these 2 rows", "the last 2 rnds", "dec rnd". */
function readReference(at: Cursor): RowReference | null {
  return at.attempt(readLast) ?? at.attempt(readNumbered) ?? at.attempt(readNamed);
}

// "last 2 rnds", "these two rounds", "the last row", "these rnds".
function readLast(at: Cursor): RowReference | null {
  const the = at.take('the') !== null;
  if (at.take('them')) return { kind: 'last', count: at.scope.rowsFormed };
  const isLast = at.skip('this', 'last', 'these', 'those', 'previous', 'prev');
  if (!isLast && !(the && at.peek()?.value)) return null;
  const count = at.whole();
  const noun = at.text();
  if (!readNoun(at)) return null;
  return { kind: 'last', count: count ?? (/s$/u.test(noun) ? 2 : 1) };
}

function readNumbered(at: Cursor): RowReference | null {
  const ordinals = at.attempt(readOrdinals);
  if (ordinals) return { kind: 'numbers', numbers: ordinals };
  at.skip('the');
  if (!readNoun(at)) return null;
  const numbers = readNumbers(at);
  at.skip('only');
  return numbers ? { kind: 'numbers', numbers } : null;
}

// "the 1st to 6th rnds", "1st and 2nd rows".
function readOrdinals(at: Cursor): number[] | null {
  at.skip('the');
  const from = at.kind('ordinal')?.value;
  const link = from ? at.take('to', '-', 'and', '&')?.text : undefined;
  const to = link ? at.kind('ordinal')?.value : from;
  if (!from || !to || to < from || to - from > 400 || !readNoun(at)) return null;
  if (link === 'and' || link === '&') return [from, to];
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

// "dec rnd", "the decrease round".
function readNamed(at: Cursor): RowReference | null {
  at.skip('the');
  const first = at.at;
  for (let words = 0; words < 3 && !/^(?:rnd|round|row)$/u.test(at.text()); words += 1) {
    at.take('-');
    if (!at.kind('word')) return null;
  }
  if (at.at === first || !readNoun(at)) return null;
  return { kind: 'named', name: at.written(first).replaceAll(/\s+/gu, ' ') };
}

// "every rnd" 0, "every other rnd" 1, "every 4th rnd" 3.
function readEvery(at: Cursor): number | null {
  return at.attempt(() => {
    at.skip('on');
    if (!at.take('every')) return null;
    at.skip('foll', 'following');
    const ordinal = at.kind('ordinal')?.value ?? (at.take('other', 'alt', 'alternate') ? 2 : 1);
    return readNoun(at) ? ordinal - 1 : null;
  });
}

/** Reads how far rows are worked: "3 more times", "until 24 sts rem", "for 20 rnds". */
export function readExtent(at: Cursor): RowExtent | null {
  return (
    at.attempt(readUntil) ??
    at.attempt(readAllWorked) ??
    at.attempt(readForRows) ??
    at.attempt(readMoreTimes) ??
    at.attempt(readStop)
  );
}

function readMoreTimes(at: Cursor): RowExtent | null {
  const times = readTimes(at);
  if (!times) return null;
  at.skip('again');
  return { kind: 'times', count: times.count, meaning: times.meaning === 'plain' ? 'unclear' : times.meaning };
}

// "for 20 rnds", "for a total of 20 rnds".
function readForRows(at: Cursor): RowExtent | null {
  if (!at.take('for')) return null;
  const isTotal = at.phrase('a total of');
  const count = readCount(at);
  if (!count || !readNoun(at)) return null;
  readEnding(at);
  return { kind: 'rows', count, meaning: isTotal ? 'total' : 'more' };
}

// "until all sts have been worked", "until all heel sts have been worked".
function readAllWorked(at: Cursor): RowExtent | null {
  if (!at.take('until', 'till') || !at.take('all')) return null;
  at.skip('the');
  for (let words = 0; words < 3 && !STITCH_WORDS.includes(at.text()); words += 1) at.at += 1;
  if (!at.take(...STITCH_WORDS) || !at.phrase('have been worked', 'are worked', 'have been used', 'are used up'))
    return null;
  return { kind: 'all-worked' };
}

// "until 24 sts rem", "until there are 24 sts", "until 18 heel sts remain", "to 24 sts".
function readUntil(at: Cursor): RowExtent | null {
  if (!at.take('until', 'to', 'till')) return null;
  at.phrase('there are', 'you have', 'there remain', 'only');
  const count = readCount(at);
  if (!count) return null;
  const rows = at.attempt(() =>
    readNoun(at) ? (at.phrase('have been worked', 'have been completed', 'are worked', 'in all'), true) : null
  );
  if (rows) return at.atStop ? { kind: 'rows', count, meaning: 'total' } : null;
  const part = STITCH_WORDS.includes(at.text()) ? null : (at.kind('word')?.text ?? null);
  if (!at.take(...STITCH_WORDS) && !at.looksLike(readOnNeedles)) return null;
  at.phrase('rem', 'remain', 'remaining', 'remains', 'are left', 'left', 'in all');
  const on = at.attempt(readOnNeedles);
  skipSecondCount(at);
  at.phrase('in all', 'on needles', 'on the needles');
  return at.atStop || at.peek()?.kind === 'open' ? { kind: 'until', count, of: part, on } : null;
}

// "on each needle", "on the front needle", "on each of needles 1 and 3".
function readOnNeedles(at: Cursor): NeedleRefs | null {
  if (!at.take('on', 'per')) return null;
  return readNeedles(at) ?? at.attempt(() => (at.take('each') && (at.skip('of', 'the'), readNeedles(at))) || null);
}

// "14 on the left needle and 14 on the right needle": the other needle comes to its number in the same row.
function skipSecondCount(at: Cursor): void {
  at.attempt(() => {
    if (!at.skip('and', ',')) return null;
    const count = readCount(at);
    at.skip(...STITCH_WORDS);
    return count && readOnNeedles(at);
  });
}
