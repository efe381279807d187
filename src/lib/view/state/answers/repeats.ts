/** Which knitted rows come from a sentence that works earlier rows again ("Rep rnds 1-8 four more times"). */

import type { Fabric, Row, Workpiece } from '$lib/core/index.ts';
import { countsOf } from './row-counts.ts';
import { inSize, type Told, type ToldRepeat } from './told.ts';

/** The rows that one such sentence has worked. */
export interface RepeatedRows {
  /** Where the sentence begins, as an offset of the text. */
  readonly from: number;
  /** Index of the stage, and of the first of the rows in it. */
  readonly stage: number;
  readonly row: number;
  /** At least one, in the order of working. */
  readonly rows: readonly Row[];
}

/** Rows in a stretch that was worked again, beginning at one of them. */
interface Stretch {
  readonly stage: number;
  readonly row: number;
  readonly rows: readonly Row[];
}

/** Finds the rows of every such sentence in one size. */
export function repeatedRows({ pattern }: Workpiece, fabric: Fabric): RepeatedRows[] {
  const freshness = new Freshness();
  const known = knownOf(fabric);
  return fabric.stages.flatMap(({ rows }, stage) => {
    const told = pattern.stages[stage]?.statements ?? [];
    freshness.add(told);
    const repeats = told.filter((one) => one.kind === 'repeat-rows').filter((one) => isFor(one, known));
    return stretchesOf(rows, stage, freshness).flatMap((stretch) => {
      const next = rows[stretch.row + stretch.rows.length]?.span.from ?? Infinity;
      const mine = repeats.splice(0, countBefore(repeats, next));
      return share(stretch, mine, known);
    });
  });
}

function countBefore(repeats: readonly ToldRepeat[], next: number): number {
  const beyond = repeats.findIndex(({ span }) => span.from >= next);
  return beyond < 0 ? repeats.length : beyond;
}

/** What knitting in one size has found about such sentences, by the offsets at which they begin. */
interface Known {
  readonly size: number;
  /** Those whose rows could not be found. */
  readonly missing: ReadonlySet<number>;
  /** How many times in all those are worked that can be read in two ways. */
  readonly decided: ReadonlyMap<number, number | null>;
}

function knownOf({ sizeIndex, diagnostics }: Fabric): Known {
  const of = (code: string) => diagnostics.filter((found) => found.code === code);
  return {
    size: sizeIndex,
    missing: new Set(of('rows-missing').map(({ span }) => span.from)),
    decided: new Map(of('repeats-decided').map(({ span, found }) => [span.from, found]))
  };
}

function isFor({ sizes, span }: ToldRepeat, { size, missing }: Known): boolean {
  return !missing.has(span.from) && (sizes === null || sizes.includes(size));
}

/** Tells whether a row is worked where it is told, or again. Rows must come in the order of working. */
class Freshness {
  /** How often a row of this place and label is worked before it is worked again. */
  readonly #first = new Map<number, number>();
  readonly #worked = new Map<string, number>();

  add(told: readonly Told[]): void {
    for (const { kind, span, ...one } of told) {
      if (kind === 'repeat-rows') this.#first.set(span.from, 0);
      if (kind === 'row' && 'numbers' in one && one.numbers.kind === 'next') {
        this.#first.set(span.from, one.numbers.times ?? 1);
      }
    }
  }

  isAgain({ span, label }: Row): boolean {
    const key = `${span.from} ${label}`;
    const worked = (this.#worked.get(key) ?? 0) + 1;
    this.#worked.set(key, worked);
    return worked > (this.#first.get(span.from) ?? 1);
  }
}

function stretchesOf(rows: readonly Row[], stage: number, freshness: Freshness): Stretch[] {
  const stretches: { stage: number; row: number; rows: Row[] }[] = [];
  let goesOn = false;
  rows.forEach((row, index) => {
    const again = freshness.isAgain(row);
    if (again && goesOn) stretches.at(-1)!.rows.push(row);
    else if (again) stretches.push({ stage, row: index, rows: [row] });
    goesOn = again;
  });
  return stretches;
}

// Sentences that follow each other share a stretch; the last takes what the others leave.
function share(stretch: Stretch, repeats: readonly ToldRepeat[], known: Known): RepeatedRows[] {
  let done = 0;
  return repeats.flatMap((repeat, index) => {
    const left = stretch.rows.slice(done);
    const rows = index === repeats.length - 1 ? left : left.slice(0, lengthOf(repeat, left, known));
    const row = stretch.row + done;
    done += rows.length;
    return rows.length === 0 ? [] : [{ from: repeat.span.from, stage: stretch.stage, row, rows }];
  });
}

function lengthOf(repeat: ToldRepeat, rows: readonly Row[], known: Known): number {
  const { extent, plainBetween } = repeat;
  if (!('count' in extent)) return rows.length;
  const count = inSize(extent.count, known.size) ?? 0;
  const unit = rowsIn(repeat.rows);
  if (extent.kind === 'until') return untilCount(rows, count);
  if (extent.kind === 'rows') return extent.meaning === 'total' ? count - unit : count;
  return timesMore(repeat, count, known) * (unit + plainBetween);
}

function untilCount(rows: readonly Row[], count: number): number {
  const last = rows.findIndex((row) => countsOf(row).after === count);
  return last < 0 ? rows.length : last + 1;
}

// Whether "five times" counts the first time too is told where knitting has decided it.
function timesMore({ extent, span }: ToldRepeat, count: number, { decided }: Known): number {
  const isTotal = extent.kind === 'times' && (extent.meaning === 'total' || decided.get(span.from) === count);
  return isTotal ? count - 1 : count;
}

function rowsIn(again: ToldRepeat['rows']): number {
  if (again.kind === 'numbers') return again.numbers.length;
  return again.kind === 'last' ? again.count : 1;
}
