/** Printed pieces of text put together to lines. */

import { raised } from './signs.ts';
import type { Item } from './types.ts';

/** A printed line. Lengths are points, as in `Item`. */
export interface Line {
  readonly text: string;
  /** Left and right edge. */
  readonly x: number;
  readonly right: number;
  /** Baseline. */
  readonly y: number;
  /** Size of its largest letters. */
  readonly fontSize: number;
  /** True when every word is bold. */
  readonly bold: boolean;
  /** Its pieces from left to right, without blank ones. */
  readonly items: readonly Item[];
}

/** Pieces of one baseline while they are gathered; `y` and `fontSize` are those of the largest. */
interface Row {
  readonly y: number;
  readonly fontSize: number;
  readonly items: Item[];
}

// In parts of the font size: how far baselines of one line differ, and how far small figures stand above and below it.
const SAME_BASELINE = 0.25;
const MOST_RAISED = 0.6;
const MOST_LOWERED = 0.3;
const SMALL = 0.8;

/** A gap this wide, in parts of the font size, is a blank; the second one parts the cells of a table. */
const BLANK = 0.15;
const WIDE_BLANK = 2;

/** Puts pieces together to lines, from top to bottom. */
export function toLines(items: readonly Item[]): Line[] {
  const rows: Row[] = [];
  const printed = items.filter(({ text }) => text.trim() !== '');
  for (const item of printed.toSorted((a, b) => b.fontSize - a.fontSize || a.y - b.y || a.x - b.x)) {
    const row = rows.find((told) => belongs(item, told));
    if (row) row.items.push(item);
    else rows.push({ y: item.y, fontSize: item.fontSize, items: [item] });
  }
  const blanks = items.filter(({ text }) => text !== '' && text.trim() === '');
  return rows.toSorted((a, b) => a.y - b.y).map((row) => toLine(row, blanks));
}

function belongs(item: Item, row: Row): boolean {
  const below = item.y - row.y;
  if (Math.abs(below) <= SAME_BASELINE * row.fontSize) return true;
  if (item.fontSize > SMALL * row.fontSize) return false;
  if (below < -MOST_RAISED * row.fontSize || below > MOST_LOWERED * row.fontSize) return false;
  return row.items.some((near) => distance(near, item) < row.fontSize);
}

function distance(a: Item, b: Item): number {
  return Math.max(a.x, b.x) - Math.min(a.x + a.width, b.x + b.width);
}

/** Drops what is printed twice at one place, as some printers do to make letters bold. */
export function withoutDoubles(items: readonly Item[]): Item[] {
  const seen = new Map<string, Item[]>();
  return items.filter((item) => {
    const alike = seen.get(item.text) ?? [];
    if (alike.some((other) => Math.abs(other.x - item.x) < 1 && Math.abs(other.y - item.y) < 1)) return false;
    seen.set(item.text, [...alike, item]);
    return true;
  });
}

function toLine(row: Row, blanks: readonly Item[]): Line {
  const items = row.items.toSorted((a, b) => a.x - b.x);
  return {
    text: textOf({ ...row, items }, blanks),
    x: items[0]!.x,
    right: Math.max(...items.map(({ x, width }) => x + width)),
    y: row.y,
    fontSize: row.fontSize,
    bold: items.every(({ bold }) => bold === true),
    items
  };
}

function textOf(row: Row, blanks: readonly Item[]): string {
  let text = '';
  row.items.forEach((item, index) => {
    const before = row.items[index - 1];
    const piece = printedText(item, row, index);
    if (before) text += between(before, item, { row, blanks, text, piece });
    text += piece;
  });
  return text
    .replace(/ {2,}/gu, ' ')
    .replace(/ ?\t ?/gu, '   ')
    .trim();
}

interface Joint {
  readonly row: Row;
  readonly blanks: readonly Item[];
  readonly text: string;
  readonly piece: string;
}

// A blank, three for the next cell of a table, or nothing.
function between(before: Item, item: Item, joint: Joint): string {
  const from = before.x + before.width;
  const gap = item.x - from;
  if (gap > WIDE_BLANK * joint.row.fontSize) return '\t';
  if (gap > BLANK * Math.min(before.fontSize, item.fontSize)) return ' ';
  const printed = joint.blanks.some(
    (blank) => Math.abs(blank.y - joint.row.y) < 1 && blank.width > 0 && blank.x >= from - 1 && blank.x <= item.x
  );
  return printed || startsFraction(joint) ? ' ' : '';
}

// "2" and a small "1/2" behind it are two and a half.
function startsFraction({ text, piece }: Joint): boolean {
  return /\d$/u.test(text) && /^\d+[⁄/]/u.test(piece);
}

// A small high figure that begins no fraction is a mark of its own: "k2¹" is not "k21".
function printedText(item: Item, row: Row, index: number): string {
  if (!isRaised(item, row)) return item.text.replaceAll('\t', ' ');
  const rest = row.items
    .slice(index)
    .map(({ text }) => text)
    .join('');
  const isTop = /^\s*\d+\s*[⁄/]/u.test(rest);
  if (!isTop) return raised(item.text);
  return /[⁄/]/u.test(item.text) ? item.text : ` ${item.text.trim()}`;
}

function isRaised(item: Item, row: Row): boolean {
  return item.fontSize < SMALL * row.fontSize && item.y < row.y - SAME_BASELINE * 0.5 * row.fontSize;
}
