/** The instructions of one row, clause by clause, with the counts printed among them. */

import type { Assertion, Instruction, Target } from '../model/pattern.ts';
import type { Span } from '../model/span.ts';
import { readAssertions } from './assertions.ts';
import type { Cursor } from './cursor.ts';
import { readInstruction } from './instructions.ts';
import { skipNote } from './notes.ts';
import { readNewNeedle } from './needle-names.ts';
import { readPrefix } from './prefixes.ts';
import { isBare } from './stitches.ts';
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
  /** True for the body of a group or of a prefix, which holds no prefixes itself. */
  readonly inner: boolean;
}

/** Words between clauses that say nothing. */
const LINKS = ['then', 'and', '&', 'now', 'also', 'next', 'end', 'ending', 'ends', 'with', 'finally'];

const END: Target = { kind: 'end' };

/**
 * Reads clauses up to the end, or up to a sentence that belongs to something else. A clause that is not understood is
 * reported once; the rest of the row is then taken as worked plainly.
 */
export function readBody(at: Cursor, options: BodyOptions): Body {
  const body: Body = { instructions: [], assertions: [], remarks: [], failed: false };
  const first = at.at;
  while (!at.done) {
    at.separators();
    if (at.done || (at.at > first && at.atSentence && options.isOther(at))) break;
    if (!readClause(at, { body, options, isFirst: body.instructions.length === 0 })) break;
  }
  settle(at, body, options);
  return body;
}

interface ClauseTask {
  readonly body: Body;
  readonly options: BodyOptions;
  readonly isFirst: boolean;
}

function readClause(at: Cursor, task: ClauseTask): boolean {
  const { body, options } = task;
  if (skipNote(at)) return true;
  const counts = task.isFirst ? null : readAssertions(at);
  if (counts) {
    body.assertions.push(...counts);
    return true;
  }
  const found = (options.inner ? null : readPrefix(at, (inner) => readBody(inner, { ...options, inner: true }))) ?? readLinked(at);
  if (!found) return failClause(at, task);
  body.instructions.push(...found);
  return endsWell(at) || failClause(at, task);
}

// Behind an instruction stands a separator, a bracket, or the next instruction.
function endsWell(at: Cursor): boolean {
  return at.atStop || startsInstruction(at) || LINKS.includes(at.text()) || at.looksLike(readAssertions) || at.text() === '-';
}

// "then k3", "and k2", "ending with k1".
function readLinked(at: Cursor): readonly Instruction[] | null {
  const nested = (inner: Cursor, isOther: BodyOptions['isOther']) => readBody(inner, { isOther, inner: true });
  return (
    readInstruction(at, nested) ??
    at.attempt(() => {
      if (!readNewNeedle(at) && !at.skip(...LINKS)) return null;
      readNewNeedle(at);
      return at.atStop ? [] : readInstruction(at, nested);
    })
  );
}

// A sentence of prose ends the row; a remark among the clauses is kept; anything else is a mistake.
function failClause(at: Cursor, task: ClauseTask): boolean {
  const { body } = task;
  const start = at.at;
  if (isRemark(at)) {
    if (at.atSentence && !task.options.inner) return false;
    skipClause(at);
    body.remarks.push(at.span(start));
    return true;
  }
  const word = at.peek()!;
  if (!body.failed) {
    at.scope.report('unknown-stitch', { from: word.from, to: word.to }, { about: written(at), nearest: nearestName(word.text) });
  }
  body.failed = true;
  skipClause(at);
  return true;
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

// A bare "k" alone is the whole row. After a mistake the rest of the row is worked as it presents itself.
function settle(at: Cursor, body: Body, options: BodyOptions): void {
  const { instructions } = body;
  const [only] = instructions;
  if (!options.inner && only && isWhole(at, instructions)) instructions[0] = toEnd(only);
  const last = instructions.at(-1);
  if (!body.failed || options.inner || last?.kind === 'turn') return;
  const span = last?.span ?? at.span(at.range.from);
  instructions.push({ kind: 'work-to', operation: null, target: END, span });
}

function isWhole(at: Cursor, instructions: readonly Instruction[]): boolean {
  const [only, after] = instructions;
  if (!only || instructions.length > 2) return false;
  const written = at.source.text.slice(only.span.from, only.span.to);
  return isBare(only, written) && (after === undefined || after.kind === 'evenly' || after.kind === 'turn');
}

/** The instruction worked to the end instead of once. */
export function toEnd(instruction: Instruction): Instruction {
  if (instruction.kind !== 'work') return instruction;
  return { kind: 'work-to', operation: instruction.operation, target: END, span: instruction.span };
}
