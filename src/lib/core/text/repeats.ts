/** Groups inside a row: [k2, p2] 4 times, *k2, p2; rep from * to end, *k5, m1* twice. */

import type { Extent, Instruction } from '../model/pattern.ts';
import { everySize, forSize, type Sized } from '../model/sized.ts';
import type { Body } from './body.ts';
import type { Cursor } from './cursor.ts';
import type { ReadInner } from './instructions.ts';
import { findStarEnd, REPEAT, skipBetween, type StarEnd } from './star-ends.ts';
import { readTarget } from './targets.ts';
import { readTimes, type Times } from './times.ts';

/** How deep groups may lie in each other. */
const MOST_DEPTH = 12;

/** Longest tail of a repeat ("end k2, p1"), in tokens. */
const MOST_TAIL = 60;

/** Reads a group in brackets or after an asterisk; an empty list for one that was reported and dropped. */
export function readGroup(at: Cursor, readInner: ReadInner): readonly Instruction[] | null {
  const kind = at.peek()?.kind;
  if (kind === 'asterisk') return readStarred(at, readInner);
  if (kind === 'open') return readBracket(at, readInner);
  return REPEAT.includes(at.text()) ? readLostRepeat(at) : null;
}

function readBracket(at: Cursor, readInner: ReadInner): readonly Instruction[] {
  const first = at.at;
  const end = at.partner;
  if (end < 0) {
    at.scope.reportOnce('unclosed-bracket', at.span(first), { about: at.text() });
    at.at += 1;
    return [];
  }
  const troubles = at.scope.diagnostics.length;
  const body = readDeeper(at.within(first + 1, end), readInner);
  at.at = end + 1;
  if (body.failed && isNote(at, first)) return (at.scope.forget(troubles), []);
  const extent = readBracketExtent(at, first);
  return close(at, { body, extent, first });
}

function readDeeper(inner: Cursor, readInner: ReadInner): Body {
  const { scope } = inner;
  if (scope.depth >= MOST_DEPTH) {
    scope.report('too-deep', inner.span(inner.at), { expected: MOST_DEPTH });
    return { instructions: [], assertions: [], remarks: [], failed: true };
  }
  scope.depth += 1;
  const body = readInner(inner, () => false);
  scope.depth -= 1;
  return body;
}

// "(one in each slipped edge stitch)": words that begin with a number, and nothing tells how often.
function isNote(at: Cursor, first: number): boolean {
  const tokens = at.source.tokens.slice(first + 1, at.at - 1);
  const isCounted = at.looksLike((inner) => readTimes(inner) ?? readTarget(inner));
  const startsWithNumber = (tokens[0]?.value ?? null) !== null;
  return startsWithNumber && tokens.length > 2 && !isCounted;
}

function readBracketExtent(at: Cursor, first: number): Extent {
  const times = readTimes(at);
  if (times) return { kind: 'times', count: times.meaning === 'more' ? plusOne(times.count) : times.count };
  at.attempt(() => (at.take('rep', 'repeat') && at.looksLike(readTarget) ? true : null));
  const target = readTarget(at);
  if (target) return { kind: 'to', target };
  const around = at.source.text.slice(at.source.tokens[first]!.from, at.source.tokens[at.at - 1]!.to);
  at.scope.report('bracket-unclear', at.span(first), { about: shorten(around) });
  return { kind: 'times', count: everySize(1) };
}

function shorten(text: string): string {
  return text.length > 30 ? `${text.slice(0, 28)} …` : text;
}

function plusOne(count: Sized<number>): Sized<number> {
  return count.map((entry) => (entry === null ? null : entry + 1));
}

// A group in which something was not understood is worked as it presents itself, as far as its length is known.
function close(
  at: Cursor,
  group: { readonly body: Body; readonly extent: Extent; readonly first: number }
): readonly Instruction[] {
  const { body, extent } = group;
  const span = at.span(group.first);
  if (!body.failed) return [{ kind: 'group', body: body.instructions, extent, span }];
  return extent.kind === 'to' ? [{ kind: 'work-to', operation: null, target: extent.target, span }] : [];
}

function readStarred(at: Cursor, readInner: ReadInner): readonly Instruction[] {
  const first = at.at;
  const star = findStarEnd(at);
  const body = readDeeper(at.within(first + 1, star.end), readInner);
  at.at = star.after;
  const extent = readStarExtent(at, { star, first, readInner });
  return close(at, { body, extent, first });
}

function readStarExtent(
  at: Cursor,
  told: { readonly star: StarEnd; readonly first: number; readonly readInner: ReadInner }
): Extent {
  const { kind } = told.star;
  if (kind === 'none') {
    at.scope.report('repeat-end-missing', at.span(told.first));
    return { kind: 'to', target: { kind: 'end' } };
  }
  at.attempt(() => (at.skip(',', ';') && at.looksLike(readExtentWords) ? true : null));
  const between = kind === 'star' && skipBetween(at);
  const times = readTimes(at);
  if (times) return kind === 'star' && !between ? { kind: 'times', count: times.count } : timesFromStar(times);
  const target = readTarget(at);
  if (target) return { kind: 'to', target };
  const tail = tailStitches(at, told.readInner);
  return { kind: 'to', target: tail ? { kind: 'last', count: tail } : { kind: 'end' } };
}

function readExtentWords(at: Cursor): unknown {
  return readTimes(at) ?? at.phrase('to last', 'to end', 'around', 'to the end', 'to the last', 'across') ?? null;
}

function timesFromStar(times: Times): Extent {
  if (times.meaning === 'plain') return { kind: 'unclear-times', count: times.count };
  return { kind: 'times', count: times.meaning === 'more' ? plusOne(times.count) : times.count };
}

// "rep from *, end k2": the repeat leaves as many stitches as the tail takes.
function tailStitches(at: Cursor, readInner: ReadInner): Sized<number> | null {
  const here = at.at;
  at.skip(',', ';');
  const isTail = skipEnding(at);
  const from = at.at;
  at.at = here;
  if (!isTail) return null;
  let end = from;
  while (end < at.range.end && end - from <= MOST_TAIL && at.source.tokens[end]!.text !== '.') end += 1;
  const isPlain = at.source.tokens.slice(from, end).every(({ kind }) => kind !== 'asterisk');
  if (!isPlain || end - from > MOST_TAIL) return null;
  const troubles = at.scope.diagnostics.length;
  const body = readInner(at.within(from, end), () => false);
  at.scope.forget(troubles);
  return body.failed ? null : sumTakes(at, body.instructions);
}

// "end with", "ending last rep with": the tail stands in the place of the last repeat.
function skipEnding(at: Cursor): boolean {
  if (!at.skip('end', 'ending', 'ends')) return false;
  at.phrase('last rep', 'last repeat', 'the last rep');
  at.skip('with');
  return !at.looksLike(() => at.take('a', 'at'));
}

function sumTakes(at: Cursor, instructions: readonly Instruction[]): Sized<number> | null {
  if (instructions.length === 0 || instructions.some((instruction) => instruction.kind !== 'work')) return null;
  const totals = at.scope.sizes.map((_, size) =>
    instructions.reduce(
      (sum, part) => (part.kind === 'work' ? sum + part.operation.takes * (forSize(part.count, size) ?? 0) : sum),
      0
    )
  );
  return totals.every((total) => total === totals[0]) ? [totals[0]!] : totals;
}

// "rep from *" without an asterisk before it.
function readLostRepeat(at: Cursor): readonly Instruction[] | null {
  return at.attempt(() => {
    const first = at.at;
    at.at += 1;
    if (!at.take('from') || !at.kind('asterisk')) return null;
    at.scope.report('repeat-start-missing', at.span(first), { about: at.written(first) });
    if (!readTimes(at)) readTarget(at);
    return [];
  });
}
