/** Charts that are written out as rows, and the rows that work them: "work row 2 of Chart B over next 32 sts". */

import type { Extent, Instruction, Target } from '../model/pattern.ts';
import { everySize } from '../model/sized.ts';
import { readBody } from './body.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readLabel, readNumbers } from './labels.ts';
import { skipNote } from './notes.ts';
import { readTarget } from './targets.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const ROW_WORDS = ['row', 'rows', 'rnd', 'rnds', 'round', 'rounds', 'line'];

/** Rows of one chart by number. */
export type Chart = ReadonlyMap<number, readonly Instruction[]>;

/** Reads a line that writes a chart out: "Chart A: row 1: k4, p4. Row 2: p4, k4." */
export function readChartLine(at: Cursor): boolean {
  return (
    at.attempt(() => {
      const name = readName(at);
      if (name === null) return null;
      skipNote(at);
      if (!at.take(':')) return null;
      return readChartRows(at, name) ? true : null;
    }) === true
  );
}

/** Reads rows of a chart up to the end of the line; false when there are none. */
export function readChartRows(at: Cursor, name: string): boolean {
  const rows = new Map(at.scope.charts.get(name));
  while (!at.done) {
    const row = at.attempt(readChartRow);
    if (!row) break;
    for (const number of row.numbers) rows.set(number, row.body);
  }
  if (rows.size > 0) at.scope.charts.set(name, rows);
  return rows.size > 0;
}

function readChartRow(
  at: Cursor
): { readonly numbers: readonly number[]; readonly body: readonly Instruction[] } | null {
  at.separators();
  const label = readLabel(at);
  if (label?.numbers.kind !== 'numbers') return null;
  const row = at.within(at.at, endOfRow(at));
  const { instructions } = readBody(row, { isOther: () => false, place: 'inner' });
  at.at = row.range.end;
  return { numbers: label.numbers.numbers, body: instructions };
}

// The row lasts to the label of the next one, behind a full stop or a semicolon.
function endOfRow(at: Cursor): number {
  let end = at.at;
  while (end < at.range.end) {
    const isBreak = /^[.;]$/u.test(at.source.tokens[end]!.text);
    end += 1;
    if (isBreak && at.within(end, at.range.end).looksLike(readLabel)) return end;
  }
  return end;
}

// "Chart A", "Chart", "chart 2", "the leg chart".
function readName(at: Cursor): string | null {
  at.skip('the');
  const lead = at.text() !== 'chart' && at.text(1) === 'chart' ? at.kind('word') : null;
  if (!at.take('chart', 'charts')) return null;
  if (lead) return lead.text;
  const letter = at.peek();
  const isNamed = letter?.kind === 'number' || (letter?.kind === 'word' && /^[a-z]$/u.test(letter.text));
  if (isNamed) at.at += 1;
  return isNamed ? letter.text : '';
}

/** A chart that a row points to. */
interface Reference {
  readonly name: string;
  /** Rows of the chart; `null` when the row itself does not say which. */
  readonly rows: readonly number[] | null;
  /** Where the chart is told to end; `null` without a word about it. */
  readonly target: Target | null;
}

/** Whether the rest of the row works from a chart. */
export function mentionsChart(at: Cursor): boolean {
  return at.looksLike(() => {
    while (!at.done && at.text() !== 'chart') at.at += 1;
    return !at.done;
  });
}

/** Reads the part of a row that is worked from a chart: the chart's row as a repeat over the stitches told. */
export function readChart(at: Cursor): Instruction | null {
  const first = at.at;
  const reference = readReference(at);
  if (!reference) return null;
  const { name, target } = reference;
  const span = at.span(first);
  const body = chartRow(at, name, rowFor(at, reference));
  const end: Target = target ?? { kind: 'end' };
  if (!body) return { kind: 'work-to', operation: null, target: end, span };
  const isWhole = at.scope.depth === 0 && (at.done || at.text() === '.');
  const extent: Extent = target || isWhole ? { kind: 'to', target: end } : { kind: 'times', count: everySize(1) };
  return { kind: 'group', body, extent, span };
}

// A row that names several rows of the chart works one of them after another; without a number its own is meant.
function rowFor(at: Cursor, { rows }: Reference): number {
  const turn = at.scope.chartTurn;
  if (!rows) return at.scope.chartRow ?? turn + 1;
  return rows[turn % rows.length] ?? 1;
}

// Rows beyond the last begin the chart anew.
function chartRow(at: Cursor, name: string, row: number): readonly Instruction[] | null {
  const { charts } = at.scope;
  const chart = charts.get(name) ?? (name === '' && charts.size === 1 ? [...charts.values()][0] : undefined);
  if (!chart) return null;
  const last = Math.max(...chart.keys());
  return chart.get(((row - 1) % last) + 1) ?? null;
}

/** Reads "work rnds 1-4 of Chart A, rep sts 1-8 to end", "work Chart B over next 32 sts", "work next 8 sts from Chart A". */
function readReference(at: Cursor): Reference | null {
  if (!at.take('work', 'working', 'cont', 'continue', 'foll', 'follow', 'k', 'knit')) return null;
  return at.attempt(readStitchesFirst) ?? at.attempt(readChartFirst);
}

// "next 8 sts from Chart A", "8 sts as set on row 1 of chart".
function readStitchesFirst(at: Cursor): Reference | null {
  at.skip('the', 'next');
  const count = readCount(at);
  if (!count || !at.take(...STITCH_WORDS)) return null;
  at.phrase('as set', 'as given', 'as shown');
  if (!at.take('from', 'on', 'of', 'in', 'foll', 'following')) return null;
  const chart = readRowsOf(at);
  return chart && { ...chart, target: { kind: 'next', count } };
}

function readChartFirst(at: Cursor): Reference | null {
  at.skip('from', 'in', 'patt', 'pattern', 'as', 'per');
  const chart = readRowsOf(at);
  return chart && { ...chart, target: at.attempt(readReach) };
}

// "Chart A", "row 2 of Chart B", "rnds 1-4 of the chart", "Chart A rows 1-4".
function readRowsOf(at: Cursor): Pick<Reference, 'name' | 'rows'> | null {
  at.skip('the', 'next');
  const before = at.attempt(() => {
    if (!at.take(...ROW_WORDS)) return null;
    const rows = readNumbers(at);
    return at.take('of', 'from', 'on') ? rows : null;
  });
  const name = readName(at);
  if (name === null) return null;
  const after = before ?? at.attempt(() => (at.skip(',', '-'), at.take(...ROW_WORDS) ? readNumbers(at) : null));
  return { name, rows: after };
}

// "over next 32 sts", ", rep sts 1-8 to end", "across", "to m".
function readReach(at: Cursor): Target | null {
  at.skip(',');
  const over = at.attempt(() => {
    if (!at.take('over', 'across', 'on')) return null;
    at.skip('the', 'next', 'first');
    const count = readCount(at);
    return count && at.take(...STITCH_WORDS) ? count : null;
  });
  if (over) return { kind: 'next', count: over };
  const rep = at.skip('rep', 'repeat', 'repeating', 'working', 'rep');
  if (rep) at.attempt(() => (at.take(...STITCH_WORDS) && readNumbers(at) ? true : null));
  return readTarget(at);
}
