/** Rows that are worked from a chart, one after another: "Work rnds 1-4 of Chart A, rep sts 1-8 to end." */

import type { RowText, Statement } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import { readChart } from './charts.ts';
import type { Cursor } from './cursor.ts';
import { readNoun, readNumbers } from './labels.ts';
import { readTimes } from './times.ts';

/** Most rows that one such sentence may stand for. */
const MOST_ROWS = 600;

/** Reads a sentence that works rows of a chart without a label of its own. */
export function readChartRows(at: Cursor): Statement[] | null {
  const first = at.at;
  const told = at.looksLike(tellsRows) ? at.attempt(peekRows) : null;
  if (!told) return null;
  const { noun, numbers } = told;
  const bodies = numbers.map((_, turn) => {
    at.scope.chartTurn = turn;
    at.at = first;
    return readChart(at);
  });
  at.scope.chartTurn = 0;
  at.skip(',');
  const times = readTimes(at);
  if (!at.atStop || bodies.includes(null)) return null;
  const rounds = forSize(times?.count ?? [1], 0) ?? 1;
  const span = at.span(first);
  const row = (number: number, index: number): RowText => ({
    kind: 'row',
    noun,
    numbering: 'noun',
    numbers: { kind: 'numbers', numbers: [number] },
    name: null,
    side: null,
    sizes: at.scope.onlySizes,
    body: [bodies[index]!],
    assertions: [],
    span
  });
  const once = Math.min(rounds, Math.floor(MOST_ROWS / numbers.length));
  return Array.from({ length: once }, () => numbers.map(row)).flat();
}

function tellsRows(at: Cursor): boolean {
  return readChart(at) !== null;
}

// The rows that the sentence names.
function peekRows(at: Cursor): { readonly noun: string; readonly numbers: readonly number[] } | null {
  while (!at.atStop) {
    const noun = readNoun(at);
    const numbers = noun ? readNumbers(at) : null;
    if (noun && numbers) return { noun, numbers };
    at.at += 1;
  }
  return null;
}
