/** Tells instructions from prose, and finds the known name that comes nearest to a mistyped one. */

import { OPERATIONS } from '../model/operations.ts';
import { skipColour } from './colours.ts';
import type { Cursor } from './cursor.ts';
import { readReceiver } from './needle-names.ts';
import { atomAt, readOperation } from './phrases.ts';

/** Verbs that begin instructions beside the stitches themselves. */
const VERBS = new Set([
  ...[
    'pm',
    'sm',
    'rm',
    'slm',
    'turn',
    'work',
    'rep',
    'repeat',
    'co',
    'bo',
    'cast',
    'bind',
    'pick',
    'plain',
    'pu',
    'place',
    'slip'
  ],
  ...[
    'join',
    'patt',
    'rib',
    'cont',
    'continue',
    'divide',
    'move',
    'put',
    'arrange',
    'transfer',
    'distribute',
    'remove',
    'slide'
  ],
  ...[
    'w',
    'inc',
    'dec',
    'graft',
    'return',
    'narrow',
    'change',
    'wrap',
    'drop',
    'rejoin',
    'decrease',
    'increase',
    'leave'
  ]
]);

/** Small words that prose has and instructions lack. */
const PROSE = new Set([
  ...[
    'is',
    'are',
    'it',
    'its',
    'will',
    'be',
    'was',
    'you',
    'your',
    'this',
    'these',
    'that',
    'which',
    'here',
    'now',
    'not'
  ],
  ...[
    'can',
    'may',
    'should',
    'has',
    'have',
    'if',
    'when',
    'so',
    'there',
    'them',
    'they',
    'but',
    'or',
    'as',
    'for',
    'from'
  ],
  ...['of', 'being', 'form', 'forms', 'set', 'sets', 'waits', 'wait', 'begins', 'begin', 'rest', 'rests']
]);

/** Whether an instruction could begin here: a stitch, a verb of the craft, a bracket or an asterisk. */
export function startsInstruction(at: Cursor): boolean {
  const token = at.peek();
  if (!token) return false;
  if (token.kind === 'open' || token.kind === 'asterisk') return true;
  return VERBS.has(token.text) || at.looksLike(readOperation) || at.looksLike(skipColour);
}

/** Whether the clause here is a remark in words, and no instruction that failed. */
export function isRemark(at: Cursor): boolean {
  if (startsWithVerb(at)) return false;
  const length = clauseLength(at);
  if (at.text(length) === ':' && at.looksLike(() => startsBehind(at, length + 1))) return false;
  let words = 0;
  let small = 0;
  for (let offset = 0; offset < length; offset += 1) {
    if (at.peek(offset)?.kind === 'word') words += 1;
    if (PROSE.has(at.text(offset))) small += 1;
  }
  return (words >= 3 || words === small) && small > 0 && nearestName(at.text()) === null;
}

// Tokens up to the next separator or colon; no more than a remark has.
function clauseLength(at: Cursor): number {
  let length = 0;
  let depth = 0;
  while (length < 40 && at.peek(length) && (depth > 0 || !/^[,.;:]$/u.test(at.text(length)))) {
    const { kind } = at.peek(length)!;
    depth += kind === 'open' ? 1 : kind === 'close' ? -1 : 0;
    length += 1;
  }
  return length;
}

function startsBehind(at: Cursor, tokens: number): boolean {
  at.at += tokens;
  return startsInstruction(at);
}

function startsWithVerb(at: Cursor): boolean {
  return startsInstruction(at) && !PROSE.has(at.text(1));
}

/** Whether the sentence here looks like an instruction, though none of the readers took it. */
export function looksLikeWork(at: Cursor): boolean {
  if (at.looksLike(readReceiver)) return true;
  if (/^rep(?:eat)?$/u.test(at.text()) || at.looksLike(startsAtSameTime)) return true;
  if (at.looksLike(startsBehindColon)) return true;
  if (PROSE.has(at.text(1))) return false;
  const token = at.peek();
  if (!token || token.kind === 'open') return false;
  if (token.kind === 'number') return at.peek(1)?.kind === 'word' && at.looksLike(startsAfterNumber);
  return startsInstruction(at) && !/^(?:s|n|in|on|an?)$/u.test(atomAt(at));
}

function startsAtSameTime(at: Cursor): boolean {
  return at.phrase('at the same time', 'at same time');
}

// "Left: k to last 4 sts": a few words, a colon and an instruction.
function startsBehindColon(at: Cursor): boolean {
  for (let words = 0; words < 6 && at.peek() && !/^[,.;:]$/u.test(at.text()); words += 1) at.at += 1;
  return at.take(':') !== null && startsInstruction(at) && !PROSE.has(at.text(1));
}

function startsAfterNumber(at: Cursor): boolean {
  at.at += 1;
  return startsInstruction(at);
}

const NAMES = [...OPERATIONS.flatMap(({ name, aliases }) => [name, ...aliases]), 'pm', 'sm', 'rm', 'turn', 'w&t']
  .map((name) => name.toLowerCase())
  .filter((name) => /^[a-z][a-z0-9]+$/u.test(name) && name.length >= 2);

/** The known name that differs from a word by one letter, or by two when it is long; `null` when none is close. */
export function nearestName(word: string): string | null {
  if (word.length < 3) return null;
  let best: string | null = null;
  let least = word.length > 4 ? 3 : 2;
  for (const name of NAMES) {
    if (Math.abs(name.length - word.length) >= least || (name.length < 3 && word.length > 2)) continue;
    const distance = editDistance(word, name);
    if (distance < least) [best, least] = [name, distance];
  }
  return least === 0 ? null : best;
}

// Counts letters that are added, dropped, changed or swapped with their neighbour.
function editDistance(left: string, right: string): number {
  let older: number[] = [];
  let last = Array.from({ length: right.length + 1 }, (_, column) => column);
  for (let row = 1; row <= left.length; row += 1) {
    const next = [row];
    for (let column = 1; column <= right.length; column += 1) {
      const same = left[row - 1] === right[column - 1] ? 0 : 1;
      let least = Math.min(last[column]! + 1, next[column - 1]! + 1, last[column - 1]! + same);
      const swapped = left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1];
      if (row > 1 && column > 1 && swapped) least = Math.min(least, older[column - 2]! + 1);
      next.push(least);
    }
    [older, last] = [last, next];
  }
  return last[right.length]!;
}
