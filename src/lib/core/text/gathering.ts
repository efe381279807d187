/** Stitches that are put on needles of their own: those of several needles, of a section, or all the others. */

import type { Arrangement, NeedleRef } from '../model/needle-words.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { STITCH_WORDS } from './layouts.ts';
import { readDestination, VERBS } from './moves.ts';
import { NEEDLE_WORDS, readEmpty, readNeedle, readNeedles } from './needle-names.ts';

/** Reads "Place the sts of N2 and N3 on one needle", "slip all instep sts onto one needle", "put the instep sts on N2". */
export function readGather(at: Cursor): Arrangement | null {
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

/** Reads "Put the other 28 sts on one needle, the front needle", "the other 30 wait on two front needles, 15 on each". */
export function readRest(at: Cursor): Arrangement | null {
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
