/** Counts beside the lines of the text. */

import { lineFinder, type Fabric, type Row, type Workpiece } from '$lib/core/index.ts';
import { sayCounts } from '../words.ts';
import { repeatedRows } from './repeats.ts';
import { countsOf } from './row-counts.ts';

/** The stitches of one line of the text, each time it is knitted. */
export interface CountedLine {
  readonly line: number;
  /** Before and after, in the size in view; "" when that size does not work the line. */
  readonly words: string;
  readonly title: string;
  /** The same for every size, "" where one does not work the line; empty when there is one size only. */
  readonly sizes: readonly string[];
  /** The first row knitted from the line in the size in view: index of its stage, and of the row in it. */
  readonly place: RowPlace | null;
}

/** A row of a fabric. */
export interface RowPlace {
  readonly stage: number;
  readonly row: number;
}

/** A line in one size. */
type OneSize = Pick<CountedLine, 'words' | 'title'> & { readonly place: RowPlace };

const NOT_WORKED = { words: '', title: '', place: null };

/**
 * For every line that is knitted, the stitches before and after. A line that is repeated shows its first time; one that
 * repeats others shows what it starts and ends with.
 */
export function countLines(workpiece: Workpiece, size: number): CountedLine[] {
  const lineOf = lineFinder(workpiece.text);
  const sizes = workpiece.fabrics.map((fabric) => countIn(workpiece, fabric, lineOf));
  const lines = new Set(sizes.flatMap((counts) => [...counts.keys()]));
  return [...lines].map((line) => ({
    line,
    ...(sizes[size]?.get(line) ?? NOT_WORKED),
    sizes: sizes.length > 1 ? sizes.map((counts) => counts.get(line)?.words ?? '') : []
  }));
}

function countIn(workpiece: Workpiece, fabric: Fabric, lineOf: (offset: number) => number): Map<number, OneSize> {
  const lines = rowsByLine(fabric);
  const repeats = repeatedRows(workpiece, fabric);
  const again = new Set(repeats.flatMap(({ rows }) => rows));
  const counts = new Map<number, OneSize>();
  for (const [line, { rows, place }] of lines) counts.set(line, { ...sayRows(rows), place });
  const starts = new Map<number, RowsOfLine>();
  for (const [line, { rows, place }] of lines) if (!again.has(rows[0]!)) starts.set(line, { rows, place });
  for (const { from, stage, row, rows } of repeats) {
    const line = lineOf(from);
    const start = starts.get(line) ?? { rows: [...rows], place: { stage, row } };
    starts.set(line, start);
    counts.set(line, { ...sayRepeat(start.rows[0]!, rows), place: start.place });
  }
  return counts;
}

interface RowsOfLine {
  readonly rows: Row[];
  readonly place: RowPlace;
}

function rowsByLine(fabric: Fabric): Map<number, RowsOfLine> {
  const lines = new Map<number, RowsOfLine>();
  fabric.stages.forEach(({ rows }, stage) =>
    rows.forEach((one, row) => {
      const known = lines.get(one.line);
      if (known) known.rows.push(one);
      else lines.set(one.line, { rows: [one], place: { stage, row } });
    })
  );
  return lines;
}

function sayRow(row: Row): string {
  const { before, after } = countsOf(row);
  return sayCounts(before, after);
}

function sayRows(rows: readonly Row[]): { readonly words: string; readonly title: string } {
  const words = sayRow(rows[0]!);
  const first = `stitches: ${words}`;
  if (rows.length === 1) return { words, title: first };
  return { words, title: `knitted ${rows.length} times; first ${first}; last: ${sayRow(rows.at(-1)!)}` };
}

function sayRepeat(first: Row, again: readonly Row[]): { readonly words: string; readonly title: string } {
  const words = sayCounts(countsOf(first).before, countsOf(again.at(-1)!).after);
  return { words, title: `works ${again.length} more ${again.length === 1 ? 'row' : 'rows'}; stitches: ${words}` };
}

/** A line that is no instruction. */
export interface KindOfLine {
  readonly line: number;
  readonly kind: 'title' | 'heading' | 'prose';
}

/** The title, the headings and the lines of prose. */
export function kindsOfLines({ text, pattern }: Workpiece): KindOfLine[] {
  const lineOf = lineFinder(text);
  const kinds = new Map<number, KindOfLine['kind']>();
  const statements = pattern.stages.flatMap((stage) => stage.statements);
  for (const statement of statements) {
    if (statement.kind !== 'prose') continue;
    const last = lineOf(Math.max(statement.span.from, statement.span.to - 1));
    for (let line = lineOf(statement.span.from); line <= last; line += 1) kinds.set(line, 'prose');
  }
  for (const statement of statements) {
    if (statement.kind !== 'prose') kinds.delete(lineOf(statement.span.from));
  }
  pattern.stages.forEach((stage) => kinds.set(stage.line, 'heading'));
  const title = text.search(/\S/u);
  if (title >= 0) kinds.set(lineOf(title), 'title');
  return [...kinds].map(([line, kind]) => ({ line, kind }));
}
