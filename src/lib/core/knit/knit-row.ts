/** Knits one row: finds where it starts and which way it goes, performs it, and checks that it came out. */

import type { Row, Shape } from '../model/fabric.ts';
import type { Instruction, Side } from '../model/pattern.ts';
import { wrap } from '../model/ring.ts';
import type { Span } from '../model/span.ts';
import type { Context } from './context.ts';
import { countStitches, type Locks } from './items.ts';
import { placeBor } from './markers.ts';
import { performAll } from './perform.ts';
import { RowWork } from './row-work.ts';
import { runOf } from './run.ts';
import { workTimes, type Outcome, type Performance } from './work.ts';
import { borHand, handGap, ringOf, withItems, type Tube } from './tube.ts';

/** A row to be knitted, apart from the tube. */
export interface RowTask {
  readonly label: string;
  readonly line: number;
  readonly span: Span;
  readonly body: readonly Instruction[];
  readonly shape: Shape;
  readonly side: Side;
  /** Run of a flat row, in gaps of the ring before; `to` may pass the end of the ring. */
  readonly run: { readonly from: number; readonly to: number };
  /** A partial round: it may stop short of the BOR without a mistake. */
  readonly mayStopShort: boolean;
  readonly extraTimes: 0 | 1;
}

/** What one row gave. */
export interface KnittedRow {
  readonly row: Row;
  readonly tube: Tube;
  readonly outcome: Outcome;
}

/** Knits one row. Mistakes are reported in the context; the rest of a row that failed is worked as it presents itself. */
export function knitRow(tube: Tube, task: RowTask, context: Context): KnittedRow {
  const start = task.shape === 'flat' ? atRun(tube, task) : tube;
  const work = new RowWork(start, task.side, { flat: task.shape === 'flat', nextId: context.nextId });
  const performance: Performance = {
    work,
    context,
    mayPassBor: task.shape === 'round' && (task.mayStopShort || movesBor(task.body)),
    extraTimes: task.extraTimes
  };
  const startGap = work.gap();
  const outcome = performAll(performance, task.body);
  completeRow(performance, task, outcome);
  if (task.shape === 'round' && startGap === 0 && work.taken === 0 && work.drafts.length > 0)
    placeBor(work, { marker: false });
  noteNeedle(work, context);
  const finished = finish(start, task, { work, startGap, locks: context.locks });
  if (task.shape === 'flat') context.flatRun = stitchesOfRun(finished.tube);
  return { ...finished, outcome };
}

function stitchesOfRun(tube: Tube): ReadonlySet<number> {
  const run = runOf(tube);
  const { stitches } = ringOf(tube);
  if (!run) return new Set();
  return new Set(
    stitches.flatMap(({ id }, at) => (wrap(at - run.from, stitches.length) < run.to - run.from ? [id] : []))
  );
}

// Where the text tells of needles, the next row may go on with "the same needle".
function noteNeedle(work: RowWork, context: Context): void {
  if (work.last === null) return;
  context.needles.last = work.last;
  context.lastRow = new Set(work.done.flatMap((item) => (item.kind === 'stitch' ? [item.stitch.id] : [])));
}

function movesBor(body: readonly Instruction[]): boolean {
  return body.some((part) => part.kind === 'marker' && part.action === 'place' && part.name === 'BOR');
}

// What hangs after the last stitch goes along; stitches that the row forgot are worked, so that one mistake stays one.
function completeRow(at: Performance, task: RowTask, outcome: Outcome): void {
  const { work, context } = at;
  const left = work.room();
  if (outcome === 'turned') return;
  if (outcome === 'worked' && left > 0 && !(task.mayStopShort || movesBor(task.body))) {
    context.report('row-too-short', task.span, { expected: work.taken + left, found: work.taken });
  }
  if (outcome === 'stopped' || !task.mayStopShort) {
    if (!movesBor(task.body)) workTimes(at, null, { count: work.room(), span: task.span });
  }
  if (work.room() === 0) work.pass(work.limit);
}

function finish(
  start: Tube,
  task: RowTask,
  done: { readonly work: RowWork; readonly startGap: number; readonly locks: Locks }
): { readonly row: Row; readonly tube: Tube } {
  const { work } = done;
  const { items, hand, steps } = work.finish();
  const { before } = work;
  const moved = withItems({ ...start, locks: new Map(done.locks) }, items, hand);
  const tube = task.shape === 'round' ? atBorWhenPassed(moved) : moved;
  const row: Row = {
    label: task.label,
    line: task.line,
    span: task.span,
    shape: task.shape,
    side: task.side,
    before,
    after: ringOf(tube),
    steps,
    repeats: work.repeats,
    run: task.shape === 'flat' ? task.run : { from: 0, to: before.stitches.length },
    unworked: unworked(task, work, done.startGap),
    start: wrap(done.startGap, before.stitches.length),
    end: handGap(tube),
    turned: work.turned
  };
  return { row, tube };
}

// At the end of a round the yarn hangs before the BOR; the next round begins behind it.
function atBorWhenPassed(tube: Tube): Tube {
  const isAtEnd = !tube.items.some((item, index) => index >= tube.hand && item.kind === 'stitch');
  return isAtEnd || tube.hand === 0 ? { ...tube, hand: borHand(tube.items) } : tube;
}

// Stitches of the run behind the start and ahead of the end, told in ring order.
function unworked(task: RowTask, work: RowWork, startGap: number): Row['unworked'] {
  if (task.shape === 'round') return { before: 0, after: 0 };
  const stitches = Math.max(work.tube.items.filter((item) => item.kind === 'stitch').length, 1);
  const ahead = work.room();
  if (task.side === 'RS') return { before: wrap(startGap - task.run.from, stitches), after: ahead };
  return { before: ahead, after: wrap(task.run.to - startGap, stitches) };
}

// At either end of the run the yarn may hang on the wrong side of the limit item.
function atRun(tube: Tube, task: RowTask): Tube {
  const stitches = countStitches(tube.items);
  const gap = handGap(tube);
  const end = task.side === 'RS' ? 'first' : 'last';
  const limit = tube.items.findIndex((item) => item.kind === 'limit' && item.end === end);
  const wanted = wrap(task.side === 'RS' ? task.run.from : task.run.to, stitches);
  if (gap !== wanted || limit < 0) return tube;
  return { ...tube, hand: task.side === 'RS' ? limit + 1 : limit };
}
