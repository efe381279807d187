/** Performs the instructions of one row on the stitches ahead. */

import type { Extent, Instruction, Target } from '../model/pattern.ts';
import type { NeedleRef } from '../model/needle-words.ts';
import { forSize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import { bindOff, castOnHere, hold, pickUp } from './edges.ts';
import { performMarker, performLock, removeMarkers } from './markers.ts';
import { arrangeInRow, needleTasks, stretchOf, takeNeedle } from './over-needles.ts';
import type { RowWork } from './row-work.ts';
import { performShape } from './shaping.ts';
import { sectionAhead } from './targets.ts';
import { takesOf } from './takes.ts';
import { distance, intoOne, performEvenly, workTimes, workTo, type Outcome, type Performance } from './work.ts';

/** Performs instructions in order; stops at a turn and at the first mistake, which is reported. */
export function performAll(at: Performance, body: readonly Instruction[]): Outcome {
  for (let index = 0; index < body.length; index += 1) {
    goOnBeyondBor(at);
    const together = body.slice(index).findIndex((part) => part.kind !== 'over-needles');
    const needles = together < 0 ? body.length - index : together;
    const outcome =
      needles > 1 ? performNeedles(at, body.slice(index, index + needles) as OverNeedles[]) : perform(at, body[index]!);
    if (needles > 1) index += needles - 1;
    if (outcome !== 'worked') return outcome;
  }
  return 'worked';
}

// A partial round that has passed the BOR may go on to where it began.
function goOnBeyondBor({ work, mayPassBor }: Performance): void {
  if (mayPassBor && work.next > work.limit) work.limit = work.ahead.length;
}

type OverNeedles = Extract<Instruction, { kind: 'over-needles' }>;

// "1st and 3rd needles: … 2nd and 4th needles: …" are worked in the order of the needles.
function performNeedles(at: Performance, told: readonly OverNeedles[]): Outcome {
  const fresh = told.length === 1 ? newNeedle(at, told[0]!) : null;
  if (fresh) return performOnNew(at, fresh);
  const tasks = needleTasks(at, told);
  if (tasks.length === 0) return 'stopped';
  for (const { needle, body, span } of tasks) {
    const stretch = stretchOf(at.work, needle);
    if (!stretch) continue;
    workTimes(at, null, { count: at.work.room(stretch.from), span });
    at.work.home = needle;
    const outcome = within(at, { body, span }, stretchOf(at.work, needle)!.to);
    at.work.home = null;
    at.work.receiving = null;
    if (outcome !== 'worked') return outcome;
  }
  return 'worked';
}

interface NewNeedle {
  readonly ref: NeedleRef;
  readonly body: readonly Instruction[];
  readonly span: Span;
}

// "Needle 3: with an empty needle pick up …": the name of a needle that takes stitches here for the first time.
function newNeedle(at: Performance, { needles, body, span }: OverNeedles): NewNeedle | null {
  const [ref] = needles === 'each' ? [] : needles;
  if (!ref) return null;
  if (body.some((part) => part.kind === 'take-needle' && part.needle?.kind === 'empty')) return { ref, body, span };
  const isKnown = at.context.needles.find(ref) !== null && at.work.holds(at.context.needles.find(ref));
  if (isKnown || !at.mayPassBor) return null;
  return { ref, body: [{ kind: 'take-needle', needle: { kind: 'empty', name: null }, span }, ...body], span };
}

function performOnNew(at: Performance, told: NewNeedle): Outcome {
  const outcome = performAll(at, told.body);
  const name = told.ref.kind === 'named' ? told.ref.name : null;
  if (name !== null) arrangeInRow(at, { kind: 'name-needle', needle: { kind: 'same' }, name, span: told.span });
  at.work.receiving = null;
  return outcome;
}

function perform(at: Performance, instruction: Instruction): Outcome {
  const { size } = at.context;
  switch (instruction.kind) {
    case 'work':
      return workTimes(at, instruction.operation, {
        count: forSize(instruction.count, size) ?? 0,
        span: instruction.span
      });
    case 'work-to':
      return workTo(at, instruction);
    case 'work-as-set':
      return workTimes(at, null, { count: forSize(instruction.count, size) ?? 0, span: instruction.span });
    case 'group':
      return performGroup(at, instruction);
    case 'into-one':
      return workTimes(at, intoOne(instruction), { count: 1, span: instruction.span });
    case 'over':
      return performOver(at, instruction);
    case 'over-target':
      return performOverTarget(at, instruction);
    case 'over-needles':
      return performNeedles(at, [instruction]);
    case 'turn':
      return turn(at, instruction.mark);
    default:
      return performHanging(at, instruction);
  }
}

type Hanging = Exclude<
  Instruction,
  {
    kind: 'work' | 'work-to' | 'work-as-set' | 'group' | 'into-one' | 'over' | 'over-target' | 'over-needles' | 'turn';
  }
>;

function performHanging(at: Performance, instruction: Hanging): Outcome {
  switch (instruction.kind) {
    case 'marker':
      return performMarker(at, instruction);
    case 'remove-markers':
      return removeMarkers(at);
    case 'locking-marker':
      return performLock(at, instruction);
    case 'pick-up':
      return pickUp(at, instruction);
    case 'cast-on-here':
      return castOnHere(at, instruction);
    case 'bind-off':
      return bindOff(at, instruction);
    case 'hold':
      return hold(at, instruction);
    case 'take-needle':
      takeNeedle(at, instruction.needle);
      return 'worked';
    case 'evenly':
      return performEvenly(at, instruction);
    case 'shape':
      return performShape(at, instruction);
    case 'waste-yarn':
      return 'worked'; // the stitches go back and are worked again by what follows
    default:
      arrangeInRow(at, instruction);
      return 'worked';
  }
}

function performGroup(at: Performance, group: Extract<Instruction, { kind: 'group' }>): Outcome {
  const from = at.work.gap();
  const before = at.work.taken;
  const { extent } = group;
  const outcome = extent.kind === 'to' ? repeatTo(at, group, extent.target) : repeatTimes(at, group, extent);
  noteRepeat(at, group, { from, taken: at.work.taken - before });
  return outcome;
}

function repeatTimes(
  at: Performance,
  group: Extract<Instruction, { kind: 'group' }>,
  extent: Exclude<Extent, { kind: 'to' }>
): Outcome {
  const count = forSize(extent.count, at.context.size) ?? 0;
  const times = extent.kind === 'unclear-times' ? count + at.extraTimes : count;
  for (let time = 0; time < times; time += 1) {
    const outcome = performAll(at, group.body);
    if (outcome !== 'worked') return outcome;
  }
  return 'worked';
}

function repeatTo(at: Performance, group: Extract<Instruction, { kind: 'group' }>, target: Target): Outcome {
  const total = distance(at, target, group.span);
  if (total === null) return 'stopped';
  const unit = takesOf(group.body, at.context.size);
  if (unit === null) return repeatWhileAhead(at, group, total);
  if (unit === 0) return 'worked';
  const times = Math.floor(total / unit);
  for (let time = 0; time < times; time += 1) {
    const outcome = performAll(at, group.body);
    if (outcome !== 'worked') return outcome;
  }
  if (total % unit === 0) return 'worked';
  at.context.report('repeat-does-not-fit', group.span, { expected: unit, found: total });
  workTimes(at, null, { count: total % unit, span: group.span });
  return 'worked';
}

// The body goes up to markers itself, so that its length is only known by working it.
function repeatWhileAhead(at: Performance, group: Extract<Instruction, { kind: 'group' }>, total: number): Outcome {
  const goal = at.work.taken + total;
  while (at.work.taken < goal) {
    const before = at.work.taken;
    const outcome = performAll(at, group.body);
    if (outcome !== 'worked') return outcome;
    if (at.work.taken === before) return 'worked';
  }
  return 'worked';
}

function noteRepeat(
  at: Performance,
  group: Extract<Instruction, { kind: 'group' }>,
  done: { readonly from: number; readonly taken: number }
): void {
  const unit = takesOf(group.body, at.context.size);
  if (!unit || done.taken < unit) return;
  const from = at.work.side === 'RS' ? done.from : done.from - done.taken;
  at.work.repeats.push({ from, to: from + done.taken, unit });
}

// "Instep: …" works over one section; what lies before it is worked as it presents itself.
function performOver(at: Performance, instruction: Extract<Instruction, { kind: 'over' }>): Outcome {
  const { work, context } = at;
  const section = sectionAhead(work, instruction.section);
  if (!section) {
    context.report('section-missing', instruction.span, { about: instruction.section });
    return 'stopped';
  }
  workTimes(at, null, { count: work.room(section.from), span: instruction.span });
  return within(at, instruction, section.to);
}

// "Work the next 15 sts: …"
function performOverTarget(at: Performance, instruction: Extract<Instruction, { kind: 'over-target' }>): Outcome {
  const { work } = at;
  const count = distance(at, instruction.target, instruction.span);
  if (count === null) return 'stopped';
  let to = work.next;
  for (let left = count; to < work.ahead.length && left > 0; to += 1) if (work.ahead[to]!.kind === 'stitch') left -= 1;
  return within(at, instruction, to);
}

function within(
  at: Performance,
  instruction: { readonly body: readonly Instruction[]; readonly span: Span },
  to: number
): Outcome {
  const { work, context } = at;
  const outer = work.ahead.length - work.limit;
  work.limit = to;
  const outcome = performAll(at, instruction.body);
  const left = work.room();
  if (outcome === 'worked' && left > 0) {
    context.report('row-too-short', instruction.span, { expected: work.taken + left, found: work.taken });
    workTimes(at, null, { count: left, span: instruction.span });
  }
  work.limit = work.ahead.length - outer;
  return outcome;
}

function turn(at: Performance, mark: 'none' | 'wrap' | 'double'): Outcome {
  const { work } = at;
  if (mark === 'wrap') wrapNext(work);
  work.turned = true;
  if (work.room() > 0) work.leaveGap();
  return 'turned';
}

// The wrapped stitch stays on the left needle, with the yarn laid round it.
function wrapNext(work: RowWork): void {
  const index = work.find((item) => item.kind === 'stitch');
  const item = work.ahead[index];
  if (item?.kind === 'stitch') work.ahead[index] = { ...item, stitch: { ...item.stitch, loop: 'wrapped' } };
}
