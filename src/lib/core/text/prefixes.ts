/** Words that say for which stitches the following holds: "Instep: …", "1st and 3rd needles: …", "on N2, …". */

import type { Instruction } from '../model/pattern.ts';
import type { NeedleRefs } from '../model/needle-words.ts';
import type { Cursor } from './cursor.ts';
import type { Body } from './body.ts';
import { readNeedles, readReceiver } from './needle-names.ts';
import { isBare } from './stitches.ts';
import { startsInstruction } from './wording.ts';

/** Which stitches a prefix speaks of. */
type Where =
  { readonly kind: 'section'; readonly section: string } | { readonly kind: 'needles'; readonly needles: NeedleRefs };

/** Reads a prefix and the instructions behind it, up to the next prefix. */
export function readPrefix(at: Cursor, readInner: (at: Cursor) => Body): readonly Instruction[] | null {
  return at.attempt(() => {
    const first = at.at;
    const bracketed = readBracketed(at, readInner);
    if (bracketed) return bracketed;
    const where = readWhere(at);
    if (where === null) return null;
    const inner = at.within(at.at, endOfPrefix(at));
    const body = readInner(inner);
    at.at = inner.range.end;
    const told = { body: body.instructions.map((part) => wholeWhenBare(at, part, body)), span: at.span(first) };
    return [
      where.kind === 'section'
        ? { kind: 'over', section: where.section, ...told }
        : { kind: 'over-needles', needles: where.needles, ...told }
    ];
  });
}

// "(Needle 1 - K to last 3 sts, k2tog, k1)".
function readBracketed(at: Cursor, readInner: (at: Cursor) => Body): readonly Instruction[] | null {
  if (!startsBracketed(at)) return null;
  const end = at.partner;
  const inner = at.within(at.at + 1, end);
  const found = readPrefix(inner, readInner);
  at.at = end + 1;
  return found;
}

/** Whether a bracket begins here that holds what is told for a needle. */
export function startsBracketed(at: Cursor): boolean {
  const end = at.partner;
  return at.peek()?.kind === 'open' && end >= 0 && at.within(at.at + 1, end).looksLike(readNeedleNames);
}

function wholeWhenBare(at: Cursor, instruction: Instruction, body: Body): Instruction {
  const written = at.source.text.slice(instruction.span.from, instruction.span.to);
  if (body.instructions.length !== 1 || instruction.kind !== 'work' || !isBare(instruction, written))
    return instruction;
  return { kind: 'work-to', operation: instruction.operation, target: { kind: 'end' }, span: instruction.span };
}

function readWhere(at: Cursor): Where | null {
  return at.attempt(readSectionName) ?? at.attempt(readNeedleNames);
}

// "Instep:", "On the sole:", "Sole sts:".
function readSectionName(at: Cursor): Where | null {
  at.skip('on', 'across', 'over', 'the');
  const section = readHalf(at) ?? readDeclared(at);
  if (section === null) return null;
  at.skip('st', 'sts', 'stitches');
  return at.take(':') ? { kind: 'section', section } : null;
}

// "First half of rnd".
function readHalf(at: Cursor): string | null {
  return at.attempt(() => {
    const which = at.kind('ordinal')?.value;
    if ((which !== 1 && which !== 2) || !at.take('half')) return null;
    at.skip('of', 'the', 'rnd', 'round', 'row');
    return which === 1 ? 'first half' : 'second half';
  });
}

// A name from the "Sections:" line, of one word or several, or a part of the body.
function readDeclared(at: Cursor): string | null {
  const first = at.at;
  for (let words = 4; words > 0; words -= 1) {
    at.at = Math.min(first + words, at.range.end);
    const name = at.written(first).toLowerCase().replaceAll(/\s+/gu, ' ');
    if (at.scope.isSection(name)) return name;
  }
  at.at = first;
  return null;
}

// "N1:", "1st and 3rd needles -", "Front needle (instep):", "on the 2nd needle, k…", "at N4: …".
function readNeedleNames(at: Cursor): Where | null {
  const tool = at.take('with', 'using') !== null;
  const led = at.skip('on', 'across', 'over', 'for', 'at', 'work');
  const needles = readNeedles(at);
  if (!needles) return null;
  at.skip('st', 'sts', 'stitches');
  skipRemark(at);
  const marked = at.take(':', '-') !== null;
  const joined = led && !tool && (at.take(',') !== null || startsInstruction(at));
  if (!marked && !joined) return null;
  return startsInstruction(at) || at.text() === 'plain' || at.looksLike(readReceiver)
    ? { kind: 'needles', needles }
    : null;
}

// "(instep)", "(heel needle)".
function skipRemark(at: Cursor): void {
  const end = at.partner;
  if (
    at.peek()?.kind === 'open' &&
    end >= 0 &&
    end - at.at <= 6 &&
    !at.within(at.at + 1, end).looksLike(startsInstruction)
  )
    at.at = end + 1;
}

/** Whether words that name needles for what follows begin here. */
export function startsNeedlePrefix(at: Cursor): boolean {
  return at.looksLike(readNeedleNames);
}

/** Whether a prefix begins here. */
export function startsPrefix(at: Cursor): boolean {
  return at.looksLike(readWhere);
}

// The stretch lasts to the next prefix, or to a sentence that does not go on with instructions.
function endOfPrefix(at: Cursor): number {
  const start = at.at;
  let end = at.range.end;
  while (!at.done) {
    if (at.at > start && endsStretch(at)) {
      end = at.at;
      break;
    }
    at.at = at.partner >= 0 && at.peek()?.kind === 'open' ? at.partner + 1 : at.at + 1;
  }
  at.at = start;
  return end;
}

function endsStretch(at: Cursor): boolean {
  if (at.atSentence) return !continues(at);
  return /^[,;]$/u.test(at.text(-1)) && startsPrefix(at);
}

function continues(at: Cursor): boolean {
  const kind = at.peek()?.kind;
  return !startsPrefix(at) && kind === 'word' && !at.peek()!.capital;
}
