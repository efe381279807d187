/** Sizes: their names, and lines that are for some of them only. */

import { countSizes } from './counts.ts';
import { Cursor } from './cursor.ts';
import type { Scope } from './scope.ts';
import type { TokenText } from './tokens.ts';

/** Longest name of a size that a line may be told for, in characters. */
const LONGEST_NAME = 60;

const NAME_ENDS = new Set([',', ':', ';', '/', '(', '[', ')', ']', '.']);

/** Reads "Sizes: S (M, L)"; `null` for any other line. */
export function readSizesLine(at: Cursor): string[] | null {
  return at.attempt(() => {
    if (!at.take('size', 'sizes')) return null;
    at.skip('available');
    if (!at.take(':', '-')) return null;
    const names = readNames(at);
    return names.length > 0 ? names : null;
  });
}

// Names stand before the first bracket and in the brackets; without brackets commas part them.
function readNames(at: Cursor): string[] {
  const names: string[] = [];
  const hasBracket = at.looksLike(findBracket);
  while (!at.done && at.text() !== '.') {
    const name = readName(at, !hasBracket);
    if (name) names.push(name);
    const next = at.peek();
    if (!next || next.text === '.') break;
    at.at += 1;
    if (hasBracket && next.kind === 'close' && at.peek()?.kind !== 'open' && !goesOn(at, names.length)) break;
  }
  return names;
}

// "XS (S) M (L)": a name, and a bracket with one again.
function goesOn(at: Cursor, names: number): boolean {
  return names % 2 === 0 && at.peek()?.kind === 'word' && at.peek(1)?.kind === 'open' && at.peek(3)?.kind === 'close';
}

function findBracket(at: Cursor): boolean {
  while (!at.done && at.text() !== '.') {
    if (at.peek()?.kind === 'open') return true;
    at.at += 1;
  }
  return false;
}

function readName(at: Cursor, splitAtAnd: boolean): string {
  const first = at.at;
  while (!at.done && !NAME_ENDS.has(at.text()) && !(splitAtAnd && at.text() === 'and')) at.at += 1;
  return at.at > first ? at.written(first) : '';
}

/** Names for sizes that are only numbered: as many as the first list of sizes has numbers. */
export function inferSizes(source: TokenText, scope: Scope): string[] {
  const count = countSizes(new Cursor(source, scope, { from: 0, end: source.tokens.length }));
  return count < 2 ? [''] : Array.from({ length: count }, (_, size) => String(size + 1));
}

/** Which sizes a line is for; `null` means all. */
export interface SizePrefix {
  readonly sizes: readonly number[] | null;
}

/** Reads "Sizes M and L only:", "Size S:", "Loose only:", "First size only:", "All sizes:". */
export function readSizePrefix(at: Cursor): SizePrefix | null {
  return at.attempt(() => {
    const first = at.at;
    at.skip('for', 'the');
    if (at.phrase('all sizes')) return at.take(':') ? { sizes: null } : null;
    const other = at.phrase('all other sizes', 'other sizes', 'rem sizes', 'remaining sizes');
    if (other) return at.take(':') ? { sizes: complement(at) } : null;
    const named = at.skip('size', 'sizes');
    const sizes = readSizeNames(at);
    const after = at.skip('size', 'sizes');
    const only = at.take('only') !== null;
    if (!(named || after || only) || !at.take(':')) return null;
    if (sizes.length > 0) return { sizes };
    if (!named && !after) return null;
    at.scope.report('unknown-size', at.span(first), { about: at.written(first).replace(/\s*(?:only)?\s*:$/iu, '') });
    return { sizes: null };
  });
}

// "All other sizes" are those that no line before was for, as far back as lines are told for some sizes only.
function complement(at: Cursor): readonly number[] {
  const { sizes, namedSizes } = at.scope;
  return sizes.map((_, size) => size).filter((size) => !namedSizes.has(size));
}

// Names in any order, ordinals ("first"), or positions ("2 and 3") when no size is called so.
function readSizeNames(at: Cursor): number[] {
  const sizes: number[] = [];
  for (let turn = 0; turn < 40; turn += 1) {
    const size = at.attempt(readSizeName);
    if (size === null) break;
    sizes.push(size);
    at.skip(',', 'and', '&', '/');
  }
  if (sizes.length === 0) while (at.peek() && !['only', ':', '.', 'size', 'sizes'].includes(at.text())) at.at += 1;
  return sizes;
}

function readSizeName(at: Cursor): number | null {
  const { sizes } = at.scope;
  const text = at.source.text.slice(at.peek()?.from ?? 0, (at.peek()?.from ?? 0) + LONGEST_NAME);
  const from = at.peek()?.from;
  const found = sizes
    .map((name, size) => ({ name, size }))
    .filter(({ name }) => name !== '' && startsWithName(text, name))
    .sort((left, right) => right.name.length - left.name.length)[0];
  if (!found || from === undefined) return readPosition(at);
  while (!at.done && at.peek()!.from < from + found.name.length) at.at += 1;
  return found.size;
}

// "first", "2": a place in the list of sizes.
function readPosition(at: Cursor): number | null {
  const position = (at.kind('ordinal') ?? at.kind('number'))?.value ?? 0;
  const exists = Number.isInteger(position) && position >= 1 && position <= at.scope.sizes.length;
  return exists ? position - 1 : null;
}

function startsWithName(text: string, name: string): boolean {
  if (text.slice(0, name.length).toLowerCase() !== name.toLowerCase()) return false;
  return !/^[\p{L}\d]/u.test(text.slice(name.length));
}
