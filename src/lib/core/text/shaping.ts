/** Increases and decreases told by their place: "inc 6 sts evenly", "dec 1 st at each end", "dec 1 st each side of both markers". */

import type { Instruction } from '../model/pattern.ts';
import type { Operation } from '../model/operation.ts';
import { operationNamed } from '../model/operations.ts';
import type { Shape } from '../model/shaping.ts';
import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';

const MORE = ['inc', 'increase', 'increasing', 'm'];
const FEWER = ['dec', 'decrease', 'decreasing'];
const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const MARKER_WORDS = ['marker', 'markers', 'm', 'ms'];

/** What is changed, and by how many stitches. */
export interface Change {
  readonly change: 'inc' | 'dec';
  readonly count: Sized<number>;
}

/** Reads an evenly spaced increase or decrease. */
export function readEvenly(at: Cursor): Instruction | null {
  return at.attempt(() => {
    const first = at.at;
    const verb = at.take(...MORE, ...FEWER)?.text;
    if (!verb || (verb === 'm' && at.peek()?.glued)) return null;
    const count = readCount(at);
    if (!count) return null;
    at.skip(...STITCH_WORDS);
    if (!at.take('evenly') && !at.phrase('spaced evenly')) return null;
    at.skip('spaced', 'around', 'across', 'the', 'rnd', 'round', 'row', 'in', 'over', 'this');
    return { kind: 'evenly', operation: standardFor(at, FEWER.includes(verb)), count, span: at.span(first) };
  });
}

/** The increase or decrease that is meant when the text names none; the key of the pattern may say which. */
export function standardFor(at: Cursor, fewer: boolean): Operation {
  const own = at.scope.key.find((entry) => entry.atoms.join(' ') === (fewer ? 'dec' : 'inc'));
  return own?.operation ?? operationNamed(fewer ? 'k2tog' : 'm1')!;
}

/** Reads "dec 1 st at each end", "inc 1 st each side of marker". */
export function readShape(at: Cursor): Shape | null {
  return at.attempt(() => {
    const first = at.at;
    const change = readChange(at);
    const place = change ? readPlace(at) : null;
    return change && place ? { kind: 'shape', ...change, ...place, span: at.span(first) } : null;
  });
}

/** Reads "dec", "dec 1 st", "increase 2 sts"; without a number one stitch is meant. */
export function readChange(at: Cursor): Change | null {
  return at.attempt(() => {
    const verb = at.take(...FEWER, ...MORE.filter((word) => word !== 'm'))?.text;
    if (!verb) return null;
    const count = readCount(at);
    at.skip(...STITCH_WORDS);
    return { change: FEWER.includes(verb) ? 'dec' : 'inc', count: count ?? everySize(1) };
  });
}

/** Reads where a row is shaped: "at each end", "each side of both markers", "at beg of rnd". */
export function readPlace(at: Cursor): Pick<Shape, 'places' | 'markers'> | null {
  return at.attempt(() => {
    at.skip('at', 'on');
    return at.attempt(readMarkers) ?? at.attempt(readEnds) ?? at.attempt(readOneEnd);
  });
}

// "each side of both markers", "either side of marker", "each side of the 2 knit sts between markers".
function readMarkers(at: Cursor): Pick<Shape, 'places' | 'markers'> | null {
  if (!at.phrase('each side of', 'either side of', 'both sides of', 'before and after')) return null;
  at.skip('the');
  const all = at.take('each', 'every', 'all', 'both')?.text;
  const number = all === 'both' ? 2 : at.whole();
  if (at.take(...MARKER_WORDS)) return { places: 'markers', markers: number ?? (all ? null : 1) };
  at.skip('knit', 'k', 'purl', 'p', 'centre', 'center', 'seam', 'marked');
  if (!at.take(...STITCH_WORDS)) return null;
  at.phrase('between markers', 'between the markers', 'between m');
  return { places: 'pair', markers: 2 };
}

// "each end", "both ends", "each side", "beg and end of rnd".
function readEnds(at: Cursor): Pick<Shape, 'places' | 'markers'> | null {
  const both = at.phrase('each end', 'both ends', 'each side', 'both sides', 'either end', 'each edge', 'both edges');
  if (!both && !at.phrase('beg and end', 'beginning and end', 'start and end')) return null;
  readOfRow(at);
  return { places: 'ends', markers: null };
}

function readOneEnd(at: Cursor): Pick<Shape, 'places' | 'markers'> | null {
  at.skip('the');
  const place = at.take('beg', 'beginning', 'start', 'end')?.text;
  if (!place) return null;
  readOfRow(at);
  return { places: place === 'end' ? 'end' : 'beginning', markers: null };
}

// "of rnd", "of the row"; "of every 4th row" is left to be read as a schedule.
function readOfRow(at: Cursor): void {
  at.attempt(() => {
    if (!at.take('of')) return null;
    at.skip('the', 'this');
    return at.take('rnd', 'round', 'row') ? true : null;
  });
}
