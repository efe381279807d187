/** Tells the words that patterns use for stitches, for the hands and for rows from all others, for the colours of the editor. */

import { operationNamed } from '../model/operations.ts';
import { HandWord, RowWord, StitchWord } from './pattern.grammar.terms';

const HAND_WORDS = new Set([
  ...[
    'pm',
    'sm',
    'slm',
    'rm',
    'turn',
    'join',
    'co',
    'bo',
    'cast',
    'bind',
    'marker',
    'm',
    'bor',
    'graft',
    'place',
    'remove'
  ],
  ...['pick', 'pu', 'wrap', 'hold', 'return']
]);

const ROW_WORDS = new Set([
  ...[
    'rnd',
    'rnds',
    'round',
    'rounds',
    'row',
    'rows',
    'rep',
    'repeat',
    'times',
    'around',
    'across',
    'until',
    'end',
    'last'
  ],
  ...['twice', 'once', 'more', 'rs', 'ws', 'even', 'next', 'work']
]);

const kinds = new Map<string, number>();

/** The node that a word becomes; -1 for an ordinary word. */
export function wordKind(word: string): number {
  const text = word.toLowerCase();
  const known = kinds.get(text);
  if (known !== undefined) return known;
  const kind = findKind(text);
  if (kinds.size < 2000) kinds.set(text, kind);
  return kind;
}

function findKind(text: string): number {
  if (HAND_WORDS.has(text)) return HandWord;
  if (ROW_WORDS.has(text)) return RowWord;
  return operationNamed(text) ? StitchWord : -1;
}
