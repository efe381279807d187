/** Shaping spread over rows: "Dec every 3rd rnd 4 times", "inc 1 st at each end of next and every foll 4th row until there are 60 sts". */

import type { RowExtent } from '../model/repeating.ts';
import type { Instruction, Statement } from '../model/pattern.ts';
import { everySize } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readNoun } from './labels.ts';
import { readExtent } from './extents.ts';
import { readChange, readPlace, standardFor, type Change } from './shaping.ts';

/** When the shaped rows come. */
interface Schedule {
  readonly plainBetween: number;
  readonly atOnce: boolean;
  /** How often, where the schedule itself tells: "next 4 rows". */
  readonly extent: RowExtent | null;
}

/** Reads a sentence that shapes every so many rows. */
export function readShapeRows(at: Cursor): Statement | null {
  const first = at.at;
  const during = skipSameTime(at);
  at.skip('work', 'cont', 'continue', 'keeping', 'patt', 'correct', ',');
  const change = readChange(at);
  if (!change) return null;
  const body = readBodyOf(at, { change, first });
  const schedule = readSchedule(at);
  if (!schedule) return null;
  at.skip(',');
  const extent = schedule.extent ?? readExtent(at);
  if (!at.atStop && at.peek()?.kind !== 'open') return null;
  if (!extent && !during) return null;
  return {
    kind: 'shape-rows',
    change: change.change,
    body,
    ...schedule,
    extent: asTotal(extent),
    during,
    sizes: at.scope.onlySizes,
    assertions: [],
    span: at.span(first)
  };
}

// Skips "at the same time" with its commas.
function skipSameTime(at: Cursor): boolean {
  at.skip('and', ',');
  const found = at.phrase('at the same time', 'at same time');
  if (found) at.skip(',', ':');
  return found;
}

// Nothing has been shaped yet, so that every time counts.
function asTotal(extent: RowExtent | null): RowExtent | null {
  return extent?.kind === 'times' ? { ...extent, meaning: 'total' } : extent;
}

// Without a place the stitches are spread evenly; one goes to the end of the row.
function readBodyOf(at: Cursor, told: { readonly change: Change; readonly first: number }): Instruction[] {
  const { change, first } = told;
  const place = readPlace(at);
  const span = at.span(first);
  if (place) return [{ kind: 'shape', ...change, ...place, span }];
  return [{ kind: 'evenly', operation: standardFor(at, change.change === 'dec'), count: change.count, span }];
}

function readSchedule(at: Cursor): Schedule | null {
  at.skip('of', 'on', 'in');
  at.skip('the');
  return at.attempt(readNextRows) ?? at.attempt(readNextAndEvery) ?? at.attempt(readFollowing) ?? at.attempt(readEvery);
}

// "next row", "next 4 rows".
function readNextRows(at: Cursor): Schedule | null {
  if (!at.take('next', 'foll', 'following')) return null;
  const count = readCount(at) ?? everySize(1);
  if (!readNoun(at) || at.text() === 'and') return null;
  return { plainBetween: 0, atOnce: true, extent: { kind: 'times', count, meaning: 'total' } };
}

// "next and every foll 4th row", "next rnd and then every other rnd".
function readNextAndEvery(at: Cursor): Schedule | null {
  if (!at.take('next')) return null;
  readNoun(at);
  if (!at.skip('and', ',', 'then')) return null;
  at.skip('on');
  const every = readFollowing(at) ?? readEvery(at);
  if (!every) return null;
  const { extent } = every;
  const times = extent?.kind === 'times' ? { ...extent, count: extent.count.map((entry) => (entry ?? 0) + 1) } : null;
  return { ...every, atOnce: true, extent: times };
}

// "foll 3 alt rows", "following four 6th rows".
function readFollowing(at: Cursor): Schedule | null {
  return at.attempt(() => {
    if (!at.take('foll', 'following')) return null;
    const count = readCount(at);
    const nth = readNth(at);
    if (!count || nth === null || !readNoun(at)) return null;
    return { plainBetween: nth - 1, atOnce: false, extent: { kind: 'times', count, meaning: 'total' } };
  });
}

// "every rnd", "every other rnd", "every foll 4th row", "each alt row".
function readEvery(at: Cursor): Schedule | null {
  return at.attempt(() => {
    if (!at.take('every', 'each', 'foll')) return null;
    at.skip('foll', 'following');
    const nth = readNth(at) ?? 1;
    return readNoun(at) ? { plainBetween: nth - 1, atOnce: false, extent: null } : null;
  });
}

function readNth(at: Cursor): number | null {
  return at.take('other', 'alt', 'alternate') ? 2 : (at.kind('ordinal')?.value ?? null);
}
