/** Layouts by plain enumeration: slow, short, and written apart from the solver. */

import type { Question } from '$lib/core/solve/best-layouts.ts';

/** A layout as a row of facts that sorts by the total order. */
export interface Enumerated {
  readonly breaks: readonly number[];
  readonly price: number;
}

/** Every layout of a question that can be paid, in the total order of the solver's contract. */
export function enumerate(question: Question): Enumerated[] {
  const found: Enumerated[] = [];
  const choose = (breaks: readonly number[]) => {
    if (breaks.length === question.needles) {
      const price = priceOf(question, breaks);
      if (Number.isFinite(price)) found.push({ breaks, price });
      return;
    }
    for (let gap = (breaks.at(-1) ?? -1) + 1; gap < question.stitches; gap += 1) choose([...breaks, gap]);
  };
  choose([]);
  return found.sort((left, right) => order(question, left, right));
}

/**
 * The `count` best layouts, in the total order. Breaks are tried from the last to the first; a layout is given up when its
 * breaks and needles so far, and the cheapest breaks that could follow, are dearer than the last of the best so far.
 */
export function enumerateBest(question: Question, count: number): Enumerated[] {
  const best: Enumerated[] = [];
  const cheapest = Math.min(0, ...question.gaps);
  const limit = () => (best.length < count ? Infinity : best[count - 1]!.price);
  const choose = (breaks: readonly number[], paid: number) => {
    const missing = question.needles - breaks.length;
    if (paid === Infinity || paid + missing * cheapest > limit()) return;
    if (missing === 0) {
      keep(question, best, { breaks, price: priceOf(question, breaks) });
      best.splice(count);
      return;
    }
    for (let gap = (breaks[0] ?? question.stitches) - 1; gap >= missing - 1; gap -= 1) {
      const needle = breaks.length > 0 ? question.needle(gap, breaks[0]!) : 0;
      choose([gap, ...breaks], paid + needle + question.gaps[gap]!);
    }
  };
  choose([], question.base);
  return best;
}

function keep(question: Question, best: Enumerated[], layout: Enumerated): void {
  if (layout.price === Infinity) return;
  const at = best.findIndex((other) => order(question, layout, other) < 0);
  best.splice(at < 0 ? best.length : at, 0, layout);
}

/** What a layout pays. */
function priceOf(question: Question, breaks: readonly number[]): number {
  const needles = breaks.map((from, index) =>
    question.needle(from, breaks[index + 1] ?? breaks[0]! + question.stitches)
  );
  const gaps = breaks.map((gap) => question.gaps[gap]!);
  return question.base + [...needles, ...gaps].reduce((sum, price) => sum + price, 0);
}

function order(question: Question, left: Enumerated, right: Enumerated): number {
  const facts = ({ breaks, price }: Enumerated) => {
    const loads = breaks.map((from, index) => (breaks[index + 1] ?? breaks[0]! + question.stitches) - from);
    const edges = breaks.filter((gap) => question.isEdge(gap)).length;
    return [price, breaks[0] === 0 ? 0 : 1, -edges, ...loads.map((load) => -load), ...breaks];
  };
  const [a, b] = [facts(left), facts(right)];
  const at = a.findIndex((fact, index) => fact !== b[index]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}
