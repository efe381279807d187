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

/** Finds the `count` cheapest layouts: the first ones of `layoutsInOrder`. */
export function bestLayouts(question: Question, count: number): Priced[] {
  const found: Priced[] = [];
  for (const priced of layoutsInOrder(question)) {
    if (found.push(priced) >= count) break;
  }
  return found;
}

/**
 * Gives every layout of a question, one after the other, the cheapest first.
 *
 * Exact. For each possible first break, a table of the least price of every completion, filled from the last needle to the
 * first, guides a best-first search that therefore never follows a dead end; a table is made only when its first break can
 * compete. Needles are tried in a window of lengths round the even share; layouts are given as long as none with a needle
 * outside the window can be as cheap, and then the window grows. Order: price, the BOR on a break, more breaks on section
 * edges, bigger loads first, positions ascending: total, so that every machine gives the same list. Time for one first
 * break: needles × stitches × window.
 */
export function* layoutsInOrder(question: Question): Generator<Priced, void, void> {
  const fair = question.stitches / question.needles;
  const longest = Math.min(question.stitches, question.mostLoad);
  if (longest * question.needles < question.stitches) return;
  let given = -Infinity;
  for (let slack = 8; given < Infinity; slack *= 2) {
    const window = {
      least: Math.max(1, Math.floor(fair) - slack),
      most: Math.min(longest, Math.ceil(fair) + slack)
    };
    const proven = leastOutside(question, window);
    if (proven > given) yield* inWindow(question, window, { from: given, below: proven });
    given = proven;
  }
}

interface Window {
  readonly least: number;
  readonly most: number;
}

// A layout with a needle outside the window pays at least for that needle and for its cheapest breaks.
function leastOutside(question: Question, window: Window): number {
  const outside = Math.min(
    window.least > 1 ? question.leastForLoad(window.least - 1) : Infinity,
    window.most < Math.min(question.stitches, question.mostLoad) ? question.leastForLoad(window.most + 1) : Infinity
  );
  const { gaps, needles } = question;
  return question.base + sum(smallest(gaps, needles)) + outside;
}

function smallest(prices: readonly number[], count: number): number[] {
  return [...prices].sort((left, right) => left - right).slice(0, count);
}

function sum(prices: readonly number[]): number {
  return prices.reduce((total, price) => total + price, 0);
}

/** A layout as far as its breaks are chosen. */
interface Partial {
  readonly breaks: readonly number[];
  /** Paid so far. */
  readonly price: number;
  /** The completions from its first break; `null` as long as the search has not come to it. */
  readonly rest: readonly Float64Array[] | null;
}

// Layouts of one price wait until all of them are there, and are then put in order.
function* inWindow(
  question: Question,
  window: Window,
  prices: { readonly from: number; readonly below: number }
): Generator<Priced, void, void> {
  const heap = firsts(question, window);
  let ties: Ranked[] = [];
  while (heap.least < prices.below) {
    const price = heap.least;
    const partial = heap.pop()!;
    if (partial.breaks.length < question.needles || !partial.rest) expand(heap, partial, { question, window });
    else if (price >= prices.from) ties.push(rank(question, { layout: { breaks: partial.breaks }, price }));
    if (ties.length > 0 && heap.least > price) {
      yield* ties.sort(compare);
      ties = [];
    }
  }
}

// Every possible first break, with the least that its gap and the cheapest later ones cost.
function firsts({ gaps, needles, base }: Question, window: Window): Heap<Partial> {
  const heap = new Heap<Partial>();
  let cheapest: number[] = [];
  for (let gap = gaps.length - 1; gap >= 0; gap -= 1) {
    const price = base + gaps[gap]!;
    const least = price + sum(cheapest);
    const isOpen = gap < window.most && cheapest.length === needles - 1 && Number.isFinite(least);
    if (isOpen) heap.push(least, { breaks: [gap], price, rest: null });
    cheapest = smallest([...cheapest, gaps[gap]!], needles - 1);
  }
  return heap;
}

function expand(
  heap: Heap<Partial>,
  partial: Partial,
  on: { readonly question: Question; readonly window: Window }
): void {
  const first = partial.breaks[0]!;
  const rest = partial.rest ?? completions(on.question, { first, window: on.window });
  const next = partial.rest ? nexts(partial, on) : [{ ...partial, rest }];
  for (const { breaks, price } of next) {
    const least = price + rest[breaks.length - 1]![breaks.at(-1)! - first]!;
    if (Number.isFinite(least)) heap.push(least, { breaks, price, rest });
  }
}

function nexts(
  partial: Partial,
  { question, window }: { readonly question: Question; readonly window: Window }
): Omit<Partial, 'rest'>[] {
  const from = partial.breaks.at(-1)!;
  const result: Omit<Partial, 'rest'>[] = [];
  for (let gap = from + window.least; gap <= Math.min(from + window.most, question.stitches - 1); gap += 1) {
    const price = partial.price + question.needle(from, gap) + question.gaps[gap]!;
    if (Number.isFinite(price)) result.push({ breaks: [...partial.breaks, gap], price });
  }
  return result;
}

interface Start {
  readonly first: number;
  readonly window: Window;
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
