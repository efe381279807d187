/** Printed lines put together to the lines that were meant: a paragraph that was wrapped is one. */

import { Cursor } from './cursor.ts';
import { readHeading } from './headings.ts';
import { readLabel } from './labels.ts';
import type { Scope } from './scope.ts';
import type { Line, Token, TokenText } from './tokens.ts';

/** A line as it was meant. */
export interface MeantLine {
  /** Index of its first token, and the index after its last. */
  readonly first: number;
  readonly end: number;
  /** Of the first printed line, from 1. */
  readonly number: number;
}

/** A printed line at least this long may have been wrapped before a capital. */
const WRAPPED = 55;

/** Words that begin a line of their own even after a line that does not end. */
const STARTERS = /^(?:co|cast|join|rep|repeat|sizes?|gauge|tension|needles?|key|sections?|pm|bo|bind|graft|yarn)$/u;

/** Joins wrapped lines. */
export function meantLines(source: TokenText, scope: Scope): MeantLine[] {
  const result: MeantLine[] = [];
  let before: Line | null = null;
  for (const line of source.lines) {
    const last = result.at(-1);
    if (last && before && goesOn(source, { before, line, scope }))
      result[result.length - 1] = { ...last, end: line.end };
    else result.push({ first: line.first, end: line.end, number: line.number });
    before = line;
  }
  return result.filter((line) => line.end > line.first);
}

function goesOn(source: TokenText, at: { readonly before: Line; readonly line: Line; readonly scope: Scope }): boolean {
  const { before, line, scope } = at;
  const last = source.tokens[before.end - 1];
  const first = source.tokens[line.first];
  if (!isNextLine(source, at) || !last || !first || isBeginning(first)) return false;
  if (isEnd(last, first)) return false;
  const cursor = (told: Line) => new Cursor(source, scope, { from: told.first, end: told.end });
  if (cursor(line).looksLike(readLabel) || isHeadingAlone(cursor(before))) return false;
  if (/^[,;-]$/u.test(last.text)) return true;
  const mayGoOn = !first.capital || before.to - before.from >= WRAPPED;
  return mayGoOn && !cursor(line).looksLike(readHeading);
}

// A heading with instructions behind it on its line goes on like any other.
function isHeadingAlone(line: Cursor): boolean {
  const heading = readHeading(line);
  return heading !== null && heading.end >= line.range.end;
}

// The line after the title never goes on with it.
function isNextLine(source: TokenText, at: { readonly before: Line; readonly line: Line }): boolean {
  return at.line.number === at.before.number + 1 && at.before.number !== source.lines[0]?.number;
}

function isEnd({ text, kind }: Token, next: Token): boolean {
  return /^[.:!?]$/u.test(text) || (kind === 'close' && !goesWithNumber(next));
}

/** Words that need the number before them, so that a line that begins with one goes on. */
const AFTER_NUMBER = /^(?:sts?|stitch(?:es)?|more|times|ins?|inch(?:es)?|cm|mm|rem|remain|rnds|rounds|rows)$/u;

function goesWithNumber({ text, capital, kind }: Token): boolean {
  return kind === 'open' || (!capital && AFTER_NUMBER.test(text));
}

function isBeginning({ text, capital }: Token): boolean {
  return /^[#*]/u.test(text) || (capital && STARTERS.test(text));
}
