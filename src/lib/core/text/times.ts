/** How often something is worked: "3 times", "twice", "x 4", "7 more times", "8 times in total". */

import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';

/** A number of times and what it counts. `more`: after the first; `total`: with it; `plain`: the text does not say. */
export interface Times {
  readonly count: Sized<number>;
  readonly meaning: 'more' | 'total' | 'plain';
}

const ADVERBS: Readonly<Record<string, number>> = { once: 1, twice: 2, thrice: 3 };
const TOTAL = ['in total', 'in all', 'altogether', 'total', 'all told'];

/** Reads "3 times", "3 (4, 5) more times", "twice more", "a total of 5 times", "x 4", "4x"; `null` for anything else. */
export function readTimes(at: Cursor): Times | null {
  return at.attempt(readTotalOf) ?? at.attempt(readAdverb) ?? at.attempt(readCross) ?? at.attempt(readNumber);
}

/** Reads times that follow one stitch or a bracket, where nothing but the whole number can be meant. */
export function readTimesCount(at: Cursor): Sized<number> | null {
  return at.attempt(() => {
    const times = readTimes(at);
    return times && times.meaning !== 'more' ? times.count : null;
  });
}

function readTotalOf(at: Cursor): Times | null {
  at.skip('for');
  if (!at.phrase('a total of', 'total of')) return null;
  const count = readCount(at);
  return count && at.take('times', 'time', 'x') ? { count, meaning: 'total' } : null;
}

function readAdverb(at: Cursor): Times | null {
  const value = ADVERBS[at.text()];
  if (value === undefined) return null;
  at.at += 1;
  return { count: everySize(value), meaning: meaningAfter(at) };
}

function readCross(at: Cursor): Times | null {
  if (!at.take('x')) return null;
  const count = readCount(at);
  return count ? { count, meaning: meaningAfter(at) } : null;
}

function readNumber(at: Cursor): Times | null {
  const count = readCount(at);
  if (!count) return null;
  if (at.take('x')) return { count, meaning: meaningAfter(at) };
  const more = at.skip('more', 'further', 'additional');
  if (!at.take('times', 'time')) return null;
  const after = meaningAfter(at);
  return { count, meaning: more ? 'more' : after };
}

function meaningAfter(at: Cursor): Times['meaning'] {
  if (at.skip('more', 'again')) return 'more';
  return at.phrase(...TOTAL) ? 'total' : 'plain';
}
