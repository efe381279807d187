/** The instructions of one row, clause by clause, with the counts printed among them. */

import type { Assertion, Instruction } from '../model/pattern.ts';
import type { Span } from '../model/span.ts';
import { readAssertions } from './assertions.ts';
import { readJoin } from './beginnings.ts';
import { skipColour } from './colours.ts';
import type { Cursor } from './cursor.ts';
import { readInstruction } from './instructions.ts';
import { readLabel } from './labels.ts';
import { skipNote } from './notes.ts';
import { readArrangement } from './arrangements.ts';
import { readNamingNote } from './naming.ts';
import { readNeedles, readReceiver } from './needle-names.ts';
import { readStretch } from './stretches.ts';
import { readPlainStitch } from './stitches.ts';
import { readPrefix, startsBracketed, startsNeedlePrefix } from './prefixes.ts';
import type { Token } from './tokens.ts';
import { skipOtherVersion } from './versions.ts';
import { stretchBare } from './whole-rows.ts';
import { isRemark, nearestName, startsInstruction } from './wording.ts';

/** What was read of a row. */
export interface Body {
  readonly instructions: Instruction[];
  readonly assertions: Assertion[];
  /** Remarks among the instructions, kept as prose. */
  readonly remarks: Span[];
  /** True when something was not understood and reported. */
  failed: boolean;
}

/** How a body is read. */
export interface BodyOptions {
  /** Whether something else than this row begins here; asked at every sentence after the first. */
  readonly isOther: (at: Cursor) => boolean;
  /** Where the body stands: after a label, without one, or inside a group or a prefix. */
  readonly place: 'label' | 'free' | 'inner';
}

/** Words between clauses that say nothing. */
const LINKS = ['then', 'and', '&', 'now', 'also', 'next', 'end', 'ending', 'ends', 'finally'];

/** Clauses that say how the stitches are worked and change none. */
const MANNERS = [
  ...['picking up wraps as you go', 'picking up wraps as you come to them', 'picking up wraps', 'picking up the wrap'],
  ...['picking up the wraps', 'purling wraps together with sts', 'purling wraps tog with sts', 'working in patt'],
  ...[
    'knitting wraps together with sts',
    'knitting wraps tog with sts',
    'being careful not to twist',
    'keeping patt correct'
  ]
];

/**
 * Reads clauses up to the end, or up to a sentence that belongs to something else. A clause that is not understood is
 * reported once; the rest of the row is then taken as worked plainly.
 */
export function readBody(at: Cursor, options: BodyOptions): Body {
  const body: Body = { instructions: [], assertions: [], remarks: [], failed: false };
  const first = at.at;
  let sentence = mark(at, body);
  while (!at.done) {
    skipToClause(at, body);
    if (at.done || (at.at > first && (startsOther(at, options) || isTurned(at, body)))) break;
    if (at.atSentence) {
      endTake(at, body);
      sentence = mark(at, body);
    }
    if (!readClause(at, { body, options, sentence })) break;
  }
  settle(at, body, options);
  return body;
}

// What is told for the other of left and right is a remark here.
function skipToClause(at: Cursor, body: Body): void {
  at.separators();
  const other = skipOtherVersion(at);
  if (other) body.remarks.push(other);
  at.separators();
}

// Another statement may begin at a sentence; a label also behind a semicolon, "join to work in the rnd" behind a comma.
function startsOther(at: Cursor, options: BodyOptions): boolean {
  if (options.place === 'free' && at.atSentence && startsNeedle(at)) return true;
  if (at.atSentence) return options.isOther(at);
  if (options.place === 'inner') return false;
  return at.peek(-1)?.text === ';' ? at.looksLike(readLabel) : at.text() === 'join' && at.looksLike(readJoin);
}

// Without a label each sentence about another needle is a step of its own.
function startsNeedle(at: Cursor): boolean {
  return startsNeedlePrefix(at) || at.looksLike(readReceiver);
}

// "With the same needle pick up 16 sts. K across the instep.": the needle takes what its own sentence says.
function endTake(at: Cursor, { instructions }: Body): void {
  const last = instructions.findLast((part) => part.kind === 'take-needle');
  if (last?.kind !== 'take-needle' || last.needle === null) return;
  instructions.push({ kind: 'take-needle', needle: null, span: at.span(at.at) });
}

// "K across N2 and N3": their stitches stay on them.
function worksNeedle(first: Instruction | undefined): boolean {
  return first?.kind === 'work-to' && first.target.kind === 'needle' && first.target.needle !== null;
}

// A turn ends the row; the next sentence is another one.
function isTurned(at: Cursor, { instructions }: Body): boolean {
  return at.atSentence && instructions.at(-1)?.kind === 'turn';
}

/** What had been read when a sentence began. */
interface Mark {
  readonly at: number;
  readonly instructions: number;
  readonly assertions: number;
  readonly remarks: number;
}

function mark(at: Cursor, body: Body): Mark {
  const { instructions, assertions, remarks } = body;
  return { at: at.at, instructions: instructions.length, assertions: assertions.length, remarks: remarks.length };
}

interface ClauseTask {
  readonly body: Body;
  readonly options: BodyOptions;
  readonly sentence: Mark;
}

// Notes, colours and manners: they work no stitch.
function skipWords(at: Cursor): boolean {
  if ((!startsBracketed(at) && skipNote(at)) || skipColour(at) || at.phrase(...MANNERS)) return true;
  return (at.attempt(skipAside) ?? at.attempt(skipTurnOver)) !== null;
}

function readClause(at: Cursor, task: ClauseTask): boolean {
  const { body } = task;
  const plain = readPlainStitch(at);
  if (plain) return body.instructions.push(plain) > 0;
  const name = readNamingNote(at);
  if (name) return body.instructions.push(name) > 0;
  if (skipWords(at)) return true;
  if (at.text() === ':' && body.instructions.length > 0) skipColon(at);
  return readCounted(at, body) || readWork(at, task);
}

function readCounted(at: Cursor, body: Body): boolean {
  const counts = body.instructions.length === 0 ? null : readAssertions(at);
  body.assertions.push(...(counts ?? []));
  return counts !== null;
}

function readWork(at: Cursor, task: ClauseTask): boolean {
  const { body, options } = task;
  const inner: BodyOptions = { ...options, place: 'inner' };
  if (readStretch(at, body.instructions, (part) => readBody(part, inner))) return true;
  const found = (options.place === 'inner' ? null : readPrefix(at, (part) => readBody(part, inner))) ?? readLinked(at);
  if (!found) return failClause(at, task);
  if (worksNeedle(found[0]) && body.instructions.at(-1)?.kind !== 'take-needle') endTake(at, body);
  body.instructions.push(...found);
  return endsWell(at) || fail(at, task);
}

// "turn: 28 heel sts", "along the heel: this is needle 1".
function skipColon(at: Cursor): void {
  at.attempt(() => at.take(':') && (at.looksLike(readAssertions) || at.looksLike(readArrangement) || null));
}

// "leaving the rem 32 sts on hold", "picking up the remaining wrap", "none lost": nothing more is worked.
function skipAside(at: Cursor): true | null {
  const verb = at.take('leaving', 'picking', 'working', 'knitting', 'none', 'that', 'which')?.text;
  if (!verb) return null;
  const first = at.at;
  while (!at.atStop) at.at += 1;
  const words = at.source.tokens.slice(first, at.at).map(({ text }) => text);
  const isWrap = words.some((word) => /^wraps?$/u.test(word));
  return /^(?:leaving|that|which)$/u.test(verb) || isWrap || words[0] === 'lost' ? true : null;
}

// "turn over to 2nd needle": the loop is turned, and the round goes on.
function skipTurnOver(at: Cursor): true | null {
  at.skip('then');
  if (!at.phrase('turn over to', 'turn to')) return null;
  return readNeedles(at) ? true : null;
}

// Behind an instruction stands a separator, a bracket, or the next instruction.
function endsWell(at: Cursor): boolean {
  return (
    at.atStop ||
    /^[.,;]$/u.test(at.text(-1)) ||
    startsInstruction(at) ||
    LINKS.includes(at.text()) ||
    ['that', 'which', 'leaving'].includes(at.text()) ||
    at.looksLike(readAssertions) ||
    at.text() === '-'
  );
}

// "then k3", "and k2", "ending with k1".
function readLinked(at: Cursor): readonly Instruction[] | null {
  const nested = (inner: Cursor, isOther: BodyOptions['isOther']) => readBody(inner, { isOther, place: 'inner' });
  return (
    readInstruction(at, nested) ??
    at.attempt(() => {
      if (!at.skip(...LINKS) && at.text() !== 'with') return null;
      at.phrase('last rep with', 'last rep');
      const found = at.attempt(() => readInstruction(at, nested));
      if (found) return found;
      if (!at.looksLike(readReceiver)) at.take('with');
      return at.atStop ? [] : readInstruction(at, nested);
    })
  );
}

// A sentence of prose ends the row; a remark among the clauses is kept; anything else is a mistake.
function failClause(at: Cursor, task: ClauseTask): boolean {
  const start = at.at;
  if (!isRemark(at)) return fail(at, task);
  if (at.atSentence && task.options.place !== 'inner') return task.body.instructions.length === 0 && fail(at, task);
  skipClause(at);
  task.body.remarks.push(at.span(start));
  return true;
}

// After a label the mistake is told here. A sentence without one is given back whole: it may be no row at all.
function fail(at: Cursor, task: ClauseTask): boolean {
  const { body, sentence } = task;
  if (task.options.place === 'free') {
    body.failed = true;
    body.instructions.length = sentence.instructions;
    body.assertions.length = sentence.assertions;
    body.remarks.length = sentence.remarks;
    at.at = sentence.at;
    return false;
  }
  reportUnknown(at);
  body.failed = true;
  skipClause(at);
  if (at.text() === ':') skipStretch(at, task);
  return true;
}

// What was taken for a stitch before the gap-less rest may be a part of it: in "k3tug" the mistake is not "tug".
function reportUnknown(at: Cursor): void {
  const failed = at.at;
  while (at.peek()?.glued && isLetterOrNumber(at.peek(-1))) at.at -= 1;
  const about = written(at);
  const { from } = at.peek()!;
  at.at = failed;
  at.scope.reportOnce(
    'unknown-stitch',
    { from, to: from + about.length },
    { about, nearest: nearestName(about.toLowerCase()) }
  );
}

function isLetterOrNumber(token: Token | null): boolean {
  return token?.kind === 'word' || token?.kind === 'number';
}

// Words before a colon that are not understood say for which stitches the sentence holds: it cannot be worked.
function skipStretch(at: Cursor, { body, sentence }: ClauseTask): void {
  while (at.peek() && at.text() !== '.') at.at += 1;
  body.instructions.length = sentence.instructions;
}

// The whole of what is typed without a gap: "k2x3", not "k".
function written(at: Cursor): string {
  const first = at.at;
  at.at += 1;
  while (at.peek()?.glued && !at.atStop) at.at += 1;
  const text = at.written(first);
  at.at = first;
  return text;
}

function skipClause(at: Cursor): void {
  const start = at.at;
  while (!at.done && (at.at === start || !at.atStop)) {
    const partner = at.peek()?.kind === 'open' ? at.partner : -1;
    at.at = partner >= 0 ? partner + 1 : at.at + 1;
  }
}

// After a mistake the rest of the row is worked as it presents itself.
function settle(at: Cursor, body: Body, options: BodyOptions): void {
  const { instructions } = body;
  if (options.place !== 'inner') stretchBare(at, instructions);
  const last = instructions.at(-1);
  if (!body.failed || options.place !== 'label' || last?.kind === 'turn') return;
  const span = last?.span ?? at.span(at.range.from);
  instructions.push({ kind: 'work-to', operation: null, target: { kind: 'end' }, span });
}
