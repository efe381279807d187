/** Finds operations in the text: by every published name and wording, by rule, and by the pattern's own key. */

import type { Operation } from '../model/operation.ts';
import { operationNamed, OPERATIONS } from '../model/operations.ts';
import type { Cursor } from './cursor.ts';
import type { KeyEntry } from './scope.ts';

/** Words that are written for others. */
const SYNONYMS: Readonly<Record<string, string>> = {
  knit: 'k',
  purl: 'p',
  slip: 'sl',
  slipped: 'sl',
  together: 'tog',
  togs: 'tog',
  stitch: 'st',
  stitches: 'st',
  sts: 'st',
  knitwise: 'kwise',
  purlwise: 'pwise',
  kw: 'kwise',
  pw: 'pwise',
  loops: 'loop',
  wraps: 'wrap'
};

/** Words that may stand inside a wording without changing it. */
const FILLERS = new Set(['the', 'next', 'and', 'it', 'a', 'then', 'st', '-', '.']);

/** Ways to say "pass the slipped stitch over". */
const PASSES: readonly (readonly [words: readonly string[], atom: string])[] = [
  [['p', '.', 's', '.', 's', '.', 'o'], 'psso'],
  [['p', 's', 's', 'o'], 'psso'],
  [['p', '2', 'sso'], 'p2sso'],
  [['p', '2', 'ssop'], 'p2sso'],
  [['pass', '2', 'sl', 'st', 'over'], 'p2sso'],
  [['pass', 'the', 'sl', 'st', 'over'], 'psso'],
  [['pass', 'both', 'sl', 'st', 'over'], 'p2sso'],
  [['pass', 'sl', 'st', 'over'], 'psso']
];

interface Wording {
  readonly atoms: readonly string[];
  /** True for "k1-yo-k1", which is several stitches when written without the hyphens. */
  readonly linked: boolean;
  /** Whether commas may stand between its words. */
  readonly commas: boolean;
  readonly operation: Operation;
}

/** An operation that stands in the text. */
export interface FoundOperation {
  readonly operation: Operation;
  /** True when the words held their own count, as in "sl 1 kwise". */
  readonly counted: boolean;
}

/** Edges have readers of their own, since a number must follow. */
const EDGES = new Set(['pick-up', 'cast-on', 'bind-off']);

const WORDINGS = wordings();

function wordings(): Map<string, Wording[]> {
  const byFirst = new Map<string, Wording[]>();
  for (const operation of OPERATIONS) {
    if (EDGES.has(operation.family)) continue;
    for (const name of [operation.name, ...operation.aliases]) addWording(byFirst, wordingOf(name, operation));
  }
  for (const list of byFirst.values()) list.sort((left, right) => right.atoms.length - left.atoms.length);
  return byFirst;
}

function wordingOf(name: string, operation: Operation): Wording {
  const atoms = atomsOf(name);
  return { atoms, operation, linked: /^[kp]\d?-(?:p|yo|k)/u.test(name), commas: mayHaveCommas(atoms) };
}

function addWording(byFirst: Map<string, Wording[]>, wording: Wording): void {
  const first = wording.atoms[0];
  if (first === undefined) return;
  const list = byFirst.get(first) ?? [];
  if (!byFirst.has(first)) byFirst.set(first, list);
  list.push(wording);
}

/** The atoms of a name: words, numbers and signs, in small letters, with synonyms replaced. */
function atomsOf(name: string): string[] {
  const parts = name.toLowerCase().match(/p2sso|\p{L}+|\d+|[^\s\p{L}\d,.-]/gu) ?? [];
  return parts.map((part) => SYNONYMS[part] ?? part);
}

/** The atom of a token: digits for number words, the short form for long words. */
export function atomAt(at: Cursor, offset = 0): string {
  const token = at.peek(offset);
  if (!token) return '';
  if (token.kind === 'word' && token.value !== null) return String(token.value);
  return SYNONYMS[token.text] ?? token.text;
}

/** Reads an operation by its name or wording; the longest wording wins, the key before the standard. */
export function readOperation(at: Cursor): FoundOperation | null {
  const start = at.at;
  const own = fromKey(at);
  const end = at.at;
  at.at = start;
  const found = readTogether(at) ?? byRule(at) ?? fromTable(at);
  if (!own || (found && at.at > end && own.entry.atoms.join(' ') !== found.operation.name)) return found;
  at.at = end;
  return { operation: own.entry.operation, counted: false };
}

// Where "k" is explained, "k2tog" still is one operation; where "inc" is, "inc 1" is what it says.
function fromKey(at: Cursor): { readonly entry: KeyEntry } | null {
  const entries = at.scope.key.filter((entry) => entry.atoms[0] === atomAt(at));
  for (const entry of entries.sort((left, right) => right.atoms.length - left.atoms.length)) {
    if (at.attempt(() => matchWording(at, { ...entry, linked: false, commas: false }) || null)) return { entry };
  }
  return null;
}

function fromTable(at: Cursor): FoundOperation | null {
  const next = atomAt(at, 1);
  for (const wording of WORDINGS.get(atomAt(at)) ?? []) {
    const { atoms, operation } = wording;
    if (atoms.length > 1 && next !== atoms[1] && !isBetween(next, wording.commas)) continue;
    if (!at.attempt(() => matchWording(at, wording) || null)) continue;
    return { operation, counted: atoms.includes('1') && atoms.length > 1 };
  }
  return null;
}

// A single letter after a number belongs to it only when glued: "m1p", but not "m1 p4". Commas may stand in long wordings.
function matchWording(at: Cursor, { atoms, linked, commas }: Wording): boolean {
  const first = at.at;
  for (const [index, atom] of atoms.entries()) {
    if (linked && index > 0 && !/^\d/u.test(atom) && at.text() !== '-') return false;
    if (index > 0) skipFillers(at, { atom, commas });
    if (!takePass(at, atom) && !takeAtom(at, atoms, index)) return false;
  }
  return !isInsideWord(at, first);
}

function takeAtom(at: Cursor, atoms: readonly string[], index: number): boolean {
  const atom = atoms[index]!;
  if (atomAt(at) !== atom) return false;
  const isSuffix = index > 0 && index === atoms.length - 1 && /^[a-z]$/u.test(atom) && /^\d+$/u.test(atoms[index - 1]!);
  if (isSuffix && !at.peek()!.glued) return false;
  at.at += 1;
  return true;
}

// "sl 1, k1, psso" and "slip, slip, knit" are one operation; "k1, p1, k1" is three.
function mayHaveCommas(atoms: readonly string[]): boolean {
  const slips = atoms.length > 2 && atoms.slice(0, -1).every((atom) => atom === 'sl');
  return slips || atoms.includes('psso') || atoms.includes('p2sso');
}

// "k1" is not the beginning of "k1b", and "5" not that of "5tog".
function isInsideWord(at: Cursor, first: number): boolean {
  const token = at.peek();
  const last = at.peek(-1);
  if (!token?.glued || !last || at.at === first) return false;
  return (
    last.kind === 'number' && token.kind === 'word' && token.text !== 'x' && token.text !== 'sts' && token.text !== 'st'
  );
}

function skipFillers(at: Cursor, told: { readonly atom: string; readonly commas: boolean }): void {
  while (atomAt(at) !== told.atom) {
    if (!isBetween(atomAt(at), told.commas)) return;
    at.at += 1;
  }
}

function isBetween(atom: string, commas: boolean): boolean {
  return FILLERS.has(atom) || (commas && atom === ',');
}

function takePass(at: Cursor, atom: string): boolean {
  for (const [words, meaning] of PASSES) {
    if (meaning !== atom || words.some((word, offset) => atomAt(at, offset) !== word)) continue;
    at.at += words.length;
    return true;
  }
  return false;
}

// k2tog, knit 2 together, knit the next two stitches together, p3tog tbl.
function readTogether(at: Cursor): FoundOperation | null {
  return at.attempt(() => {
    const letter = atomAt(at);
    if (letter !== 'k' && letter !== 'p') return null;
    at.at += 1;
    at.skip('-', 'the', 'next');
    const count = at.whole();
    if (count === null) return null;
    while (['st', '-'].includes(atomAt(at))) at.at += 1;
    const tog = /^tog(tbl|b)?$/u.exec(atomAt(at));
    if (!tog) return null;
    at.at += 1;
    const back = tog[1] !== undefined || readBackLoop(at);
    const operation = operationNamed(`${letter}${count}tog${back ? ' tbl' : ''}`);
    return operation ? { operation, counted: true } : null;
  });
}

/** Reads "tbl", "through the back loops", "through back loop". */
export function readBackLoop(at: Cursor): boolean {
  return (
    at.attempt(() => {
      at.skip('-');
      if (at.take('tbl')) return true;
      if (!at.take('through', 'thru', 'in')) return null;
      at.skip('the');
      if (!at.take('back')) return null;
      at.take('of');
      return at.take('loop', 'loops', 'lp', 'lps') ? true : null;
    }) === true
  );
}

const RULES = /^(?:\d+\s?\/\s?\d+(?:\s?\/\s?\d+)?\s?[rl]p?[ct]|(?:c|t|cr|tw)\d+[fblr]|\d+-to-1 dec)(?![\p{L}\d])/iu;

// Names that hold numbers: 2/2 RC, 2/1/2 LPC, C6F, T3B, 5-to-1 dec.
function byRule(at: Cursor): FoundOperation | null {
  const token = at.peek();
  if (!token || !(token.kind === 'number' || /^(?:c|t|cr|tw)$/u.test(token.text))) return null;
  const found = RULES.exec(at.source.text.slice(token.from, token.from + 24));
  const operation = found ? operationNamed(found[0]) : null;
  if (!operation) return null;
  const end = token.from + found![0].length;
  while (!at.done && at.peek()!.from < end) at.at += 1;
  return { operation, counted: true };
}
