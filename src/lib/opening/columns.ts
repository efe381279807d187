/** The order in which a page is read: columns from left to right, between what runs across them. */

import { toLines, type Line } from './lines.ts';
import type { Item } from './types.ts';

/** The empty strip between two columns, from its left to its right edge in points. */
export interface Gutter {
  readonly left: number;
  readonly right: number;
}

/** Lines of a page that are cut where a wide gap parts them; what stands on either side of a gutter is one each. */
interface Split {
  readonly left: readonly Line[];
  readonly right: readonly Line[];
  readonly across: readonly Line[];
}

/** A gap this wide may be a gutter, in parts of the font size. */
const LEAST_GUTTER = 0.9;

/** Fewest lines of a column, and letters of its middle line: a table of figures is none. */
const FEWEST_LINES = 3;
const FEWEST_LETTERS = 12;

/** How much of the width of a column its longer lines fill. */
const LEAST_FILL = 0.7;

/** The gutter of a page, or `null` when its text runs across. */
export function findGutter(items: readonly Item[]): Gutter | null {
  const pieces = cutLines(items);
  const from = Math.min(...pieces.map(({ x }) => x));
  const width = Math.max(...pieces.map(({ right }) => right)) - from;
  let best: { readonly gutter: Gutter; readonly across: number } | null = null;
  for (let at = from + width * 0.2; at <= from + width * 0.8; at += 2) {
    const split = splitAt(pieces, { left: at, right: at });
    const gutter = stripOf(split);
    if (!gutter || !areColumns(split, gutter)) continue;
    const across = split.across.length;
    const isBetter = !best || across < best.across || (across === best.across && size(gutter) > size(best.gutter));
    if (isBetter) best = { gutter, across };
  }
  return best?.gutter ?? null;
}

/**
 * Sorts the pieces of a page into blocks in the order of reading.
 *
 * @param gutters - Gutters of other pages: one of them is taken when the page has none of its own, but stands in it.
 */
export function inReadingOrder(items: readonly Item[], gutters: readonly Gutter[]): Item[][] {
  const pieces = cutLines(items);
  const gutter = findGutter(items) ?? gutters.find((known) => fits(pieces, known));
  if (!gutter) return items.length > 0 ? [[...items]] : [];
  return bands(splitAt(pieces, gutter)).flatMap(({ left, right, across }) => [
    ...[left, right].flatMap((side) => inReadingOrder(itemsOf(side), [])),
    ...(across.length > 0 ? [itemsOf(across)] : [])
  ]);
}

function cutLines(items: readonly Item[]): Line[] {
  return toLines(items).flatMap((line) => {
    const pieces: Item[][] = [];
    let right = -Infinity;
    for (const item of line.items) {
      if (item.x - right > LEAST_GUTTER * line.fontSize) pieces.push([]);
      pieces.at(-1)!.push(item);
      right = Math.max(right, item.x + item.width);
    }
    return pieces.length > 1 ? pieces.flatMap((piece) => toLines(piece)) : [line];
  });
}

function splitAt(pieces: readonly Line[], gutter: Gutter): Split {
  const middle = (gutter.left + gutter.right) / 2;
  const left = pieces.filter(({ right }) => right <= middle);
  const right = pieces.filter(({ x }) => x >= middle);
  return { left, right, across: pieces.filter((piece) => piece.x < middle && piece.right > middle) };
}

function stripOf({ left, right }: Split): Gutter | null {
  if (left.length < FEWEST_LINES || right.length < FEWEST_LINES) return null;
  return { left: Math.max(...left.map((line) => line.right)), right: Math.min(...right.map(({ x }) => x)) };
}

function areColumns({ left, right, across }: Split, gutter: Gutter): boolean {
  const fontSize = middleOf(left.map((line) => line.fontSize));
  if (size(gutter) < LEAST_GUTTER * fontSize || across.length > left.length + right.length) return false;
  return isColumn(left) && isColumn(right) && areBeside(left, right);
}

function isColumn(lines: readonly Line[]): boolean {
  const from = Math.min(...lines.map(({ x }) => x));
  const width = Math.max(...lines.map(({ right }) => right)) - from;
  const widths = lines.map((line) => line.right - from).toSorted((a, b) => a - b);
  const long = widths[Math.floor(widths.length * 0.75)]!;
  return long >= LEAST_FILL * width && middleOf(lines.map(({ text }) => text.length)) >= FEWEST_LETTERS;
}

// At least two lines of the left column stand beside the right one.
function areBeside(left: readonly Line[], right: readonly Line[]): boolean {
  const top = Math.min(...right.map(({ y, fontSize }) => y - fontSize));
  const bottom = Math.max(...right.map(({ y, fontSize }) => y + fontSize));
  return left.filter(({ y }) => y >= top && y <= bottom).length >= 2;
}

// The last page of a pattern may have only a line or two in its second column.
function fits(pieces: readonly Line[], gutter: Gutter): boolean {
  const { left, right, across } = splitAt(pieces, gutter);
  if (left.length === 0 || right.length === 0 || across.length > left.length) return false;
  const isFree = left.every((line) => line.right <= gutter.left + 6) && right.every(({ x }) => x >= gutter.right - 6);
  return isFree && right.some(({ x }) => Math.abs(x - gutter.right) < 6);
}

// What runs across the page parts it: above it, both columns are read first.
function bands({ left, right, across }: Split): Split[] {
  const cuts = across.toSorted((a, b) => a.y - b.y);
  const band = (from: number, to: number, line: Line | undefined): Split => ({
    left: left.filter(({ y }) => y >= from && y < to),
    right: right.filter(({ y }) => y >= from && y < to),
    across: line ? [line] : []
  });
  const all = [...cuts, undefined].map((cut, index) => band(cuts[index - 1]?.y ?? -Infinity, cut?.y ?? Infinity, cut));
  return joinAcross(all.filter((told) => told.left.length + told.right.length + told.across.length > 0));
}

// Lines across the page that follow each other are one block.
function joinAcross(all: readonly Split[]): Split[] {
  const result: Split[] = [];
  for (const band of all) {
    const last = result.at(-1);
    const goesOn = last && last.across.length > 0 && band.left.length + band.right.length === 0;
    if (goesOn) result[result.length - 1] = { ...last, across: [...last.across, ...band.across] };
    else result.push(band);
  }
  return result;
}

function itemsOf(lines: readonly Line[]): Item[] {
  return lines.flatMap(({ items }) => items);
}

function size({ left, right }: Gutter): number {
  return right - left;
}

function middleOf(numbers: readonly number[]): number {
  return numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;
}
