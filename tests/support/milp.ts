/** A layout question as a mixed-integer program, solved by HiGHS: another way to the least price. */

import highsLoader from 'highs';
import type { Question } from '$lib/core/solve/best-layouts.ts';

/** One needle: from a gap, so many stitches long. */
interface Arc {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly length: number;
  readonly price: number;
}

function arcsOf(question: Question): Arc[] {
  const { stitches } = question;
  const arcs: Arc[] = [];
  for (let from = 0; from < stitches; from += 1) {
    for (let length = 1; length < stitches; length += 1) {
      const price = question.gaps[from]! + question.needle(from, from + length);
      const to = (from + length) % stitches;
      if (Number.isFinite(price)) arcs.push({ name: `x${from}_${length}`, from, to, length, price });
    }
  }
  return arcs;
}

const sum = (terms: readonly string[]) => terms.join(' ').replace(/^\+ /u, '') || '0 x0_1';

/**
 * The program in the LP text format: one binary for each needle that could be; what arrives at a gap leaves it; as many
 * needles as asked for; together as long as the ring, so that they go round once. Layouts can be forbidden by the names of
 * their needles.
 */
function lpText(question: Question, forbidden: readonly (readonly string[])[]): string {
  const arcs = arcsOf(question);
  const term = (factor: number, arc: Arc) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${arc.name}`;
  const flows = Array.from({ length: question.stitches }, (_, gap) => {
    const inOut = arcs
      .filter((arc) => (arc.from === gap) !== (arc.to === gap))
      .map((arc) => term(arc.to === gap ? 1 : -1, arc));
    return inOut.length > 0 ? ` flow${gap}: ${sum(inOut)} = 0` : '';
  });
  return [
    'Minimize',
    ` price: ${sum(arcs.map((arc) => term(arc.price, arc)))}`,
    'Subject To',
    ...flows.filter((line) => line !== ''),
    ` needles: ${sum(arcs.map((arc) => term(1, arc)))} = ${question.needles}`,
    ` length: ${sum(arcs.map((arc) => term(arc.length, arc)))} = ${question.stitches}`,
    ...forbidden.map((names, index) => ` no${index}: ${names.join(' + ')} <= ${names.length - 1}`),
    'Binary',
    ` ${arcs.map((arc) => arc.name).join(' ')}`,
    'End'
  ].join('\n');
}

/** The `count` least prices of the layouts of a question, ascending; fewer when there are no more. */
export async function leastPrices(question: Question, count: number): Promise<number[]> {
  const highs = await highsLoader();
  const prices: number[] = [];
  const forbidden: string[][] = [];
  while (prices.length < count) {
    const solved = highs.solve(lpText(question, forbidden));
    if (solved.Status !== 'Optimal') break;
    prices.push(Math.round(solved.ObjectiveValue) + question.base);
    forbidden.push(
      Object.values(solved.Columns)
        .filter((column) => 'Primal' in column && column.Primal > 0.5)
        .map((column) => column.Name)
    );
  }
  return prices;
}
