/** Stitches that change needles without being worked, needles that get a name, and where the round begins. */

import type { Arrangement } from '../model/needle-words.ts';
import type { Statement } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import { readGather, readRest } from './gathering.ts';
import { readMove, readMoved, readTwoMoves } from './moves.ts';
import { readNaming } from './naming.ts';
import { startsInstruction } from './wording.ts';
import { readFlatOver, readMovedBor, readMovedYarn } from './workplaces.ts';

/** Reads a sentence in which stitches change needles, and none is worked. */
export function readArrange(at: Cursor): Statement | null {
  const first = at.at;
  const lead = skipMoveLead(at);
  const actions: Arrangement[] = [];
  for (;;) {
    const found = at.attempt(() => readTwoMoves(at)) ?? wrapped(at.attempt(() => readNext(at, actions)));
    if (found.length === 0) break;
    actions.push(...found);
  }
  if (actions.length === 0)
    return lead && startsInstruction(at) ? { kind: 'arrange', actions, span: at.span(first) } : null;
  skipRemark(at);
  return at.atStop ? { kind: 'arrange', actions, span: at.span(first) } : null;
}

function wrapped(action: Arrangement | null): readonly Arrangement[] {
  return action ? [action] : [];
}

// Of several moves only the first may have a verb.
function readNext(at: Cursor, before: readonly Arrangement[]): Arrangement | null {
  if (before.length > 0) at.skip(',', ';', 'and', 'then', '&');
  const further = before.at(-1)?.kind === 'move-stitches' ? at.attempt(readMoved) : null;
  return further ?? readArrangement(at);
}

// ", leaving the sts on their two needles", ", which then wait".
function skipRemark(at: Cursor): void {
  at.attempt(() => {
    at.skip(',', ';');
    if (!at.take('leaving', 'where', 'which', 'so', 'and') && at.peek()?.kind !== 'open') return null;
    while (!at.done && at.text() !== '.') at.at += 1;
    return true;
  });
}

type Reader = (at: Cursor) => Arrangement | null;

// A new kind of arrangement is one more reader here.
const READERS: readonly Reader[] = [
  readMove,
  readGather,
  readRest,
  readNaming,
  readMovedBor,
  readFlatOver,
  readMovedYarn
];

/** Reads one arrangement. */
export function readArrangement(at: Cursor): Arrangement | null {
  for (const reader of READERS) {
    const found = at.attempt(reader);
    if (found) return found;
  }
  return null;
}

// What stands before several moves and says what they are for: "Move every needle on by 2 sts:", "Re-seat the sts:".
function skipMoveLead(at: Cursor): boolean {
  return (
    at.attempt(() => {
      const isMove = ['move', 'shift', 'rearrange', 'arrange', 'rotate'].includes(at.text());
      for (let words = 0; words < 12 && at.peek() && !/^[.,;:]$/u.test(at.text()); words += 1) at.at += 1;
      if (!at.take(':')) return null;
      return isMove || at.looksLike(readArrangement) ? true : null;
    }) === true
  );
}
