/** Counts beside the lines of the text. */

import { lineFinder, type Fabric, type Row, type Workpiece } from '$lib/core/index.ts';
import { sayCounts } from '../words.ts';

/** The stitches of one line of the text, each time it is knitted. */
export interface CountedLine {
  readonly line: number;
  readonly words: string;
  readonly title: string;
}

/** For every line that is knitted, the stitches before and after; a line that is repeated shows its first time. */
export function countLines(fabric: Fabric): CountedLine[] {
  const byLine = new Map<number, Row[]>();
  for (const row of fabric.stages.flatMap((stage) => stage.rows)) {
    const rows = byLine.get(row.line);
    if (rows) rows.push(row);
    else byLine.set(row.line, [row]);
  }
  return [...byLine].map(([line, rows]) => ({ line, words: sayRow(rows[0]!), title: sayRows(rows) }));
}

// A flat row counts the stretch in work, a round the whole ring.
function countsOf(row: Row): [number, number] {
  const before = row.run.to - row.run.from;
  return [before, before + row.after.stitches.length - row.before.stitches.length];
}

function sayRow(row: Row): string {
  return sayCounts(...countsOf(row));
}

function sayRows(rows: readonly Row[]): string {
  const first = `stitches: ${sayRow(rows[0]!)}`;
  if (rows.length === 1) return first;
  const last = sayRow(rows.at(-1)!);
  return `knitted ${rows.length} times; first ${first}; last: ${last}`;
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
