/** Headings of rows: "Rnd 5 (dec):", "Rnds 1-4:", "Rows 2 and 4 (WS):", "All even rnds:", "Dec rnd:", "Next row (RS):". */

import type { RowNumbers, RowText, Side } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import { startsInstruction } from './wording.ts';

/** What stands before the instructions of a row. */
export interface RowLabel {
  /** "Rnd", "Round" or "Row". */
  readonly noun: string;
  readonly numbering: RowText['numbering'];
  readonly purpose: RowText['purpose'];
  readonly numbers: RowNumbers;
  readonly name: string | null;
  readonly side: Side | null;
}

const NOUNS: Readonly<Record<string, string>> = {
  rnd: 'Rnd',
  rnds: 'Rnd',
  round: 'Round',
  rounds: 'Round',
  row: 'Row',
  rows: 'Row'
};

/** Rows that are called by a word alone. */
const NAMES_ALONE = ['ridge', 'foundation', 'eyelets', 'picot'];

/** Longest range of rows that one label may name. */
const MOST_NUMBERS = 2000;

/** Most row numbers that ranges may stand for in one text, far beyond the rows that are knitted. */
const MOST_TOLD = 1_000_000;

/** Reads the label of a row with what separates it from its instructions; `null` when none stands here. */
export function readLabel(at: Cursor): RowLabel | null {
  const first = at.at;
  const label = readAnyLabel(at);
  return label && { ...label, purpose: purposeOf(at, first) };
}

type BareLabel = Omit<RowLabel, 'purpose'>;

function readAnyLabel(at: Cursor): BareLabel | null {
  return (
    at.attempt(readNumbered) ??
    at.attempt(readOrdinalRows) ??
    at.attempt(readParity) ??
    at.attempt(readSideRows) ??
    at.attempt(readNamed) ??
    at.attempt(readNameAlone) ??
    at.attempt(readBareNumber)
  );
}

// "Dec rnd:", "Rnd 5 (increase):".
function purposeOf(at: Cursor, first: number): RowLabel['purpose'] {
  const words = at.source.tokens.slice(first, at.at).map(({ text }) => text);
  const has = (pattern: RegExp) => words.some((word) => pattern.test(word));
  const [inc, dec] = [has(/^inc(?:s|rease|reases|reasing)?$/u), has(/^dec(?:s|rease|reases|reasing)?$/u)];
  return inc === dec ? null : inc ? 'inc' : 'dec';
}

/** Reads "rnd", "Rounds", "row". */
export function readNoun(at: Cursor): string | null {
  const noun = NOUNS[at.text()];
  if (noun) at.at += 1;
  return noun ?? null;
}

// "Rnd 5:", "Rnds 1-4:", "R5:", "Rnd 2 and all even rnds:", "Even-numbered rounds 2-20:" is read as parity.
function readNumbered(at: Cursor): BareLabel | null {
  const first = at.at;
  const noun = readNoun(at) ?? (at.peek(1)?.glued && at.take('r') ? 'Row' : null);
  if (!noun) return null;
  const numbers = readNumbers(at);
  if (!numbers) return null;
  const andAll = at.attempt(() => (at.take('and', '&') ? readParityWords(at) : null));
  const side = readRemarks(at);
  if (!readColon(at)) return null;
  const from = numbers[0]!;
  const told: RowNumbers = andAll ? { kind: 'parity', parity: andAll, from } : { kind: 'numbers', numbers };
  const numbering = at.source.tokens[first]?.text === 'r' ? 'letter' : 'noun';
  return { noun, numbering, numbers: told, name: null, side };
}

/** Reads row numbers: "5", "1-4", "1 to 4", "2 and 4", "1, 3, 5", "2, 4, 6 and 8". */
export function readNumbers(at: Cursor): number[] | null {
  const numbers: number[] = [];
  const first = readRange(at);
  if (!first) return null;
  numbers.push(...first);
  for (;;) {
    const more = at.attempt(() => {
      if (!at.skip(',', 'and', '&', '+')) return null;
      at.skip('row', 'rows', 'rnd', 'rnds', 'round', 'rounds');
      const range = readRange(at);
      return /^(?:times?|x|more)$/u.test(at.text()) ? null : range;
    });
    if (!more || numbers.length > MOST_NUMBERS) return numbers.slice(0, MOST_NUMBERS);
    numbers.push(...more);
  }
}

function readRange(at: Cursor): number[] | null {
  const from = rowNumber(at);
  if (from === null) return null;
  const to = at.attempt(() => (at.take('-', 'to', 'through') ? (at.skip('-'), rowNumber(at)) : null));
  at.skip('inclusive', 'incl');
  if (to === null || to < from) return [from];
  const length = Math.min(to - from + 1, MOST_NUMBERS);
  at.scope.numbersTold += length;
  if (at.scope.numbersTold > MOST_TOLD) return [from];
  return Array.from({ length }, (_, index) => from + index);
}

function rowNumber(at: Cursor): number | null {
  at.skip('#');
  const token = at.kind('number');
  return token && Number.isInteger(token.value) ? token.value : null;
}

// "5th rnd:", "9th and 10th rows:", "1st to 8th rows:".
function readOrdinalRows(at: Cursor): BareLabel | null {
  const rows = readOrdinals(at);
  if (!rows) return null;
  const side = readRemarks(at);
  if (!readColon(at)) return null;
  const { noun, numbers } = rows;
  return { noun, numbering: 'ordinal', numbers: { kind: 'numbers', numbers }, name: null, side };
}

/** Reads "5th rnd", "1st and 2nd rows", "1st to 8th rows". */
export function readOrdinals(at: Cursor): { readonly noun: string; readonly numbers: readonly number[] } | null {
  const numbers: number[] = [];
  for (;;) {
    const ordinal = at.kind('ordinal');
    if (!ordinal || ordinal.value === null) return null;
    const from = numbers.at(-1);
    const isRange = from !== undefined && ['to', '-'].includes(at.text(-2));
    if (isRange)
      for (let number = from + 1; number < ordinal.value && number < MOST_NUMBERS; number += 1) numbers.push(number);
    numbers.push(ordinal.value);
    if (!at.take('to', '-', 'and', '&', ',')) break;
  }
  const noun = readNoun(at);
  return noun ? { noun, numbers } : null;
}

// "All even rnds:", "Odd rnds:", "Even-numbered rounds 2-20:", "Every odd-numbered row:".
function readParity(at: Cursor): BareLabel | null {
  const first = at.at;
  const parity = readParityWords(at);
  if (!parity) return null;
  const noun = NOUNS[at.text(-1)] ?? 'Rnd';
  const numbers = at.attempt(() => {
    at.skip('from');
    return readNumbers(at);
  });
  const side = readRemarks(at);
  if (!readColon(at) || at.at === first) return null;
  if (numbers && numbers.length > 1) {
    const wanted = numbers.filter((number) => number % 2 === (parity === 'odd' ? 1 : 0));
    return { noun, numbering: 'noun', numbers: { kind: 'numbers', numbers: wanted }, name: null, side };
  }
  const from = numbers?.[0] ?? (parity === 'odd' ? 1 : 2);
  return { noun, numbering: 'noun', numbers: { kind: 'parity', parity, from }, name: null, side };
}

function readParityWords(at: Cursor): 'odd' | 'even' | null {
  return at.attempt(() => {
    at.skip('all', 'every', 'the', 'other', 'rem', 'remaining', 'following', 'foll');
    const parity = at.take('even', 'odd', 'alt', 'alternate')?.text;
    if (!parity) return null;
    at.skip('-', 'numbered');
    if (!readNoun(at)) return null;
    return parity === 'odd' ? 'odd' : 'even';
  });
}

// "WS rows: p", "All RS rows:".
function readSideRows(at: Cursor): BareLabel | null {
  at.skip('all', 'every');
  const side = readSide(at);
  const noun = side ? readNoun(at) : null;
  if (!side || !noun || !readColon(at)) return null;
  const [parity, from] = side === 'WS' ? (['even', 2] as const) : (['odd', 1] as const);
  return { noun, numbering: 'noun', numbers: { kind: 'parity', parity, from }, name: null, side };
}

// "Next rnd:", "Dec rnd:", "Set-up row (WS):", "Rib row:".
function readNamed(at: Cursor): BareLabel | null {
  const first = at.at;
  const isNext = at.text() === 'next';
  let times: number | null = null;
  for (let words = 0; words < 4 && !NOUNS[at.text()]; words += 1) {
    at.take('-');
    if (!at.kind('word')) return null;
    if (isNext) times = rowNumber(at);
  }
  if (at.at === first) return null;
  const noun = readNoun(at);
  if (!noun) return null;
  if (!isNext) rowNumber(at);
  const written = at.written(first).replaceAll(/\s+/gu, ' ');
  const side = readRemarks(at);
  if (!readColon(at)) return null;
  const numbers: RowNumbers =
    times === null ? { kind: 'next' } : { kind: 'next', times: Math.min(times, MOST_NUMBERS) };
  return { noun, numbering: 'noun', numbers, name: isNext ? null : written, side };
}

// "Ridge: P." at the beginning of a line.
function readNameAlone(at: Cursor): BareLabel | null {
  if (at.at !== at.range.from || !at.peek()?.capital || !(at.take(...NAMES_ALONE) ?? at.attempt(readHoles)))
    return null;
  const name = at.written(at.range.from);
  if (at.text() !== ':' || at.peek(1) === null) return null;
  at.at += 1;
  return { noun: 'Row', numbering: 'noun', numbers: { kind: 'next' }, name, side: null };
}

// "Holes for the ribbon: …", "Eyelet ridge: …"
function readHoles(at: Cursor): true | null {
  if (!at.take('holes', 'eyelet', 'buttonhole', 'buttonholes', 'picot', 'fold')) return null;
  while (at.peek()?.kind === 'word' && at.peek()!.value === null) at.at += 1;
  return true;
}

// "5: K." at the beginning of a line.
function readBareNumber(at: Cursor): BareLabel | null {
  if (at.at !== at.range.from || at.peek(1)?.text !== ':') return null;
  const number = rowNumber(at);
  at.at += 1;
  return number === null
    ? null
    : { noun: 'Row', numbering: 'bare', numbers: { kind: 'numbers', numbers: [number] }, name: null, side: null };
}

// "(RS)", "[WS]", "(dec)", "(right side) -": the side is kept, the rest says what the row is for.
function readRemarks(at: Cursor): Side | null {
  let side = readSide(at);
  while (at.peek()?.kind === 'open') {
    const end = at.partner;
    if (end < 0 || end - at.at > 12) break;
    at.at += 1;
    side = readSide(at) ?? side;
    at.at = end + 1;
  }
  return side;
}

function readSide(at: Cursor): Side | null {
  if (at.take('rs') || at.phrase('right side')) return 'RS';
  return at.take('ws') || at.phrase('wrong side') ? 'WS' : null;
}

// A label without a colon counts when an instruction follows at once.
function readColon(at: Cursor): boolean {
  if (at.phrase(': -', '. -', ':')) return true;
  const dash = at.at;
  if (at.take('-', '.') && startsInstruction(at)) return true;
  at.at = dash;
  return /^(?:k|p|sl|knit|purl|\*)$/u.test(at.text()) || at.peek()?.text === '[';
}
