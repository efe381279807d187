/** Words before a colon that say for which stitches the following holds: "Instep: …", "Sole: …". */

import type { Instruction } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import type { Body } from './body.ts';
import { isBare } from './stitches.ts';

/** Reads a prefix and the instructions behind it, up to the next prefix. */
export function readPrefix(at: Cursor, readInner: (at: Cursor) => Body): readonly Instruction[] | null {
  return at.attempt(() => {
    const first = at.at;
    const section = readSectionName(at);
    if (section === null) return null;
    const inner = at.within(at.at, endOfPrefix(at));
    const body = readInner(inner);
    at.at = inner.range.end;
    const instructions = body.instructions.map((instruction) => wholeWhenBare(at, instruction, body));
    return [{ kind: 'over', section, body: instructions, span: at.span(first) }];
  });
}

function wholeWhenBare(at: Cursor, instruction: Instruction, body: Body): Instruction {
  const written = at.source.text.slice(instruction.span.from, instruction.span.to);
  if (body.instructions.length !== 1 || instruction.kind !== 'work' || !isBare(instruction, written))
    return instruction;
  return { kind: 'work-to', operation: instruction.operation, target: { kind: 'end' }, span: instruction.span };
}

// "Instep:", "On the sole:", "Sole sts:".
function readSectionName(at: Cursor): string | null {
  return at.attempt(() => {
    at.skip('on', 'across', 'over', 'the');
    const name = at.peek();
    if (!name || !at.scope.isSection(name.text)) return null;
    at.at += 1;
    at.skip('st', 'sts', 'stitches');
    return at.take(':') ? name.text : null;
  });
}

/** Whether a prefix begins here. */
export function startsPrefix(at: Cursor): boolean {
  return at.looksLike(readSectionName);
}

// The stretch lasts to the next prefix, or to a sentence that does not go on with instructions.
function endOfPrefix(at: Cursor): number {
  const start = at.at;
  let end = at.range.end;
  while (!at.done) {
    if (at.at > start && at.atSentence && !continues(at)) {
      end = at.at;
      break;
    }
    at.at += 1;
  }
  at.at = start;
  return end;
}

function continues(at: Cursor): boolean {
  const kind = at.peek()?.kind;
  return !startsPrefix(at) && kind === 'word' && !at.peek()!.capital;
}
