/** How far rows are worked again: "3 more times", "until 24 sts rem", "for 20 rnds", "until all sts have been worked". */

import type { NeedleRefs } from '../model/needle-words.ts';
import type { RowExtent } from '../model/repeating.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readNoun } from './labels.ts';
import { readNeedles } from './needle-names.ts';
import { readEnding, readStop } from './stops.ts';
import { readTimes } from './times.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const WORKED = [
  ...['have been worked in', 'are worked in', 'have been taken in', 'are taken in', 'have been worked', 'are worked'],
  ...['have been used up', 'have been used', 'are used up']
];
const REST = ['rem', 'remain', 'remaining'];

/** Reads how far rows are worked: "3 more times", "until 24 sts rem", "for 20 rnds". */
export function readExtent(at: Cursor): RowExtent | null {
  return (
    at.attempt(readUntil) ??
    at.attempt(readAllWorked) ??
    at.attempt(readForRows) ??
    at.attempt(readMoreTimes) ??
    at.attempt(readStop)
  );
}

function readMoreTimes(at: Cursor): RowExtent | null {
  const times = readTimes(at);
  if (!times) return null;
  at.skip('again');
  return { kind: 'times', count: times.count, meaning: times.meaning === 'plain' ? 'unclear' : times.meaning };
}

// "for 20 rnds", "for a total of 20 rnds".
function readForRows(at: Cursor): RowExtent | null {
  if (!at.take('for')) return null;
  const isTotal = at.phrase('a total of');
  const count = readCount(at);
  if (!count || !readNoun(at)) return null;
  readEnding(at);
  return { kind: 'rows', count, meaning: isTotal ? 'total' : 'more' };
}

// "until all sts have been worked", "until all heel sts have been worked".
function readAllWorked(at: Cursor): RowExtent | null {
  if (!at.take('until', 'till') || !at.take('all')) return null;
  at.skip('the');
  for (let words = 0; words < 3 && !STITCH_WORDS.includes(at.text()); words += 1) at.at += 1;
  if (!at.take(...STITCH_WORDS) || !at.phrase(...WORKED)) return null;
  at.attempt(() => (at.skip('and', ',', 'when'), readCount(at) && at.take(...STITCH_WORDS) && at.take(...REST)));
  readEnding(at);
  return { kind: 'all-worked' };
}

// "until 24 sts rem", "until there are 24 sts", "until 18 heel sts remain", "to 24 sts".
function readUntil(at: Cursor): RowExtent | null {
  if (!at.take('until', 'to', 'till')) return null;
  at.phrase('there are', 'you have', 'there remain', 'only');
  const count = readCount(at);
  if (!count) return null;
  if (readNoun(at)) return readRowsDone(at, count);
  const part = STITCH_WORDS.includes(at.text()) ? null : (at.kind('word')?.text ?? null);
  if (!at.take(...STITCH_WORDS) && !at.looksLike(readOnNeedles)) return null;
  at.phrase('rem', 'remain', 'remaining', 'remains', 'are left', 'left', 'in all');
  const on = at.attempt(readOnNeedles);
  skipSecondCount(at);
  at.phrase('in all', 'on needles', 'on the needles');
  return endsHere(at) ? { kind: 'until', count, of: part, on } : null;
}

// A bracket may say something more about the number.
function endsHere(at: Cursor): boolean {
  return at.atStop || at.peek()?.kind === 'open';
}

// "until 28 rnds have been worked".
function readRowsDone(at: Cursor, count: Sized<number>): RowExtent | null {
  at.phrase('have been worked', 'have been completed', 'are worked', 'are done', 'in all');
  return at.atStop ? { kind: 'rows', count, meaning: 'total' } : null;
}

// "on each needle", "on the front needle", "on each of needles 1 and 3".
function readOnNeedles(at: Cursor): NeedleRefs | null {
  if (!at.take('on', 'per')) return null;
  return readNeedles(at) ?? at.attempt(() => (at.take('each') && (at.skip('of', 'the'), readNeedles(at))) || null);
}

// "14 on the left needle and 14 on the right needle": the other needle comes to its number in the same row.
function skipSecondCount(at: Cursor): void {
  at.attempt(() => {
    if (!at.skip('and', ',')) return null;
    const count = readCount(at);
    at.skip(...STITCH_WORDS);
    return count && readOnNeedles(at);
  });
}
