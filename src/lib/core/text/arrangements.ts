/** Stitches that change needles without being worked, needles that get a name, and where the round begins. */

import type { Arrangement, NeedleRef } from '../model/needle-words.ts';
import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Statement } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import { startsInstruction } from './wording.ts';
import { readFlatOver, readMovedBor, readMovedYarn } from './workplaces.ts';
import { NEEDLE_WORDS, readEmpty, readNeedle, readNeedles } from './needle-names.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const VERBS = ['sl', 'slip', 'slide', 'move', 'transfer', 'put', 'place', 'leave', 'arrange', 'slipping', 'divide'];

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

// "Slip rem 3 sts of 1st needle and rem 3 sts of 3rd needle onto the ends of 2nd needle".
function readTwoMoves(at: Cursor): readonly Arrangement[] | null {
  const first = at.at;
  if (!at.take(...VERBS)) return null;
  const sources = [at.attempt(readSource), at.skip('and', '&') ? at.attempt(readSource) : null];
  const to = sources.includes(null) ? null : readDestination(at);
  if (!to) return null;
  const span = at.span(first);
  return sources.map((source) => ({ kind: 'move-stitches', ...source!, end: null, to, until: null, span }));
}

function readSource(at: Cursor): { readonly count: Sized<number> | null; readonly from: NeedleRef } | null {
  at.skip('the', 'rem', 'remaining');
  const { count } = readWhich(at);
  const from = at.attempt(readFrom);
  return from ? { count, from } : null;
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

// "Sl first 2 sts of 2nd needle to 1st needle", "slip 10 sts from N2 to N1", "sl next 16 sts onto N2".
function readMove(at: Cursor): Arrangement | null {
  const verb = at.take(...VERBS)?.text;
  if (!verb || (!/^sl/u.test(verb) && at.looksLike(() => (at.skip('the'), at.take('other'))))) return null;
  return readMoved(at);
}

function readMoved(at: Cursor): Arrangement | null {
  const first = at.at;
  const { end, count } = readWhich(at);
  const from = at.attempt(readFrom);
  const to = count === null && from === null ? null : readDestination(at);
  if (!to || (from === null && (end === null || end === 'last'))) return null;
  const until = at.attempt(readUntil);
  return { kind: 'move-stitches', count, end: end === 'ahead' ? null : end, from, to, until, span: at.span(first) };
}

// "until N3 has 20 sts", "until the third has 20".
function readUntil(at: Cursor): Sized<number> | null {
  if (!at.take('until')) return null;
  if (!readNeedle(at) && !(at.skip('the'), at.kind('ordinal'))) return null;
  if (!at.take('has', 'holds', 'carries')) return null;
  const count = readCount(at);
  at.skip(...STITCH_WORDS);
  return count;
}

// "the first 2 sts", "the last st", "the other 9 heel sts", "all".
function readWhich(at: Cursor): {
  readonly end: 'first' | 'last' | 'ahead' | null;
  readonly count: Sized<number> | null;
} {
  at.skip('the', 'all');
  const word = at.take('first', 'last', 'next', 'other')?.text ?? null;
  const count = readCount(at) ?? (word && /^st(?:itch)?$/u.test(at.text()) ? everySize(1) : null);
  if (count && at.scope.isSection(at.text())) at.at += 1;
  at.skip(...STITCH_WORDS);
  return { end: word === 'first' || word === 'last' ? word : word === null ? null : 'ahead', count };
}

function readFrom(at: Cursor): NeedleRef | null {
  return at.take('of', 'from', 'on') ? readNeedle(at) : null;
}

/** Reads "to 1st needle", "on to the beginning of the third needle", "onto one needle". */
function readDestination(at: Cursor): NeedleRef | null {
  if (!at.take('to', 'onto') && !at.phrase('on to', 'on')) return null;
  at.attempt(() => {
    at.skip('the', 'other');
    return at.take('end', 'ends', 'beginning', 'beg', 'start', 'front', 'back') && at.take('of') ? true : null;
  });
  return readEmpty(at) ?? readNeedle(at);
}

// "Place the sts of N2 and N3 on one needle", "slip all instep sts onto one needle", "put the instep sts on N2".
function readGather(at: Cursor): Arrangement | null {
  const first = at.at;
  if (!at.take(...VERBS)) return null;
  at.skip('the', 'all', 'both');
  const of = at.attempt(readStitchesOf) ?? at.attempt(readSectionStitches);
  if (!of) return null;
  at.skip('both');
  const to = readDestination(at);
  if (!to) return null;
  at.skip('again');
  const carries = at.attempt(() => (at.take('for') ? (at.skip('the'), at.kind('word')) : null));
  const name = to.kind === 'same' ? null : (to.name ?? carries?.text ?? null);
  return { kind: 'gather', of, loads: [null], name, span: at.span(first) };
}

// "sts of N2 and N3", "N2 and N3 sts", "sts on the 2nd and 3rd needles", "N2 and N3".
function readStitchesOf(at: Cursor): Extract<Arrangement, { kind: 'gather' }>['of'] | null {
  if (at.take(...STITCH_WORDS) && !at.take('of', 'from', 'on')) return null;
  const needles = readNeedles(at);
  at.skip(...STITCH_WORDS);
  return needles && needles !== 'each' && needles.length > 1 ? needles : null;
}

// "(all) the instep sts"; "these 32 heel sts" are those in work.
function readSectionStitches(at: Cursor): Extract<Arrangement, { kind: 'gather' }>['of'] | null {
  if (at.take('them')) return { kind: 'run' };
  const these = at.skip('these', 'those');
  const count = readCount(at);
  if (these) {
    const name = at.scope.isSection(at.text()) ? at.kind('word') : null;
    return (count ?? name) && at.take(...STITCH_WORDS) ? { kind: 'run' } : null;
  }
  const name = at.peek();
  if (!name || !at.scope.isSection(name.text)) return null;
  at.at += 1;
  return at.take(...STITCH_WORDS) ? { kind: 'section', name: name.text } : null;
}

const REST = ['other', 'others', 'rest', 'rem', 'remaining', 'remainder'];

// "Put the other 28 sts on one needle, the front needle", "the other 30 wait on two front needles, 15 on each".
function readRest(at: Cursor): Arrangement | null {
  const first = at.at;
  at.take(...VERBS);
  at.skip('the', 'these');
  if (!at.take(...REST)) return null;
  at.skip('of', 'the');
  const count = readCount(at);
  at.skip(...STITCH_WORDS, 'of', 'the', 'rnd', 'round');
  skipStaying(at);
  if (!at.phrase('on to') && !at.take('on', 'onto', 'over', 'between', 'among')) return null;
  const needles = readHowMany(at);
  if (!needles || isDescription(at)) return null;
  const loads = readLoadsBehind(at, { needles: needles.count, total: count });
  at.attempt(() => (at.take('for') && (at.skip('the'), at.kind('word')) ? true : null));
  return { kind: 'gather', of: { kind: 'rest' }, loads, name: needles.name, span: at.span(first) };
}

// "rem sts on N2 and N3 are held" tells how it is, and puts nothing there.
function isDescription(at: Cursor): boolean {
  const more = at.looksLike(() => at.take('and', '&') && readNeedle(at));
  return more || /^(?:are|is|wait|rest|stay)$/u.test(at.text());
}

// "wait", "are the instep and rest", "are divided evenly".
function skipStaying(at: Cursor): void {
  at.attempt(() => {
    if (!at.take('are') || !at.skip('the')) return null;
    return at.scope.isSection(at.text()) && at.kind('word') && at.take('and') ? true : null;
  });
  at.skip(
    'go',
    'placed',
    'put',
    'wait',
    'rest',
    'stay',
    'are',
    'is',
    'held',
    'remain',
    'evenly',
    'equally',
    'divided',
    'left'
  );
}

interface Spread {
  readonly count: number;
  readonly name: string | null;
}

// "one needle, the front needle", "two front needles", "2 needles", "another needle".
function readHowMany(at: Cursor): Spread | null {
  const one = readEmpty(at) ?? readNeedle(at) ?? readHolder(at);
  if (one) return { count: 1, name: one.kind === 'same' ? null : one.name };
  return readSeveral(at);
}

// "two front needles", "2 needles".
function readSeveral(at: Cursor): Spread | null {
  const count = at.whole();
  if (count === null || count < 1 || count > 6) return null;
  const role = at.peek()?.kind === 'word' && !NEEDLE_WORDS.includes(at.text()) ? at.kind('word') : null;
  return at.take(...NEEDLE_WORDS) ? { count, name: role?.text ?? null } : null;
}

// "a holder", "waste yarn", "a thread": it carries the stitches like a needle that rests.
function readHolder(at: Cursor): NeedleRef | null {
  return at.attempt(() => {
    at.skip('a', 'an', 'the', 'stitch', 'st', 'some', 'length', 'piece', 'of', 'spare');
    return at.take('holder', 'thread', 'yarn', 'waste', 'scrap', 'wool')
      ? (at.skip('yarn', 'wool', 'thread'), { kind: 'empty', name: 'holder' })
      : null;
  });
}

// ", 15 on each", "(17 each)", "(15, 15)", "- 15 per needle".
function readLoadsBehind(
  at: Cursor,
  told: { readonly needles: number; readonly total: Sized<number> | null }
): readonly (Sized<number> | null)[] {
  const each = at.attempt(() => {
    const bracket = at.text() === '(' ? at.partner : -1;
    at.skip(',', '-', '(', ':', 'with');
    const count = readCount(at);
    at.skip(...STITCH_WORDS, 'on', 'per');
    if (!count || (!at.take('each') && at.text(-1) !== 'per')) return null;
    at.skip('needle', 'of', 'them');
    if (bracket >= 0) at.at = bracket + 1;
    return count;
  });
  if (!each) return told.needles === 1 ? [told.total] : new Array<null>(told.needles).fill(null);
  return new Array<Sized<number>>(told.needles).fill(each);
}

// "This is now the heel needle", "These 28 sts are on the heel needle", "this will be N3", "Needle A holds the instep".
function readNaming(at: Cursor): Arrangement | null {
  const first = at.at;
  const needle = at.attempt(readCarrier) ?? at.attempt(readDemonstrative);
  if (!needle) return null;
  const name = at.attempt(readNewName);
  if (name === null) return null;
  skipRest(at);
  return { kind: 'name-needle', needle, name, span: at.span(first) };
}

function readDemonstrative(at: Cursor): NeedleRef | null {
  if (!at.take('this', 'these', 'it', 'they')) return null;
  readCount(at);
  at.skip('heel', ...STITCH_WORDS, 'needle');
  if (!at.phrase('is now', 'are now', 'is', 'are', 'will be', 'will now be', 'becomes', 'become', 'now becomes'))
    return null;
  at.skip('now', 'on', 'called', 'again');
  return { kind: 'same' };
}

// "Needle A holds", "the old heel needle is now", "N2 carries".
function readCarrier(at: Cursor): NeedleRef | null {
  const needle = readNeedle(at);
  if (!needle || !at.phrase('holds', 'is now', 'becomes', 'carries', 'has', 'will be', 'will hold', 'now becomes'))
    return null;
  return at.peek()?.kind === 'number' ? null : needle;
}

// "the heel needle", "N3", "the instep sts", "the 1st needle again".
function readNewName(at: Cursor): string | null {
  at.skip('the');
  const needle = at.attempt(readNeedle);
  if (needle?.kind === 'named') return needle.name;
  readCount(at);
  const part = at.peek();
  if (!part || !at.scope.isSection(part.text)) return null;
  at.at += 1;
  at.skip(...STITCH_WORDS);
  return part.text;
}

// ", with 31 stitches" and "again" say nothing that is not checked elsewhere.
function skipRest(at: Cursor): void {
  at.skip('again');
  at.phrase('from now on', 'from here on');
  at.attempt(() => (at.skip(',') && at.take('with') && readCount(at) && at.take(...STITCH_WORDS) ? true : null));
}

/** Reads a note in brackets that names the needle in work: "(4th needle)", "(this is the 1st needle again)". */
export function readNamingNote(at: Cursor): Arrangement | null {
  return at.attempt(() => {
    const first = at.at;
    const end = at.partner;
    if (at.peek()?.kind !== 'open' || end < 0) return null;
    const inner = at.within(first + 1, end);
    const told = inner.attempt(readNaming) ?? inner.attempt(readBareName);
    if (!told || !inner.done) return null;
    at.at = end + 1;
    return told;
  });
}

function readBareName(at: Cursor): Arrangement | null {
  const first = at.at;
  at.skip('now', 'the', 'new', '=');
  const needle = readNeedle(at);
  if (needle?.kind !== 'named') return null;
  return { kind: 'name-needle', needle: { kind: 'same' }, name: needle.name, span: at.span(first) };
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
