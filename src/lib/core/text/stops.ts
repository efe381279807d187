/** How far rows are worked when no number of them is told: up to a length, or as far as the knitter finds right. */

import type { LengthStop } from '../model/repeating.ts';
import type { Side } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import { readLength } from './lengths.ts';
import { readNoun } from './labels.ts';

/** A length, or nothing that can be counted. */
export type Stop = ({ readonly kind: 'length' } & LengthStop) | { readonly kind: 'free' };

const UNTIL = ['until', 'till', 'til', 'for', 'to'];

/** Pieces that are measured from the cast-on. */
const WHOLE = new Set(['piece', 'work', 'hat', 'sock', 'mitten', 'cap', 'sleeve', 'it', 'glove', 'beanie']);

/** Words that leave the length to the knitter. */
const FREE = new Set([
  ...['desired', 'required', 'wanted', 'wished', 'reach', 'reaches', 'covers', 'touches', 'fits', 'like', 'shorter'],
  ...['less', 'short', 'enough', 'tip']
]);

const EDGES = ['cast - on edge', 'cast - on', 'cast on edge', 'cast on', 'co edge', 'co', 'beg', 'beginning', 'start'];

/** Reads "until piece measures 6 in from CO, ending with a WS row", "until leg is desired length". */
export function readStop(at: Cursor): Stop | null {
  return at.attempt(() => {
    if (!at.take(...UNTIL)) return null;
    const stop = at.attempt(readFree) ?? at.attempt(readMeasured);
    if (!stop) return null;
    at.attempt(readAlternative);
    const lastSide = readEnding(at);
    if (!at.atStop && at.peek()?.kind !== 'open') return null;
    return stop.kind === 'free' ? stop : { ...stop, lastSide };
  });
}

/** Reads "or until leg is desired length", "or desired length" behind a number or a length, which holds. */
export function readAlternative(at: Cursor): true | null {
  at.skip(',');
  if (!at.take('or')) return null;
  at.skip(...UNTIL);
  return readFree(at) ? true : null;
}

// The clause goes up to a comma or a bracket.
function readFree(at: Cursor): Stop | null {
  let isFree = false;
  while (!at.atStop && at.peek()?.kind !== 'open') {
    if (FREE.has(at.text())) isFree = true;
    at.at += 1;
  }
  return isFree ? { kind: 'free' } : null;
}

function readMeasured(at: Cursor): Extract<Stop, { kind: 'length' }> | null {
  const here = at.at;
  const from = readStart(at);
  const piece = readPiece(at);
  const lengthCm = readLength(at);
  if (!lengthCm) return null;
  at.skip('long', 'in', 'length');
  const start = from ?? readStart(at);
  if (at.at === here) return null;
  return { kind: 'length', lengthCm, from: start ?? (piece === 'whole' ? 'cast-on' : 'stage'), lastSide: null };
}

// "piece measures", "the leg meas approx", "work from beg measures"; without a noun the stage is measured.
function readPiece(at: Cursor): 'whole' | 'part' {
  const here = at.at;
  at.skip('the', 'your');
  const noun = at.peek()?.kind === 'word' ? at.text() : '';
  for (let words = 0; words < 4; words += 1) {
    if (at.take('measures', 'meas', 'measure', 'is')) {
      at.skip('approx', 'about', 'approximately', '.');
      return WHOLE.has(noun) ? 'whole' : 'part';
    }
    at.at += 1;
  }
  at.at = here;
  return 'part';
}

// "from CO", "from cast-on edge", "from beg", "from start of heel".
function readStart(at: Cursor): LengthStop['from'] | null {
  return at.attempt(() => {
    if (!at.take('from')) return null;
    at.skip('the', 'your');
    const castOn = at.phrase(...EDGES);
    while (!at.atStop && at.peek()?.kind !== 'open') at.at += 1;
    return castOn ? 'cast-on' : 'stage';
  });
}

/** Reads ", ending with a WS row", ", ending with RS facing for next row", ", end on a p row", ", ending after rnd 5". */
export function readEnding(at: Cursor): Side | null {
  let side: Side | null = null;
  at.attempt(() => {
    at.skip(',', ';', 'and');
    if (!at.take('end', 'ending', 'ends', 'finishing', 'finish')) return null;
    at.skip('with', 'after', 'on', 'by', 'working', 'a', 'an', 'the', 'last');
    side = readLastSide(at);
    while (!at.atStop && at.peek()?.kind !== 'open') at.at += 1;
    return true;
  });
  return side;
}

// The side that faces for the next row is the other one.
function readLastSide(at: Cursor): Side | null {
  const side = at.take('rs', 'ws', 'p', 'purl', 'k', 'knit')?.text;
  if (!side) return null;
  const isRight = side === 'rs' || side === 'k' || side === 'knit';
  at.skip('side');
  const isNext = at.take('facing') !== null;
  if (!isNext) readNoun(at);
  return isRight === isNext ? 'WS' : 'RS';
}
