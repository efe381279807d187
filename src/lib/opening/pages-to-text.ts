/** Printed pages put together to a pattern text. */

import { findGutter, inReadingOrder } from './columns.ts';
import { wordsOf } from './hyphens.ts';
import { toLines, withoutDoubles, type Line } from './lines.ts';
import { writeBlocks, type Manner } from './paragraphs.ts';
import { withoutRunningLines, type Cleared } from './running-lines.ts';
import { plainFractions, plainSpaces, withoutLigatures } from './signs.ts';
import type { Item, Page, Reading } from './types.ts';
import { sayUnread } from './unread.ts';

/** Signs that a font of its own draws, so that nobody knows what they stand for. */
const UNKNOWN = /[\uE000-\uF8FF\uFFFD]/gu;

/**
 * Reads pages in the order a person would: columns one after the other, lines by their baselines, without running
 * titles and page numbers. Every printed line is a line of the text, except that broken words are joined.
 */
export function pagesToText(pages: readonly Page[]): Reading {
  const plain = pages.map((page) => ({ ...page, items: withoutDoubles(page.items.map(plainItem)) }));
  const cleared = withoutRunningLines(plain);
  const gutters = cleared.flatMap(({ items }) => findGutter(items) ?? []);
  const blocks = cleared.flatMap(({ items }) => inReadingOrder(items, gutters)).map((block) => toLines(block));
  const text = writeBlocks(blocks, mannerOf(blocks.flat())).map(plainFractions).join('\n').replace(UNKNOWN, '\uFFFD');
  return { text: text === '' ? '' : `${text}\n`, unread: sayUnread(pages, findings(plain, cleared)) };
}

function findings(pages: readonly Page[], cleared: readonly Cleared[]) {
  return {
    taken: cleared.map(({ taken }) => taken),
    unknown: pages.map(({ items }) => items.reduce((sum, { text }) => sum + (text.match(UNKNOWN)?.length ?? 0), 0))
  };
}

function plainItem(item: Item): Item {
  return { ...item, text: plainSpaces(withoutLigatures(item.text)) };
}

function mannerOf(lines: readonly Line[]): Manner {
  const letters = (some: readonly Line[]) => some.reduce((sum, { text }) => sum + text.length, 0);
  const half = letters(lines) / 2;
  const sizes = lines.toSorted((a, b) => a.fontSize - b.fontSize);
  let sum = 0;
  const middle = sizes.find(({ text }) => (sum += text.length) >= half);
  return {
    fontSize: middle?.fontSize ?? 0,
    bold: letters(lines.filter(({ bold }) => bold)) > half,
    words: wordsOf(lines.map(({ text }) => text))
  };
}
