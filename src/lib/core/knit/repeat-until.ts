/** Repeats rows until something is reached: a count of stitches, a length, or the end of what a turn left. */

import { forSize } from '../model/sized.ts';
import { again, workPlainBetween, type Of, type Repeat } from './again.ts';
import { stitchesOn } from './assertions.ts';
import { endsOn, rowsToGo } from './even.ts';
import type { Knitter } from './knitter.ts';
import { runOf, sectionRun } from './run.ts';

interface Until extends Repeat {
  readonly goal: Of<'until'>;
}

/** Stops after the row that reaches the count. A repeat that brings no change, or that steps over the count, is a mistake. */
export function untilCount(knitter: Knitter, what: Until): void {
  const goal = forSize(what.goal.count, knitter.context.size);
  if (goal === null) return;
  const measure = () => counted(knitter, what.goal);
  const falling = measure() > goal;
  const beyond = () => (falling ? measure() < goal : measure() > goal);
  while (measure() !== goal) {
    const before = measure();
    workUntil(knitter, what, () => measure() === goal);
    if (measure() === goal) return;
    if (measure() === before || beyond()) {
      knitter.context.where = knitter.stage.text.name;
      knitter.context.report('unreachable-count', what.statement.span, { expected: goal, found: measure() });
      return;
    }
  }
}

function workUntil(knitter: Knitter, what: Until, reached: () => boolean): void {
  workPlainBetween(knitter, what.statement);
  for (const row of what.rows) {
    again(knitter, row);
    if (reached()) return;
  }
}

/** Counts what repeating goes by. "On each needle" is measured where most are left, so that all come down to the number. */
export function counted(knitter: Knitter, { of, on }: Until['goal']): number {
  const ring = knitter.ring();
  const onNeedles = on && knitter.tube ? stitchesOn(on, knitter.tube, knitter.context) : [];
  if (onNeedles.length > 0) return Math.max(...onNeedles);
  const flat = knitter.stage.flat && knitter.tube ? runOf(knitter.tube) : null;
  const run = (of === null ? null : sectionRun(ring, of)) ?? flat;
  return run ? run.to - run.from : ring.stitches.length;
}

/** Repeats rows up to a length: to the end of a repeat, or to the side that the last row is told to have. */
export function upToLength(knitter: Knitter, { statement, rows }: Repeat, extent: Of<'length'>): void {
  const count = rowsToGo(knitter, extent, statement.span);
  if (count === null) return;
  const { lastSide } = extent;
  const isEnd = (worked: number) => (lastSide ? endsOn(knitter, lastSide) : worked % rows.length === 0);
  for (let worked = 0; worked < count || !isEnd(worked); worked += 1) again(knitter, rows[worked % rows.length]!);
}

/** Repeats turning rows until nothing is left unworked. The last rows may have less to work than they say. */
export function untilAllWorked(knitter: Knitter, { statement, rows }: Repeat): void {
  const { context } = knitter;
  for (let left = unworked(knitter); left > 0;) {
    for (const row of rows) {
      if (unworked(knitter) === 0) break;
      const before = context.diagnostics.length;
      again(knitter, row);
      if (unworked(knitter) === 0) context.forgive('row-too-long', before);
    }
    const now = unworked(knitter);
    if (now >= left) return context.report('never-all-worked', statement.span, { found: now });
    left = now;
  }
}

/** Stitches that the turn of the last row left, on either side. */
export function unworked(knitter: Knitter): number {
  const last = knitter.stage.rows.at(-1);
  return last ? last.unworked.before + last.unworked.after : 0;
}
