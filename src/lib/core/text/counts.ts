/** Numbers that differ from size to size: 56 (64, 72), 48[56:64], 60 (64) (68), 20 (20) 24 (24), with - for a size that has none. */

import type { Sized } from '../model/sized.ts';
import type { Cursor } from './cursor.ts';

const BETWEEN = new Set([',', ':', ';', '/']);
const NONE = new Set(['-', 'x']);

/** Reads a whole number, or a list with one for each size. */
export function readCount(at: Cursor): Sized<number> | null {
  return at.attempt(() => {
    const count = readSized(at);
    return count?.every((entry) => entry === null || Number.isInteger(entry)) ? count : null;
  });
}

/** Reads a number, whole or not, or a list with one for each size; reports a list of the wrong length. */
export function readSized(at: Cursor): Sized<number> | null {
  const start = at.at;
  const first = at.number() ?? (isNone(at) && isSizeBracket(at, 1) ? (at.take(...NONE), null) : undefined);
  if (first === undefined) return null;
  const list: (number | null)[] = [first];
  readBrackets(at, list);
  const { sizes } = at.scope;
  if (list.length > 1 && list.length !== sizes.length) {
    at.scope.report('sizes-differ', at.span(start), { expected: sizes.length, found: list.length });
  }
  return list;
}

// After a bracket another one may go on with the list, or a bare number that is followed by one.
function readBrackets(at: Cursor, list: (number | null)[]): void {
  while (isSizeBracket(at, 0) && !isFull(at, list)) {
    list.push(...readBracket(at));
    const more = at.peek()?.kind === 'number' && isSizeBracket(at, 1) && list.length < at.scope.sizes.length;
    if (more) list.push(at.number());
  }
}

function isFull(at: Cursor, list: readonly unknown[]): boolean {
  return list.length > 1 && list.length >= at.scope.sizes.length;
}

function isNone(at: Cursor): boolean {
  return NONE.has(at.text());
}

/** Whether the bracket so many tokens on holds nothing but numbers for sizes. */
function isSizeBracket(at: Cursor, offset: number): boolean {
  if (at.peek(offset)?.kind !== 'open') return false;
  return at.looksLike(() => {
    at.at += offset;
    const end = at.partner;
    return end >= 0 && readEntries(at, end) !== null;
  });
}

function readBracket(at: Cursor): (number | null)[] {
  const end = at.partner;
  const entries = readEntries(at, end) ?? [];
  at.at = end + 1;
  return entries;
}

function readEntries(at: Cursor, end: number): (number | null)[] | null {
  const entries: (number | null)[] = [];
  at.at += 1;
  while (at.at < end) {
    const value = at.number();
    if (value === null && !at.phrase('- -', 'n / a') && !at.take(...NONE)) return null;
    entries.push(value);
    if (at.at === end) return entries;
    if (!at.take(...BETWEEN)) return null;
  }
  return null;
}

/** The first list of sizes in a stretch of tokens: how many numbers it has, or 1 without one. */
export function countSizes(at: Cursor): number {
  while (!at.done) {
    if (at.peek()?.kind === 'number' && isSizeBracket(at, 1)) {
      at.at += 1;
      let sizes = 1;
      while (isSizeBracket(at, 0)) {
        sizes += readBracket(at).length;
        if (at.peek()?.kind === 'number' && isSizeBracket(at, 1)) sizes += at.number() === null ? 0 : 1;
      }
      return sizes;
    }
    at.at += 1;
  }
  return 1;
}

/** The count with nothing for the sizes that an instruction is not for. */
export function onlyFor(count: Sized<number>, sizes: readonly number[] | null, all: number): Sized<number> {
  if (sizes === null) return count;
  return Array.from({ length: all }, (_, size) =>
    sizes.includes(size) ? ((count.length === 1 ? count[0] : count[size]) ?? null) : null
  );
}
