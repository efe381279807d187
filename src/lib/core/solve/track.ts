/** A stage followed from its start ring: where every gap stands in every row, rows of the same effect together. */

import type { Row, Stage } from '../model/fabric.ts';
import { followGaps } from '../model/follow.ts';
import { wrap } from '../model/ring.ts';

/** Rows that do the same to the same gaps. */
export interface Effect {
  readonly row: Row;
  /** Indices of the rows of the stage, ascending. */
  readonly rows: readonly number[];
  /** For each gap of the start ring, its gap in the ring before the row, and in the ring after. */
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** For each gap of the start ring, the index of the step that cuts it, or -1. */
  readonly cutBy: readonly number[];
}

/**
 * A ring that needles are measured in: the ring after some rows, before a row that binds everything off, or the start ring
 * of a stage without rows.
 */
export interface Measure {
  /** For each gap 0 to n of the start ring, the stitches of this ring between gap 0 and it: never falling, all of them at n. */
  readonly at: readonly number[];
  readonly stitches: number;
  readonly rows: readonly number[];
}

/** A stage followed from its start ring. */
export interface Track {
  readonly stage: Stage;
  /** Stitches of the start ring. */
  readonly stitches: number;
  readonly effects: readonly Effect[];
  readonly measures: readonly Measure[];
}

/** Follows every gap of the start ring through every row. Time grows with rows × stitches. */
export function trackStage(stage: Stage): Track {
  const stitches = stage.start.stitches.length;
  const effects: (Effect & { rows: number[] })[] = [];
  const measures: (Measure & { rows: number[] })[] = [];
  let at: readonly number[] = Array.from({ length: stitches }, (_, gap) => gap);
  stage.rows.forEach((row, index) => {
    const effect = effectOf(row, at, effects);
    effect.rows.push(index);
    measureOf(measureAfter(effect), measures).rows.push(index);
    at = effect.after;
  });
  if (measures.length === 0) measures.push({ at: [...at, stitches], stitches, rows: [0] });
  return { stage, stitches, effects, measures };
}

// A row read from the same place in the text, met with the same gaps, has the same effect.
function effectOf(row: Row, at: readonly number[], known: (Effect & { rows: number[] })[]) {
  const same = known.find((effect) => sameText(effect.row, row) && sameNumbers(effect.before, at));
  if (same) return same;
  const path = followGaps(row);
  const before = row.before.stitches.length;
  const effect = {
    row,
    rows: [],
    before: at,
    after: at.map((gap) => path.to[wrap(gap, before)] ?? 0),
    cutBy: at.map((gap) => path.cutBy[wrap(gap, before)] ?? -1)
  };
  known.push(effect);
  return effect;
}

function sameText(left: Row, right: Row): boolean {
  return (
    left.span.from === right.span.from &&
    left.side === right.side &&
    left.steps.length === right.steps.length &&
    left.start === right.start &&
    left.after.stitches.length === right.after.stitches.length &&
    left.steps.every((step, index) => step.operation === right.steps[index]!.operation)
  );
}

type Counted = Omit<Measure, 'rows'>;

function measureAfter({ row, before, after }: Effect): Counted {
  const left = row.after.stitches.length;
  return left > 0 ? counted(after, left) : counted(before, row.before.stitches.length);
}

// Neighbouring gaps keep their order, so what lies between them is the way from one to the next; only where a single stitch
// became the whole ring would that way be 0.
function counted(places: readonly number[], stitches: number): Counted {
  const at = [0];
  places.forEach((place, gap) => {
    const next = places[(gap + 1) % places.length]!;
    at.push(at[gap]! + wrap(next - place, stitches));
  });
  return { at, stitches };
}

function measureOf({ at, stitches }: Counted, known: (Measure & { rows: number[] })[]) {
  const same = known.find((measure) => measure.stitches === stitches && sameNumbers(measure.at, at));
  if (same) return same;
  const measure = { at, stitches, rows: [] };
  known.push(measure);
  return measure;
}

function sameNumbers(left: readonly number[], right: readonly number[]): boolean {
  return left === right || (left.length === right.length && left.every((number, index) => number === right[index]));
}

/** Number of rows that prices are summed over: at least 1, so that a cast-on alone can be laid out. */
export function rowCount(stage: Stage): number {
  return Math.max(stage.rows.length, 1);
}
