/** Statements: the sentences of one line under a heading, in the order in which the readers are asked. */

import type { Statement } from '../model/pattern.ts';
import { readArrange } from './arrangements.ts';
import { readAssertions } from './assertions.ts';
import { readBody } from './body.ts';
import { readChartRows } from './chart-rows.ts';
import { skipColour } from './colours.ts';
import { readCastOn, readJoin, readSections } from './beginnings.ts';
import { onlyFor } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readEdgeRows, readMovedMarker } from './edge-rows.ts';
import { readEnding, readResume } from './endings.ts';
import { readEven } from './even.ts';
import { readDefinition } from './key.ts';
import { readLabel } from './labels.ts';
import { readLayout } from './dividing.ts';
import { skipToPickUp } from './lead-ins.ts';
import { readMarker } from './markers.ts';
import { readMultiple } from './multiples.ts';
import { skipNote } from './notes.ts';
import { startsPrefix } from './prefixes.ts';
import { readProgression } from './progressions.ts';
import { readFormed, readRepeatRows } from './repeat-rows.ts';
import { prose, readFreeRow, readRow, withAssertions } from './rows.ts';
import { readShapeRows } from './shape-rows.ts';
import { readSizePrefix } from './sizes.ts';
import { readOpening } from './waste-yarn.ts';
import { skipOtherVersion } from './versions.ts';
import { looksLikeWork, startsInstruction } from './wording.ts';

type Reader = (at: Cursor) => Statement | readonly Statement[] | null;

// A new kind of statement is one more reader here.
const READERS: readonly Reader[] = [
  readSections,
  readChartRows,
  readMultiple,
  readEdgeRows,
  readMovedMarker,
  readCastOn,
  readEnding,
  readOpening,
  readJoin,
  readResume,
  readProgression,
  readShapeRows,
  readFormed,
  readRepeatRows,
  readEven,
  readLayout,
  readArrange
];

/** Reads the statements of one line. A sentence that looks like an instruction and is not understood is reported. */
export function readStatements(at: Cursor): Statement[] {
  const statements: Statement[] = [];
  const before = at.scope.onlySizes;
  while (!at.done) {
    at.separators();
    at.skip(':');
    if (at.done) break;
    const start = at.at;
    readSentence(at, statements);
    if (at.at === start) at.at += 1;
  }
  if (at.scope.onlySizes === null) at.scope.namedSizes.clear();
  if (!endsWithPrefix(at)) at.scope.onlySizes = before;
  return statements;
}

// "Sizes M and L only:" alone on a line is for the lines that follow.
function endsWithPrefix(at: Cursor): boolean {
  return at.source.tokens[at.range.end - 1]?.text === ':';
}

function readSentence(at: Cursor, statements: Statement[]): void {
  if (readWhoseItIs(at, statements)) return;
  skipYarn(at);
  if (at.atSentence) skipToPickUp(at);
  if (followsRows(statements) && readCounts(at, statements)) return;
  const found = readRow(at, isOther) ?? readLockedStitch(at) ?? readOne(at);
  if (found) {
    statements.push(...found.map((statement) => forItsSizes(at, statement)));
    return;
  }
  if (readCounts(at, statements) || skipNote(at)) return;
  const free = mayBeRow(at) ? readFreeRow(at, isOther) : null;
  statements.push(...(free ?? [readRest(at)]));
}

// "Size S only:", "Left mitten:": what follows is for these, or for another one and a note here.
function readWhoseItIs(at: Cursor, statements: Statement[]): boolean {
  const prefix = readSizePrefix(at);
  if (prefix) {
    at.scope.onlySizes = prefix.sizes;
    for (const size of prefix.sizes ?? []) at.scope.namedSizes.add(size);
    return true;
  }
  const other = skipOtherVersion(at);
  if (other) statements.push(prose(at, other));
  return other !== null;
}

// Behind a row a list of numbers is a check, and lays nothing out.
function followsRows(statements: readonly Statement[]): boolean {
  const last = statements.findLast(({ kind }) => kind !== 'prose');
  return last?.kind === 'row' || last?.kind === 'repeat-rows' || last?.kind === 'even';
}

function mayBeRow(at: Cursor): boolean {
  return startsInstruction(at) || looksLikeWork(at) || startsPrefix(at);
}

/** Reads one statement that is no row. */
function readOne(at: Cursor): readonly Statement[] | null {
  return at.attempt(() => {
    at.skip('then', 'and', 'now');
    const first = at.at;
    if (skipColour(at) && at.atStop) return [prose(at, at.span(first))];
    for (const reader of READERS) {
      const found = at.attempt(reader);
      if (found) return Array.isArray(found) ? (found as readonly Statement[]) : [found as Statement];
    }
    return null;
  });
}

// "Rejoin yarn, …", "Join yarn and …": what follows is the work.
function skipYarn(at: Cursor): void {
  at.attempt(() => {
    if (!at.phrase('rejoin yarn', 'join yarn', 'join new yarn', 'rejoin the yarn')) return null;
    return at.skip(',', 'and') && startsInstruction(at) ? true : null;
  });
}

// A locking marker hung between two rows changes none of them.
function readLockedStitch(at: Cursor): readonly Statement[] | null {
  return at.attempt(() => {
    const first = at.at;
    if (readMarker(at)?.kind !== 'locking-marker') return null;
    skipSentence(at);
    return [prose(at, at.span(first))];
  });
}

// Whether something begins here that does not belong to the row before.
function isOther(at: Cursor): boolean {
  const repeats = /^rep(?:eat)?$/u.test(at.text()) && at.text(1) !== 'from';
  return repeats || at.looksLike(readLabel) || at.looksLike(readOne) || at.looksLike(readSizePrefix);
}

// Printed counts belong to the row or repeat before them on the line.
function readCounts(at: Cursor, statements: Statement[]): boolean {
  const counts = readAssertions(at);
  if (!counts) return false;
  const index = statements.findLastIndex((statement) => statement.kind !== 'prose');
  const joined = withAssertions(statements[index], counts);
  if (joined) statements[index] = joined;
  else
    for (const assertion of counts)
      statements.push(forItsSizes(at, { kind: 'check', assertion, span: assertion.span }));
  return true;
}

// Statements that have no sizes of their own get nothing for the others.
function forItsSizes(at: Cursor, statement: Statement): Statement {
  const { onlySizes, sizes } = at.scope;
  if (onlySizes === null) return statement;
  const only = (count: Parameters<typeof onlyFor>[0]) => onlyFor(count, onlySizes, sizes.length);
  if (statement.kind === 'cast-on') return { ...statement, count: only(statement.count) };
  if (statement.kind !== 'check' || statement.assertion.kind === 'loads') return statement;
  return { ...statement, assertion: { ...statement.assertion, count: only(statement.assertion.count) } };
}

// What is left is prose, or an instruction that was not understood.
function readRest(at: Cursor): Statement {
  const first = at.at;
  const isWork = looksLikeWork(at) && !isSilent(at);
  const failing = isWork ? failingToken(at) : first;
  at.at = first;
  skipSentence(at);
  const span = at.span(first);
  if (isWork) {
    const token = at.source.tokens[failing] ?? at.source.tokens[first]!;
    at.scope.report('not-understood', span, { about: at.source.text.slice(token.from, token.to) });
  }
  return prose(at, span);
}

// Where reading it as instructions stops: the first word that failed.
function failingToken(at: Cursor): number {
  const first = at.at;
  const { diagnostics } = at.scope;
  const troubles = diagnostics.length;
  skipSentence(at);
  const sentence = at.within(first, at.at);
  readBody(sentence, { isOther: () => false, place: 'inner' });
  const from = diagnostics[troubles]?.span.from ?? 0;
  at.scope.forget(troubles);
  for (sentence.at = first; (sentence.peek()?.from ?? Infinity) < from;) sentence.at += 1;
  return sentence.done ? first : sentence.at;
}

// Sentences about tools and yarn, which begin like instructions and change no stitch.
function isSilent(at: Cursor): boolean {
  return at.looksLike(() => {
    if (at.take('leave', 'put', 'place', 'keep')) return restsOnHold(at);
    if (at.take('change', 'switch')) return at.take('to') !== null;
    if (at.take('work', 'make', 'knit', 'cont', 'continue') && isElsewhere(at)) return true;
    if (at.take('join', 'rejoin', 'break', 'cut')) return at.peek()?.kind === 'word' && !/^n$/u.test(at.text());
    return readDefinition(at);
  });
}

// "the foll 2 rnds:", "as follows", "second mitt as for first": the work is told elsewhere.
function isElsewhere(at: Cursor): boolean {
  at.skip('the');
  if (at.phrase('as follows', 'as foll') || at.take('foll', 'following')) return true;
  while (!at.atStop && !at.phrase('as for', 'same as', 'as given for', 'to match', 'like')) at.at += 1;
  return /^(?:for|as|match|like)$/u.test(at.text(-1));
}

// "(Leave) needles 3 and 4 on hold with 14 sts each".
function restsOnHold(at: Cursor): boolean {
  while (at.peek() && !/^[.;]$/u.test(at.text())) {
    if (at.phrase('on hold', 'unworked', 'waiting', 'at rest')) return true;
    at.at += 1;
  }
  return false;
}

// Prose ends at a full stop, or at a colon behind which counts are printed.
function skipSentence(at: Cursor): void {
  const start = at.at;
  while (at.peek()) {
    if (at.text() === '.' && at.at > start) return;
    if (at.text() === ':' && at.looksLike((inner) => (inner.take(':'), readAssertions(inner)))) return;
    at.at += 1;
  }
}
