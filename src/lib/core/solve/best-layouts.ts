/** The K best layouts of a question, exactly and in a total order. */

import { loadsOf, type Layout } from '../model/layout.ts';
import { Heap } from './heap.ts';

/** A layout question with every price known. */
export interface Question {
  /** Stitches of the ring. */
  readonly stitches: number;
  /** Needles that hold them; at least 2. */
  readonly needles: number;
  /** Price of a break in each gap; may be negative where a break is wanted, Infinity where none may be. */
  readonly gaps: readonly number[];
  /** Paid by every layout. */
  readonly base: number;
  /** Price of the needle from gap `from` to gap `to`; `to` may be past the end of the ring. Never negative. */
  readonly needle: (from: number, to: number) => number;
  /** A lower bound for the price of any needle with so many stitches; not falling away from an even share. */
  readonly leastForLoad: (load: number) => number;
  /** The most stitches that a needle can hold at the start. */
  readonly mostLoad: number;
  /** Whether a gap is a section edge: orders ties. */
  readonly isEdge: (gap: number) => boolean;
}

/** A layout with its price. */
export interface Priced {
  readonly layout: Layout;
  readonly price: number;
}

/**
 * Finds the `count` cheapest layouts.
 *
 * Exact. For each possible first break, a table of the least price of every completion, filled from the last needle to the
 * first, guides a best-first search that therefore never follows a dead end. Needles are tried in a window of lengths
 * round the even share; the window grows until no needle outside it can belong to a layout as cheap as the last one
 * found. Order: price, the BOR on a break, more breaks on section edges, bigger loads first, positions ascending: total,
 * so that every machine gives the same list. Time for one first break: needles × stitches × window.
 */
export function bestLayouts(question: Question, count: number): Priced[] {
  const fair = question.stitches / question.needles;
  const longest = Math.min(question.stitches, question.mostLoad);
  if (longest * question.needles < question.stitches) return [];
  for (let slack = 8; ; slack *= 2) {
    const window = {
      least: Math.max(1, Math.floor(fair) - slack),
      most: Math.min(longest, Math.ceil(fair) + slack)
    };
    const whole = window.least === 1 && window.most === longest;
    const found = search(question, window, count);
    if (whole || (found.length >= count && isProven(question, window, found.at(-1)!.price))) return found;
  }
}

interface Window {
  readonly least: number;
  readonly most: number;
}

// A layout with a needle outside the window pays at least for that needle and for its cheapest breaks.
function isProven(question: Question, window: Window, price: number): boolean {
  const floor = question.base + cheapestBreaks(question, 0);
  const outside = Math.min(
    window.least > 1 ? question.leastForLoad(window.least - 1) : Infinity,
    window.most < Math.min(question.stitches, question.mostLoad) ? question.leastForLoad(window.most + 1) : Infinity
  );
  return floor + outside > price;
}

// The least that the breaks of a layout can cost whose first break is `first` or later.
function cheapestBreaks({ gaps, needles }: Question, first: number): number {
  const prices = gaps
    .slice(first)
    .filter(Number.isFinite)
    .sort((left, right) => left - right);
  return prices.slice(0, needles).reduce((sum, price) => sum + price, 0);
}

function search(question: Question, window: Window, count: number): Priced[] {
  const found: Ranked[] = [];
  const lastFirst = Math.min(window.most, question.stitches) - 1;
  const later = question.base + cheapestBreaks(question, 1);
  for (let first = 0; first <= lastFirst; first += 1) {
    const worst = found.length >= count ? found[count - 1]!.price : Infinity;
    if (first > 0 && later > worst) break;
    if (!Number.isFinite(question.gaps[first]!)) continue;
    found.push(...fromFirst(question, { first, window, count, worst }).map((one) => rank(question, one)));
    found.sort(compare);
    found.splice(count);
  }
  return found.slice(0, count);
}

interface Start {
  readonly first: number;
  readonly window: Window;
  readonly count: number;
  /** Nothing dearer than this is wanted. */
  readonly worst: number;
}

interface Partial {
  readonly breaks: readonly number[];
  readonly price: number;
}

function fromFirst(question: Question, start: Start): Priced[] {
  const { needles, base, gaps } = question;
  const rest = completions(question, start);
  const heap = new Heap<Partial>();
  const open = (partial: Partial) => {
    const least = partial.price + rest[partial.breaks.length - 1]![partial.breaks.at(-1)! - start.first]!;
    if (Number.isFinite(least) && least <= start.worst) heap.push(least, partial);
  };
  open({ breaks: [start.first], price: base + gaps[start.first]! });
  const found: Priced[] = [];
  let limit = Infinity;
  while (heap.least <= limit) {
    const partial = heap.pop();
    if (!partial) break;
    if (partial.breaks.length < needles) {
      for (const next of nexts(question, partial, start)) open(next);
      continue;
    }
    found.push({
      layout: { breaks: partial.breaks },
      price: partial.price + lastNeedle(question, partial, start.first)
    });
    if (found.length === start.count) limit = found.at(-1)!.price;
  }
  return found;
}

function lastNeedle(question: Question, partial: Partial, first: number): number {
  return question.needle(partial.breaks.at(-1)!, first + question.stitches);
}

function nexts(question: Question, partial: Partial, { window }: Start): Partial[] {
  const from = partial.breaks.at(-1)!;
  const result: Partial[] = [];
  for (let gap = from + window.least; gap <= Math.min(from + window.most, question.stitches - 1); gap += 1) {
    const price = partial.price + question.needle(from, gap) + question.gaps[gap]!;
    if (Number.isFinite(price)) result.push({ breaks: [...partial.breaks, gap], price });
  }
  return result;
}

// rest[k][j]: least price of everything that follows when break k lies j gaps after the first one.
function completions(question: Question, { first, window }: Start): Float64Array[] {
  const { needles, stitches, gaps } = question;
  const size = stitches - first;
  const rest = Array.from({ length: needles }, () => new Float64Array(size).fill(Infinity));
  const last = rest[needles - 1]!;
  const from = Math.max(0, stitches - window.most);
  for (let j = from; j <= Math.min(size - 1, stitches - window.least); j += 1) {
    last[j] = question.needle(first + j, first + stitches);
  }
  for (let k = needles - 2; k >= 0; k -= 1) {
    const next = rest[k + 1]!;
    const most = k === 0 ? 0 : Math.min(size - 1, k * window.most);
    for (let j = k * window.least; j <= most; j += 1) {
      let least = Infinity;
      for (let to = j + window.least; to <= Math.min(j + window.most, size - 1); to += 1) {
        if (next[to] === Infinity) continue;
        const price = question.needle(first + j, first + to) + gaps[first + to]! + next[to]!;
        if (price < least) least = price;
      }
      rest[k]![j] = least;
    }
  }
  return rest;
}

/** A layout with what its place in the total order depends on, worked out once. */
interface Ranked extends Priced {
  readonly onBor: number;
  readonly onEdges: number;
  readonly loads: readonly number[];
}

function rank(question: Question, { layout, price }: Priced): Ranked {
  const { breaks } = layout;
  return {
    layout,
    price,
    onBor: breaks[0] === 0 ? 1 : 0,
    onEdges: breaks.reduce((count, gap) => count + (question.isEdge(gap) ? 1 : 0), 0),
    loads: loadsOf(layout, question.stitches)
  };
}

// The total order.
function compare(left: Ranked, right: Ranked): number {
  return (
    left.price - right.price ||
    right.onBor - left.onBor ||
    right.onEdges - left.onEdges ||
    compareLists(right.loads, left.loads) ||
    compareLists(left.layout.breaks, right.layout.breaks)
  );
}

function compareLists(left: readonly number[], right: readonly number[]): number {
  for (let index = 0; index < left.length; index += 1) {
    const difference = left[index]! - (right[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
