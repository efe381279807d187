/** Works over told needles: "N1: …", "1st and 3rd needles: …", and lets a needle take the stitches. */

import type { Arrangement, NeedleRef, NeedleRefs } from '../model/needle-words.ts';
import type { Instruction } from '../model/pattern.ts';
import type { Span } from '../model/span.ts';
import { arrange, missing, type Bench } from './arrange.ts';
import { sectionAt } from '../model/ring.ts';
import type { Item, NeedleId, StitchItem } from './items.ts';
import { placeBor } from './markers.ts';
import { stitchesAmong } from './needles.ts';
import type { Context } from './context.ts';
import type { Performance } from './work.ts';
import type { RowWork } from './row-work.ts';

type OverNeedles = Extract<Instruction, { kind: 'over-needles' }>;

/** One stretch to be worked: a needle and what is told for it. */
export interface NeedleTask {
  readonly needle: NeedleId;
  readonly body: readonly Instruction[];
  readonly span: Span;
}

/** Puts what is told for single needles in the order in which the hands come to them. */
export function needleTasks(at: Performance, told: readonly OverNeedles[]): readonly NeedleTask[] {
  if (at.mayPassBor) lookBeyondBor(at.work, told);
  const order = needlesAhead(at.work);
  const tasks = told.flatMap(({ needles, body, span }) =>
    refsOf(needles, order).flatMap((ref): NeedleTask[] => {
      const needle = typeof ref === 'number' ? ref : findNeedle(at.work, at.context, ref);
      if (needle !== null && order.includes(needle)) return [{ needle, body, span }];
      if (typeof ref !== 'number') missing(at, ref, span);
      return [];
    })
  );
  return tasks.sort((left, right) => order.indexOf(left.needle) - order.indexOf(right.needle));
}

// A partial round may go on over needles behind the BOR.
function lookBeyondBor(work: RowWork, told: readonly OverNeedles[]): void {
  if (work.next >= work.limit || told.some(({ needles }) => needles !== 'each')) work.limit = work.ahead.length;
}

function refsOf(needles: NeedleRefs, order: readonly NeedleId[]): readonly (NeedleRef | NeedleId)[] {
  return needles === 'each' ? order : needles;
}

function needlesAhead(work: RowWork): NeedleId[] {
  const order: NeedleId[] = [];
  for (let index = work.next; index < work.limit; index += 1) {
    const item = work.ahead[index]!;
    if (item.kind === 'stitch' && item.needle !== null && !order.includes(item.needle)) order.push(item.needle);
  }
  return order;
}

/** Where the stitches of a needle lie ahead: index of the first, and the index after the last; `null` when there are none. */
export function stretchOf(work: RowWork, needle: NeedleId): { readonly from: number; readonly to: number } | null {
  const from = work.find((item) => item.kind === 'stitch' && item.needle === needle);
  if (from < 0) return null;
  let to = from;
  for (let index = from; index < work.limit; index += 1) {
    const item = work.ahead[index]!;
    if (item.kind !== 'stitch') continue;
    if (item.needle !== needle) break;
    to = index + 1;
  }
  return { from, to };
}

/** From here on a needle takes the stitches; `null`: they stay where they are. */
export function takeNeedle(at: Performance, ref: NeedleRef | null): void {
  const { work, context } = at;
  noteLast(at);
  if (ref === null) {
    work.receiving = null;
    return;
  }
  const needle = ref.kind === 'same' ? sameNeedle(at) : receiver(at, ref);
  work.receiving = needle;
  if (needle !== null) context.needles.marked = needle;
}

// A needle takes stitches behind those it holds. One of that name that lies elsewhere is not meant: the numbers are told
// anew, and this one was empty.
function receiver({ work, context }: Performance, ref: NeedleRef): NeedleId | null {
  const needle = findNeedle(work, context, ref);
  if (ref.kind !== 'named') return needle;
  const isStitch = (item: Item): item is StitchItem => item.kind === 'stitch';
  const behind = work.done.findLast(isStitch) ?? work.ahead.findLast(isStitch);
  return needle !== null && behind?.needle === needle ? needle : context.needles.fresh(ref.name);
}

/** The told needle that is meant; "the heel needle" may be the one that was worked flat last, whatever it is called. */
function findNeedle(work: RowWork, context: Context, ref: NeedleRef): NeedleId | null {
  const needle = context.needles.find(ref);
  if (ref.kind !== 'named' || !/^(?:heel|flap)$/u.test(ref.name)) return needle;
  if (needle !== null && work.holds(needle)) return needle;
  const flat = [...work.done, ...work.ahead].find(
    (item) => item.kind === 'stitch' && context.flatRun.has(item.stitch.id)
  );
  if (flat?.kind !== 'stitch' || flat.needle === null) return needle;
  context.needles.call(flat.needle, ref.name);
  return flat.needle;
}

// "The same needle" is the one that took the last stitch, in this row or the one before.
function noteLast({ work, context }: Performance): void {
  if (work.last !== null) context.needles.last = work.last;
}

// After a turn in the middle of a needle the stitches just worked are on the needle that took them, which the text may not
// have named: it is "the same needle" now.
function sameNeedle({ work, context }: Performance): NeedleId | null {
  const { last } = context.needles;
  if (last === null || work.done.some((item) => item.kind === 'stitch')) return last;
  const just = work.ahead.slice(work.next).filter((item): item is StitchItem => item.kind === 'stitch');
  const worked = just.filter((item) => item.needle === last && context.lastRow.has(item.stitch.id));
  const onIt = stitchesAmong(work.ahead).filter((item) => item.needle === last);
  if (worked.length === 0 || worked.length === onIt.length) return last;
  const needle = context.needles.fresh(null);
  work.put(new Set(worked), needle);
  return needle;
}

/** Performs an arrangement in the middle of a row. */
export function arrangeInRow(at: Performance, action: Arrangement): void {
  noteLast(at);
  if (action.kind === 'work-flat') return;
  arrange(rowBench(at), action);
}

function rowBench({ work, context }: Performance): Bench {
  const rest = () => stitchesAmong(work.ahead.slice(work.next));
  const done = () => stitchesAmong(work.done);
  const isForward = work.side === 'RS';
  return {
    context,
    stitches: () => (isForward ? [...done(), ...rest()] : [...rest().reverse(), ...done().reverse()]),
    hand: () => (isForward ? done().length : rest().length),
    sectionOf: ({ at }) => (at < 0 ? null : sectionAt(work.before, at)),
    put: (stitches, needle) => work.put(stitches, needle),
    justWorked: ({ at: place }) => place < 0,
    inRun: null,
    moveYarn: () => {},
    moveBor: () => placeBor(work, { marker: false })
  };
}
