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
