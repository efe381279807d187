/** What a word of a row means: the reading of a stitch, with what it takes and makes. */

import { operationNamed } from '$lib/core/index.ts';
import type { Names } from '../editor.svelte.ts';
import { HAND_WORDS } from './words.ts';

/** A stitch with its arithmetic. */
export type Term = Names['terms'][number];

/** What a word means. */
export interface Meaning {
  /** In full: "knit 2 together". */
  readonly words: string;
  /** "takes 2, makes 1, leans right"; "" for a word that is no stitch. */
  readonly arithmetic: string;
  /** True when the pattern itself explains the word. */
  readonly isOwn: boolean;
}

/** A word of a line that means something. Columns count UTF-16 code units from 0, half-open. */
export interface Reading extends Meaning {
  readonly from: number;
  readonly to: number;
  readonly written: string;
}

/** "takes 2, makes 1, leans right". */
export function sayArithmetic({ takes, makes, leans, crosses }: Omit<Term, 'name' | 'words'>): string {
  const side = leans === 'none' ? '' : `, ${crosses ? 'crosses' : 'leans'} ${leans}`;
  return `takes ${takes}, makes ${makes}${side}`;
}

/** "k2tog: knit 2 together; takes 2, makes 1, leans right", with where the word is explained. */
export function sayReading({ written, words, arithmetic, isOwn }: Reading): string {
  const parts = [words, arithmetic, isOwn ? 'explained in the key' : ''].filter((part) => part !== '');
  return `${written}: ${parts.join('; ')}`;
}

/** What a word or phrase means by itself; the pattern's own key goes before the standard. */
export function meaningOf(written: string, terms: readonly Term[]): Meaning | null {
  const own = terms.find(({ name }) => plain(name) === plain(written));
  const stitch = own ?? operationNamed(written);
  if (stitch) return { words: stitch.words, arithmetic: sayArithmetic(stitch), isOwn: own !== undefined };
  const words = HAND_WORDS[plain(written)];
  return words === undefined ? null : { words, arithmetic: '', isOwn: false };
}

function plain(name: string): string {
  return name.toLowerCase().replaceAll("'", '’').replaceAll(/\s+/gu, ' ').trim();
}

/** Words with what is written into them ("k1f&b", "2/2", "sl1-k2tog-psso"), and the same in smaller parts. */
const PARTS = [/[\p{L}\d]+(?:[’'&/.+-](?=[\p{L}\d])[\p{L}\d]+)*/gu, /\p{L}+\d*\p{L}*|\d+/gu] as const;

/** Most words of one reading. */
const MOST_WORDS = 6;

interface Part {
  readonly from: number;
  readonly to: number;
}

/** The longest reading that a column of a line lies in, or touches the end of; `null` where nothing is known. */
export function readingAt(line: string, column: number, terms: readonly Term[]): Reading | null {
  for (const pattern of PARTS) {
    const parts = [...line.matchAll(pattern)].map(({ index, 0: text }) => ({ from: index, to: index + text.length }));
    const here = parts.findLastIndex(({ from, to }) => from <= column && column <= to);
    if (here < 0) continue;
    const found = longest(line, { parts, here }, terms) ?? counted(line, { parts, here });
    if (found) return found;
  }
  return null;
}

interface Words {
  readonly parts: readonly Part[];
  /** Index of the part in question. */
  readonly here: number;
}

function longest(line: string, { parts, here }: Words, terms: readonly Term[]): Reading | null {
  for (let length = MOST_WORDS; length > 0; length -= 1) {
    for (let first = Math.max(0, here - length + 1); first <= here; first += 1) {
      const phrase = phraseOf(line, parts.slice(first, first + length));
      const meaning = phrase && first + length <= parts.length ? meaningOf(phrase.written, terms) : null;
      if (phrase && meaning && !isName(line, phrase)) return { ...phrase, ...meaning };
    }
  }
  return null;
}

// Only spaces may stand between the words of a reading.
function phraseOf(line: string, parts: readonly Part[]): (Part & { readonly written: string }) | null {
  const [first, last] = [parts[0], parts.at(-1)];
  if (!first || !last) return null;
  const isJoined = parts.every(
    (part, index) => index === 0 || line.slice(parts[index - 1]!.to, part.from).trim() === ''
  );
  return isJoined ? { from: first.from, to: last.to, written: line.slice(first.from, last.to) } : null;
}

// "Dec rnd" is the name of a row and no decrease.
function isName(line: string, { to }: Part): boolean {
  return /^\s+(?:rnds?|rounds?|rows?)\b/iu.test(line.slice(to));
}

const COUNTED = /^(k|p|knit|purl|sl|slip) ?(\d+)$/iu;
const OTHER_SIZES = /^\s*(?:\([\d\s,–-]+\)|\[[\d\s,–-]+\])/u;

// "k6 (8, 10)": a plain stitch with how many of it.
function counted(line: string, { parts, here }: Words): Reading | null {
  for (const first of [here, here - 1]) {
    const phrase = first < 0 ? null : phraseOf(line, parts.slice(first, here + 1));
    const found = phrase && COUNTED.exec(phrase.written);
    const operation = found && operationNamed(found[1]!);
    if (!phrase || !operation) continue;
    const others = OTHER_SIZES.exec(line.slice(phrase.to))?.[0] ?? '';
    const count = `${found[2]}${others.replace(/^\s*/u, others ? ' ' : '')}`;
    const [to, written] = [phrase.to + others.length, `${phrase.written}${others}`];
    const words = `${operation.words} ${count} ${count === '1' ? 'stitch' : 'stitches'}`;
    return { from: phrase.from, to, written, words, arithmetic: `takes ${count}, makes ${count}`, isOwn: false };
  }
  return null;
}
