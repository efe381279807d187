/** How a tube ends, and how stitches that were set aside come back. */

import type { Statement } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { multiply } from './stitches.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const THROUGH = ['thread', 'draw', 'pull', 'run', 'pass', 'fasten', 'weave', 'threading', 'drawing'];

/** Reads a sentence that ends the piece or brings back held stitches. */
export function readEnding(at: Cursor): Statement | null {
  return (
    at.attempt(readDrawThrough) ?? at.attempt(readGraft) ?? at.attempt(readJoinedBindOff) ?? at.attempt(readBindOffAll)
  );
}

// "Cut yarn, thread through rem 8 sts, pull tight", "Break the yarn, draw it through the 8 stitches and fasten off".
function readDrawThrough(at: Cursor): Statement | null {
  const first = at.at;
  at.attempt(() => {
    if (!at.take('cut', 'break')) return null;
    while (at.peek()?.kind === 'word' && at.text() !== 'and') at.at += 1;
    at.skip(',', 'and');
    return true;
  });
  if (!at.take(...THROUGH)) return null;
  for (let words = 0; words < 8 && at.text() !== 'through'; words += 1) if (!at.kind('word')) return null;
  if (!at.take('through')) return null;
  at.skip('the', 'all', 'rem', 'remaining', 'live', 'last', 'of');
  const count = readCount(at);
  at.skip('rem', 'remaining', 'live');
  if (!at.take(...STITCH_WORDS)) return null;
  skipSentence(at);
  return { kind: 'close', how: 'draw-through', count, span: at.span(first) };
}

function skipSentence(at: Cursor): void {
  while (at.peek() && at.text() !== '.') at.at += 1;
}

// "Graft toe: 8 sts each side", "Graft the 12 front stitches to the 12 sole stitches", "Join toe with Kitchener stitch".
function readGraft(at: Cursor): Statement | null {
  const first = at.at;
  const graft = at.take('graft') ?? at.take('use', 'with', 'close', 'join', 'using', 'work');
  if (!graft) return null;
  if (graft.text !== 'graft' && !sentenceHas(at, 'kitchener')) return null;
  const count = findCount(at);
  skipSentence(at);
  return { kind: 'close', how: 'graft', count, span: at.span(first) };
}

function sentenceHas(at: Cursor, word: string): boolean {
  for (let offset = 0; offset < 30; offset += 1) {
    const text = at.text(offset);
    if (text === word) return true;
    if (text === '' || text === '.') return false;
  }
  return false;
}

// The number for one side: "12 sts each side", "the 12 front stitches to the 12 sole stitches".
function findCount(at: Cursor): Sized<number> | null {
  while (at.peek() && at.text() !== '.') {
    const count = readCount(at);
    if (count) {
      const isEach = sentenceHas(at, 'each') || sentenceHas(at, 'to');
      return isEach ? count : null;
    }
    at.at += 1;
  }
  return null;
}

// "Join the sts with a three-needle bind-off".
function readJoinedBindOff(at: Cursor): Statement | null {
  const first = at.at;
  if (!at.take('join', 'close', 'finish', 'work') || !sentenceHas(at, 'bind')) return null;
  while (at.peek() && at.text() !== '.' && !at.looksLike(takeThreeNeedle)) at.at += 1;
  if (!takeThreeNeedle(at)) return null;
  skipSentence(at);
  return { kind: 'close', how: 'bind-off', count: null, span: at.span(first) };
}

function takeThreeNeedle(at: Cursor): boolean {
  return at.phrase(
    '3 - needle bind - off',
    'three - needle bind - off',
    '3 - needle bind off',
    'three - needle bind off'
  );
}

function readBindOffAll(at: Cursor): Statement | null {
  const first = at.at;
  const twoSides = at.phrase('3 - needle', 'three - needle');
  if (!at.take('bo') && !at.phrase('bind off', 'bind - off', 'cast off')) return null;
  if (twoSides) return readPairs(at, first);
  at.skip('the', 'loosely');
  const all = at.skip('all', 'rem', 'remaining', 'live');
  const count = all ? readCount(at) : null;
  at.skip(...STITCH_WORDS);
  if (!all && !at.atStop && !at.phrase('loosely', 'in rib', 'in patt', 'in pattern')) return null;
  skipSentence(at);
  return { kind: 'close', how: 'bind-off', count, span: at.span(first) };
}

// "3-needle BO 16 pairs": the number is told for one side, like that of a graft.
function readPairs(at: Cursor, first: number): Statement {
  at.skip('all');
  const count = readCount(at);
  const each = at.take('pairs') || at.looksLike(() => sentenceHas(at, 'each')) ? count : null;
  skipSentence(at);
  return { kind: 'close', how: 'bind-off', count: each === null ? count : multiply(each, [2]), span: at.span(first) };
}

/** Reads a sentence that puts held stitches back on the needles: "Return 13 held sts to needles". */
export function readResume(at: Cursor): Statement | null {
  const first = at.at;
  if (!at.take('return', 'place', 'put', 'slip', 'sl', 'transfer', 'move')) return null;
  at.skip('the');
  const count = readCount(at);
  at.skip('the');
  const { name, held } = readHeldName(at);
  if (!at.take(...STITCH_WORDS)) return null;
  const fromHolder = readFromHolder(at);
  if (!(held || fromHolder) || !readOnNeedles(at)) return null;
  skipClause(at);
  return { kind: 'resume', name, count, span: at.span(first) };
}

// "held", "held thumb", "thumb", "reserved".
function readHeldName(at: Cursor): { readonly name: string | null; readonly held: boolean } {
  let name: string | null = null;
  let held = false;
  for (let words = 0; words < 3 && at.peek()?.kind === 'word' && !STITCH_WORDS.includes(at.text()); words += 1) {
    if (at.take('held', 'reserved', 'resting')) held = true;
    else name = at.kind('word')?.text ?? name;
  }
  return { name: name === 'rem' || name === 'remaining' ? null : name, held };
}

function readFromHolder(at: Cursor): boolean {
  return (
    at.attempt(() => {
      if (!at.take('from', 'on')) return null;
      at.skip('the', 'stitch', 'st', 'length', 'of');
      if (!at.take('waste', 'scrap', 'holder', 'hold', 'thread', 'wool', 'safety', 'pin')) return null;
      at.skip('yarn', 'thread', 'holder', 'wool', '-', 'pin');
      return true;
    }) !== null
  );
}

function readOnNeedles(at: Cursor): boolean {
  at.skip('back');
  if (!at.take('to', 'on', 'onto')) return false;
  for (let words = 0; words < 4; words += 1) {
    if (at.take('needles', 'needle', 'dpns', 'dpn', 'circular')) return true;
    at.at += 1;
  }
  return false;
}

function skipClause(at: Cursor): void {
  while (at.peek()?.kind === 'word' && !['pick', 'and', 'rejoin', 'k', 'knit', 'pm'].includes(at.text())) at.at += 1;
}
