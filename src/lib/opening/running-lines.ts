/** Lines that a printer sets on every page: titles, page numbers, addresses at the top and bottom. */

import { toLines, type Line } from './lines.ts';
import type { Item, Page } from './types.ts';

/** A page without its running lines. */
export interface Cleared {
  readonly items: readonly Item[];
  /** The text of what was taken out, from top to bottom. */
  readonly taken: readonly string[];
}

/** A line near an edge of a page. */
interface Edge {
  readonly line: Line;
  readonly page: Page;
}

/** How much of a page, at its top and at its bottom, may hold running lines. */
const MARGIN = 0.14;

/** The least gap between a running line and the text, in parts of the font size. */
const LEAST_GAP = 1.6;

/** How far the place of a running line differs from page to page, in points. */
const SAME_PLACE = 4;

/** Such lines are worked, not printed at the edge, however often they come. */
const WORKED = /^[^\p{L}\d]*(?:\*|[kp]\d|(?:rnds?|rounds?|rows?|next|rep|repeat|work|knit|purl|co|bo)(?=[\s:]|$))/iu;

const PAGE_NUMBER = /^\W*(?:page|p\.)?\s*\d{1,3}(?:\s*(?:of|\/)\s*\d{1,3})?\W*$/iu;

/** Takes running lines off the pages: those that stand at the same place on several and differ only in their digits. */
export function withoutRunningLines(pages: readonly Page[]): Cleared[] {
  const edges = pages.map((page) => edgesOf(page));
  const all = edges.flat();
  const fewest = Math.max(2, Math.ceil(pages.length / 4));
  return pages.map((page, index) => {
    const running = edges[index]!.filter((edge) => isRunning(edge, all, fewest));
    const taken = new Set(running.flatMap(({ line }) => line.items));
    return { items: page.items.filter((item) => !taken.has(item)), taken: running.map(({ line }) => line.text) };
  });
}

function isRunning({ line, page }: Edge, all: readonly Edge[], fewest: number): boolean {
  if (WORKED.test(line.text)) return false;
  if (PAGE_NUMBER.test(line.text)) return true;
  const alike = all.filter((other) => isAlike({ line, page }, other));
  return new Set(alike.map((other) => other.page)).size >= fewest;
}

function isAlike(a: Edge, b: Edge): boolean {
  const pattern = ({ line }: Edge) => line.text.replace(/\d+/gu, '0');
  if (pattern(a) !== pattern(b)) return false;
  const near = (one: number, other: number) => Math.abs(one - other) <= SAME_PLACE;
  const isLevel = near(a.line.y, b.line.y) || near(a.page.height - a.line.y, b.page.height - b.line.y);
  // Left and right pages may mirror each other.
  const mirrored = near(a.line.x, b.page.width - b.line.right);
  const centred = near(a.line.x + a.line.right, b.line.x + b.line.right);
  return isLevel && (near(a.line.x, b.line.x) || near(a.line.right, b.line.right) || mirrored || centred);
}

// The outermost lines as far as a gap parts them from the text.
function edgesOf(page: Page): Edge[] {
  const lines = toLines(page.items);
  const top = outermost(lines, ({ y }) => y <= page.height * MARGIN);
  const bottom = outermost(lines.toReversed(), ({ y }) => y >= page.height * (1 - MARGIN)).toReversed();
  return [...new Set([...top, ...bottom])].map((line) => ({ line, page }));
}

function outermost(lines: readonly Line[], isNear: (line: Line) => boolean): Line[] {
  let end = 0;
  lines.forEach((line, index) => {
    const next = lines[index + 1];
    const inside = lines.slice(0, index + 1).every(isNear);
    if (inside && (!next || gap(line, next) > LEAST_GAP)) end = index + 1;
  });
  return lines.slice(0, Math.min(end, 3));
}

function gap(a: Line, b: Line): number {
  return Math.abs(a.y - b.y) / Math.max(a.fontSize, b.fontSize);
}
