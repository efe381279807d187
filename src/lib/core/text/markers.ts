/** Markers inside a row: pm, sm, rm, with names, and locking markers. */

import type { Instruction } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import { readBor, readLetter, readMarkerName, type MarkerName } from './marker-names.ts';

const PLACE = ['pm', 'pmk', 'place marker', 'place m', 'place a marker', 'pl m', 'place markers', 'place new marker'];
const SLIP = ['sm', 'slm', 'sl m', 'slip m', 'slip marker', 'slip the marker', 'sl marker', 'slip next marker'];
const REMOVE = [
  'rm',
  'remove m',
  'remove marker',
  'remove the marker',
  'removing marker',
  'removing m',
  'remove next marker'
];
const REMOVE_ALL = [
  'removing markers as you come to them',
  'removing all markers',
  'removing markers',
  'remove all markers',
  'remove markers'
];
const LOCKING = [
  'place a locking marker',
  'place locking marker',
  'hang a locking marker',
  'pm locking',
  'place removable marker',
  'place a removable marker',
  'place a split ring marker',
  'place split ring marker',
  'hang a marker',
  'place a safety pin'
];

/** Reads an instruction that places, slips or removes a marker. */
export function readMarker(at: Cursor): Instruction | null {
  const first = at.at;
  if (at.phrase(...LOCKING)) return lock(at, first);
  if (at.phrase(...PLACE)) return { kind: 'marker', action: 'place', name: readPlacedName(at), span: at.span(first) };
  if (at.phrase(...SLIP)) return { kind: 'marker', action: 'slip', name: readOwnName(at), span: at.span(first) };
  if (at.phrase(...REMOVE_ALL)) return { kind: 'remove-markers', span: at.span(first) };
  if (at.phrase(...REMOVE)) return { kind: 'marker', action: 'remove', name: readOwnName(at), span: at.span(first) };
  return readSplitName(at, first);
}

// "place marker A", "remove BOR marker", "slip marker B", "place end marker for BOR".
function readSplitName(at: Cursor, first: number): Instruction | null {
  return at.attempt(() => {
    const verb = at.take('place', 'slip', 'sl', 'remove')?.text;
    if (!verb) return null;
    const marker = verb === 'place' ? (readNewName(at) ?? readMarkerName(at)) : readMarkerName(at);
    if (!marker) return null;
    const action = verb === 'place' ? 'place' : verb === 'remove' ? 'remove' : 'slip';
    return { kind: 'marker', action, name: marker.name, span: at.span(first) };
  });
}

// "middle marker", "a red marker", "end marker for BOR": from now on it is called so.
function readNewName(at: Cursor): MarkerName | null {
  return at.attempt(() => {
    at.skip('a', 'the');
    const word = at.kind('word')?.text;
    if (!word || /^(?:next|new|one|locking|removable|bor)$/u.test(word) || !at.take('marker')) return null;
    const name = at.attempt(readForBor) ? 'BOR' : word;
    at.scope.markerNames.set(word, name);
    return { name };
  });
}

function readOwnName(at: Cursor): string | null {
  return readBor(at) ? 'BOR' : readLetter(at);
}

// "pm A", "pm for BOR", "pm for new BOR", "pm for beginning of round", "pm for thumb".
function readPlacedName(at: Cursor): string | null {
  const letter = readOwnName(at);
  if (letter !== null) return letter;
  if (at.attempt(readForBor)) return 'BOR';
  at.attempt(() => {
    if (!at.take('for', 'to')) return null;
    while (at.peek()?.kind === 'word') at.at += 1;
    return true;
  });
  return null;
}

function readForBor(at: Cursor): true | null {
  if (!at.take('for', 'to', 'at')) return null;
  at.skip('mark', 'indicate', 'the', 'new');
  return readBor(at) ? true : null;
}

function lock(at: Cursor, first: number): Instruction {
  at.attempt(() => {
    if (!at.take('in', 'on', 'into')) return null;
    while (!at.atStop) at.at += 1;
    return true;
  });
  return { kind: 'locking-marker', name: readLetter(at), span: at.span(first) };
}
