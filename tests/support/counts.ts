/** Expected counts of a pattern, told by hand, and how to compare them with what was knitted. */

import { readFileSync } from 'node:fs';
import type { Fabric, Row } from '$lib/core/index.ts';

/** Counts for every size; `null` means not told. */
export interface CountsFile {
  readonly sizes: readonly string[];
  readonly stages: readonly {
    readonly name: string;
    readonly start: readonly (number | null)[];
    readonly end: readonly (number | null)[];
    readonly rows: readonly { readonly label: string; readonly after: readonly (number | null)[] }[];
  }[];
}

/** Reads a file of counts below `tests/`. */
export function readCounts(path: string): CountsFile {
  return JSON.parse(readFileSync(new URL(`../${path}`, import.meta.url), 'utf8')) as CountsFile;
}

/** Stitches that a row leaves: of the run in work in a flat row, of the ring in a round. */
export function countAfter(row: Row): number {
  return row.run.to - row.run.from + row.after.stitches.length - row.before.stitches.length;
}

/** What a fabric gave, in the shape of the expected counts of one size, for the stages and rows that are told. */
export function countsOf(fabric: Fabric, expected: CountsFile) {
  const size = fabric.sizeIndex;
  return expected.stages.map((told) => {
    const stage = fabric.stages.find((candidate) => sameHeading(candidate.name, told.name));
    const start = told.start[size] ?? null;
    const end = told.end[size] ?? null;
    return {
      name: told.name,
      start: start === null || !stage ? null : stage.entry.stitches.length,
      end: end === null || !stage ? null : stage.exit.stitches.length,
      rows: told.rows
        .filter((row) => row.after[size] !== null)
        .map((row) => ({ label: row.label, after: afterOf(stage?.rows ?? [], row.label) }))
    };
  });
}

/** The expected counts of one size. */
export function expectedOf(expected: CountsFile, size: number) {
  return expected.stages.map((told) => ({
    name: told.name,
    start: told.start[size] ?? null,
    end: told.end[size] ?? null,
    rows: told.rows
      .filter((row) => row.after[size] !== null)
      .map((row) => ({ label: row.label, after: row.after[size] }))
  }));
}

function afterOf(rows: readonly Row[], label: string): number | null {
  const row = rows.find((candidate) => candidate.label.toLowerCase() === label.toLowerCase());
  return row ? countAfter(row) : null;
}

function sameHeading(left: string, right: string): boolean {
  const plain = (name: string) =>
    name
      .toLowerCase()
      .replaceAll(/[#:]|\(.*/gu, '')
      .trim();
  return plain(left) === plain(right);
}
