/** How the stitches just named are worked, told behind a colon: "work the next 15 instep sts: *k3, p2; rep from * to end". */

import type { Instruction, Target } from '../model/pattern.ts';
import type { Body } from './body.ts';
import type { Cursor } from './cursor.ts';
import { startsInstruction } from './wording.ts';

/**
 * Reads what stands behind the colon, up to the end of the sentence, and puts it in the place of "work …". A name that the
 * needle got in between stays.
 */
export function readStretch(at: Cursor, instructions: Instruction[], readInner: (at: Cursor) => Body): boolean {
  const index = instructions.findLastIndex((part) => part.kind !== 'name-needle');
  const target = index < 0 ? null : targetOf(instructions[index]!);
  if (!target || at.text() !== ':') return false;
  const first = at.at;
  const inner = at.within(first + 1, endOfSentence(at));
  if (!startsInstruction(inner)) return false;
  const body = readInner(inner).instructions;
  at.at = inner.range.end;
  instructions[index] = { kind: 'over-target', target, body, span: at.span(first) };
  return true;
}

function targetOf(part: Instruction): Target | null {
  if (part.kind === 'work-as-set') return { kind: 'next', count: part.count };
  return part.kind === 'work-to' && part.operation === null ? part.target : null;
}

function endOfSentence(at: Cursor): number {
  let end = at.at + 1;
  while (end < at.range.end && at.source.tokens[end]!.text !== '.') end += 1;
  return end;
}
