/** Where the work goes on: a round that begins elsewhere, flat work over some needles, yarn that is joined anew. */

import type { Arrangement, FlatOver, NeedleRef } from '../model/needle-words.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readBor } from './marker-names.ts';
import { readNeedle, readNeedles } from './needle-names.ts';

// "The round now begins in the middle of the heel, with the first side needle", "Rnd begins at N1".
/** Reads where the round begins from now on. */
export function readMovedBor(at: Cursor): Arrangement | null {
  return at.attempt(() => {
    const first = at.at;
    at.skip('the', 'new', 'all');
    const isBor = at.attempt(() => readBor(at) || null);
    if (!isBor && !at.take('rnd', 'rnds', 'round', 'rounds')) return null;
    at.skip('now');
    if (!(isBor ? at.skip('is', 'are', 'will', 'be') : at.take('begins', 'begin', 'start', 'starts'))) return null;
    at.skip('now');
    const moved = at.looksLike(() => at.phrase('with this st', 'with these', 'with the st', 'at this st'));
    return { kind: 'move-bor', to: findNeedle(at) ?? (moved ? { kind: 'same' } : null), span: at.span(first) };
  });
}

// The needle that the rest of the sentence names, if any.
function findNeedle(at: Cursor): NeedleRef | null {
  let found: NeedleRef | null = null;
  while (!at.done && at.text() !== '.' && at.text() !== ';') {
    const needle: NeedleRef | null = found ? null : at.attempt(readNeedle);
    if (needle) found = at.text(-1) === 'needle' || needle.kind === 'named' ? needle : found;
    else at.at += 1;
  }
  return found;
}

// "Work back and forth on needle B only", "the heel is worked over the 4th and 1st needle".
/** Reads over which needles flat work goes. */
export function readFlatOver(at: Cursor): Arrangement | null {
  const first = at.at;
  const alone = at.attempt(readWorkedAlone);
  if (alone) return { kind: 'work-flat', over: alone, span: at.span(first) };
  const isFlat = skipToOver(at);
  if (isFlat === null) return null;
  const over = at.attempt(readOverNeedles) ?? at.attempt(readOverSection);
  if (!over) return null;
  const only = at.skip('only', 'alone');
  const isSection = typeof over === 'object' && 'section' in over;
  const told = only || (isFlat && !isSection);
  return told ? { kind: 'work-flat', over, span: at.span(first) } : null;
}

function readOverNeedles(at: Cursor): FlatOver | null {
  const needles = readNeedles(at);
  return needles && needles !== 'each' ? needles : null;
}

// "the 32 heel sts", "these 30 sts".
function readOverSection(at: Cursor): FlatOver | null {
  at.skip('the', 'these', 'those', 'first', 'next');
  const count = readCount(at);
  const name = at.scope.isSection(at.text()) ? at.kind('word') : null;
  if (!at.take('st', 'sts', 'stitch', 'stitches')) return null;
  const owners = at.attempt(() => (at.take('of', 'on') ? (at.skip('the'), readOverNeedles(at)) : null));
  if (owners) return owners;
  return name || count ? { section: name?.text ?? null, count } : null;
}

// "Only needle B is worked now".
function readWorkedAlone(at: Cursor): FlatOver | null {
  if (!at.take('only')) return null;
  const needles = readOverNeedles(at);
  return needles && at.phrase('is worked', 'are worked') && (at.skip('now', 'from', 'here'), at.atStop)
    ? needles
    : null;
}

// Up to "on" or "over", and whether the words before say that it is flat; null when there is neither.
function skipToOver(at: Cursor): boolean | null {
  if (!at.take('work', 'the', 'heel', 'cont', 'continue', 'working', 'knit')) return null;
  let isFlat = false;
  for (let words = 0; words < 10 && at.peek()?.kind === 'word'; words += 1) {
    if (at.phrase('back and forth', 'in rows', 'to and fro')) isFlat = true;
    else if (at.phrase('is worked', 'heel is worked')) isFlat = true;
    else if (at.take('on', 'over')) return isFlat;
    else at.at += 1;
  }
  return null;
}

// "Cut the yarn and attach it again at the beginning of N3", "rejoin yarn at N1".
/** Reads where the yarn is joined anew. */
export function readMovedYarn(at: Cursor): Arrangement | null {
  const first = at.at;
  at.attempt(() => (at.take('cut', 'break') && (at.skip('the', 'yarn', 'wool', ','), at.take('and')) ? true : null));
  if (!at.take('rejoin', 'join', 'attach')) return null;
  at.skip('the', 'yarn', 'wool', 'it', 'again');
  if (!at.take('at', 'to')) return null;
  at.skip('the', 'beginning', 'start', 'right', 'of', 'beg');
  const needle = readNeedle(at);
  return needle ? { kind: 'move-yarn', to: needle, span: at.span(first) } : null;
}
