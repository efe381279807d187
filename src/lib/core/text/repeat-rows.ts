/** Rows worked again: "Rep rnds 1 and 2 five more times", "Repeat these 2 rows 13 times more", "Rep dec rnd every other rnd until 32 sts rem". */

import type { RowExtent, RowReference } from '../model/repeating.ts';
import type { Statement } from '../model/pattern.ts';
import { everySize } from '../model/sized.ts';
import type { Cursor } from './cursor.ts';
import { readExtent } from './extents.ts';
import { readNoun, readNumbers, readOrdinals } from './labels.ts';
import { prose } from './rows.ts';

type RepeatRows = Extract<Statement, { kind: 'repeat-rows' }>;

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
  at.skip('the');
  const ordinals = at.attempt(readOrdinals);
  if (ordinals) return (at.skip('only'), { kind: 'numbers', numbers: ordinals.numbers });
  if (!readNoun(at)) return null;
  const numbers = readNumbers(at);
  at.skip('only');
  return numbers ? { kind: 'numbers', numbers } : null;
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
  const name = at.written(first).replaceAll(/\s+/gu, ' ');
  at.skip('only');
  return { kind: 'named', name };
}

// "every rnd" 0, "every other rnd" 1, "every 4th rnd" 3.
function readEvery(at: Cursor): number | null {
  return at.attempt(() => {
    if (at.peek()?.kind === 'open') return readInBracket(at);
    at.skip('on');
    if (!at.take('every')) return null;
    at.skip('foll', 'following');
    const ordinal = at.kind('ordinal')?.value ?? (at.take('other', 'alt', 'alternate') ? 2 : 1);
    return readNoun(at) ? ordinal - 1 : null;
  });
}

// "(every rnd)".
function readInBracket(at: Cursor): number | null {
  const end = at.partner;
  if (end < 0) return null;
  const inner = at.within(at.at + 1, end);
  const every = readEvery(inner);
  if (every === null || !inner.done) return null;
  at.at = end + 1;
  return every;
}
