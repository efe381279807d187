/** Samples of constructions: small patterns with what they must come to, told by hand, and how to compare them. */

import { readdirSync, readFileSync } from 'node:fs';
import { lineFinder, type Fabric, type Row, type Workpiece } from '$lib/core/index.ts';
import { followGaps } from '$lib/core/model/follow.ts';
import { countAfter } from './counts.ts';

/** One number for every size, or one for each; `null` for a size in which the row is not worked. */
type PerSize = number | null | readonly (number | null)[];

/** What a sample must come to. */
export interface Expected {
  readonly sizes: number;
  readonly rows: readonly ExpectedRow[];
  /** Stitches on the needles at the end of the text; `null` where the text leaves it open. */
  readonly end: PerSize;
  /** Stitches per needle in ring order at the end, for all sizes or for each; `null` when the text states no needles. */
  readonly loads: readonly number[] | readonly (readonly number[])[] | null;
  readonly messages: readonly { readonly severity: string; readonly line: number; readonly about: string }[];
}

interface ExpectedRow {
  readonly label: string;
  /** Which of the rows with this label, from 1. */
  readonly nth?: number;
  readonly stage?: string;
  readonly after: PerSize;
  /** Stitches left unworked at the left and at the right end, seen from the right side. */
  readonly unworked?: readonly [number, number];
}

/** A text with what it must come to. */
export interface Sample {
  readonly name: string;
  readonly text: string;
  readonly expected: Expected;
}

/** Every sample below `tests/constructions/`. */
export function samples(): Sample[] {
  const root = new URL('../constructions/', import.meta.url);
  return readdirSync(root).flatMap((folder) => {
    const read = (file: string) => readFileSync(new URL(`${folder}/${file}`, root), 'utf8');
    const { texts } = JSON.parse(read('expect.json')) as { readonly texts: Readonly<Record<string, Expected>> };
    return Object.entries(texts).map(([file, expected]) => ({ name: `${folder}/${file}`, text: read(file), expected }));
  });
}

/** Rows and end of one size as they are expected and as they were knitted, in one shape. */
export function sideBySide(fabric: Fabric, expected: Expected) {
  const size = fabric.sizeIndex;
  const told = expected.rows.map((row) => ({
    row: nameOf(row),
    after: forSize(row.after, size),
    ...(row.unworked && { unworked: row.unworked })
  }));
  const found = expected.rows.map((row) => {
    const knitted = findRow(fabric, row);
    return {
      row: nameOf(row),
      after: knitted ? countAfter(knitted) : null,
      ...(row.unworked && { unworked: knitted ? [knitted.unworked.after, knitted.unworked.before] : null })
    };
  });
  const end = forSize(expected.end, size);
  return {
    expected: { rows: told, end },
    found: { rows: found, end: end === null ? null : (fabric.stages.at(-1)?.exit.stitches.length ?? 0) }
  };
}

function nameOf({ stage, label, nth }: ExpectedRow): string {
  return `${stage ? `${stage}: ` : ''}${label}${nth ? ` (${nth})` : ''}`;
}

function forSize(value: PerSize, size: number): number | null {
  return typeof value === 'number' || value === null ? value : (value[size] ?? null);
}

function findRow(fabric: Fabric, told: ExpectedRow): Row | undefined {
  const same = (left: string, right: string) => left.toLowerCase() === right.toLowerCase();
  const stages = fabric.stages.filter(({ name }) => told.stage === undefined || same(name, told.stage));
  const rows = stages.flatMap((stage) => stage.rows).filter(({ label }) => same(label, told.label));
  return rows[(told.nth ?? 1) - 1];
}

/** Severity and line of each message, in order; notes only where a note is expected on the line. */
export function messagesOf(workpiece: Workpiece, expected: Expected): string[] {
  const lineOf = lineFinder(workpiece.text);
  const isTold = (line: number) => expected.messages.some((told) => told.severity === 'note' && told.line === line);
  return workpiece.diagnostics
    .map(({ severity, span, message }) => ({ severity, line: lineOf(span.from), message }))
    .filter(({ severity, line }) => severity !== 'note' || isTold(line))
    .map(({ severity, line }) => `${severity} in line ${line}`)
    .sort((left, right) => left.localeCompare(right));
}

/** The same for the messages that a sample expects. */
export function messagesExpected({ messages }: Expected): string[] {
  return messages
    .map(({ severity, line }) => `${severity} in line ${line}`)
    .sort((left, right) => left.localeCompare(right));
}

/** Stitches per needle at the end, as the text tells them and the rows change them; `null` when it tells of no needles. */
export function loadsOf(fabric: Fabric): number[] | null {
  const stage = fabric.stages.at(-1);
  const stated = stage?.stated.at(-1);
  if (!stage || !stated) return null;
  const breaks = stage.rows.slice(stated.row).reduce(followBreaks, stated.breaks);
  const stitches = stage.exit.stitches.length;
  return breaks.map((from, index) => (breaks[index + 1] ?? stitches + breaks[0]!) - from);
}

function followBreaks(breaks: readonly number[], row: Row): number[] {
  const { to } = followGaps(row);
  return breaks.map((gap) => to[gap]!);
}

/** The loads expected for one size. */
export function loadsExpected({ loads }: Expected, size: number): readonly number[] | null {
  const [first] = loads ?? [];
  if (loads === null || first === undefined) return null;
  return typeof first === 'number' ? (loads as readonly number[]) : (loads as readonly (readonly number[])[])[size]!;
}
