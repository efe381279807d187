/** Marks between rows: "**Rnd 1: … Rnd 2: … **", and sentences that go back to them: "Rep from ** to **". */

import type { Statement } from '../model/pattern.ts';
import { readCastOn } from './beginnings.ts';
import type { Cursor } from './cursor.ts';
import { readLabel } from './labels.ts';
import { readTimes } from './times.ts';

/** A place between two statements. */
export interface Place {
  readonly stage: number;
  readonly statement: number;
}

/** A line without the marks that stand before and behind its rows. */
export interface Unmarked {
  readonly at: Cursor;
  readonly before: string | null;
  readonly after: string | null;
}

/** Takes the marks off a line; an asterisk that belongs to a repeat inside the row stays. */
export function withoutMarks(at: Cursor): Unmarked {
  const before = markBefore(at);
  const from = at.at + (before === null ? 0 : 1);
  const after = markAfter(at.within(from, at.range.end));
  return { at: at.within(from, at.range.end - (after === null ? 0 : 1)), before, after };
}

// Before a row, or alone on the line.
function markBefore(at: Cursor): string | null {
  const sign = at.peek();
  if (sign?.kind !== 'asterisk' || !isOnly(at, sign.text)) return null;
  const startsRow = (inner: Cursor) => (inner.kind('asterisk'), readLabel(inner) ?? readCastOn(inner));
  return at.peek(1) === null || at.looksLike(startsRow) ? sign.text : null;
}

// Behind the full stop of a row.
function markAfter(at: Cursor): string | null {
  const { tokens } = at.source;
  const sign = at.done ? undefined : tokens[at.range.end - 1];
  const isMark = sign?.kind === 'asterisk' && tokens[at.range.end - 2]?.text === '.' && isOnly(at, sign.text);
  return isMark ? sign.text : null;
}

function isOnly(at: Cursor, sign: string): boolean {
  return at.source.tokens.slice(at.range.from, at.range.end).filter(({ text }) => text === sign).length === 1;
}

/** Where a sentence goes back to: from a mark or the beginning of a piece, up to a mark. */
export interface Return {
  readonly from: string | null;
  /** Name of the piece, in small letters. */
  readonly piece: string | null;
  readonly to: string;
  readonly times: number;
}

/** Reads "Rep from ** to **", "Work as for first sock to **". */
export function readReturn(at: Cursor): Return | null {
  return at.attempt(() => {
    at.skip('then', 'now');
    if (!at.take('rep', 'repeat', 'work', 'knit', 'make')) return null;
    const piece = readPiece(at);
    const from = at.attempt(() => (at.take('from') ? readSign(at) : null));
    const to = at.take('to', 'until') ? readSign(at) : null;
    if (to === null || (piece === null && from === null)) return null;
    at.skip(',');
    const times = readTimes(at)?.count[0] ?? 1;
    return at.atStop ? { from, piece, to, times } : null;
  });
}

function readSign(at: Cursor): string | null {
  return at.kind('asterisk')?.text ?? null;
}

// "as for first sock", "as given for left mitten", "same as the first mitt".
function readPiece(at: Cursor): string | null {
  return at.attempt(() => {
    if (!at.phrase('as for', 'as given for', 'as', 'same as', 'exactly as for', 'in the same way as')) return null;
    at.skip('the');
    const words: string[] = [];
    while (at.peek() && !['to', 'until', 'from'].includes(at.text()) && !at.atStop) {
      words.push(at.text());
      at.at += 1;
    }
    return words.length > 0 ? words.join(' ') : null;
  });
}

/** Statements between two places, stage by stage. */
export function between(
  stages: readonly { readonly statements: readonly Statement[] }[],
  from: Place,
  to: Place
): { readonly stage: number; readonly statements: readonly Statement[] }[] {
  return stages.slice(from.stage, to.stage + 1).map(({ statements }, offset) => {
    const stage = from.stage + offset;
    const first = stage === from.stage ? from.statement : 0;
    return { stage, statements: statements.slice(first, stage === to.stage ? to.statement : undefined) };
  });
}
