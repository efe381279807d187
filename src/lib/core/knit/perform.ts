/** Performs the instructions of one row on the stitches ahead. */

import type { Extent, Instruction, Target } from '../model/pattern.ts';
import type { Operation } from '../model/operation.ts';
import { forSize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import { standard, type Context } from './context.ts';
import { performMarker, performLock } from './markers.ts';
import { bindOff, castOnHere, hold, pickUp } from './edges.ts';
import type { RowWork } from './row-work.ts';
import { performShape } from './shaping.ts';
import { reach, sectionAhead } from './targets.ts';
import { takesOf } from './takes.ts';

/** How a row of instructions ended. `stopped`: a mistake was reported and the rest of the row was given up. */
export type Outcome = 'worked' | 'turned' | 'stopped';

/** One row being performed. */
export interface Performance {
  readonly work: RowWork;
  readonly context: Context;
  /** Whether the row may work on past the BOR: it moves the BOR, or does not begin there. */
  readonly mayPassBor: boolean;
  /** For "7 times" after an asterisk: how many times are added to the number. */
  readonly extraTimes: 0 | 1;
}

/** Performs instructions in order; stops at a turn and at the first mistake, which is reported. */
export function performAll(at: Performance, body: readonly Instruction[]): Outcome {
  for (const instruction of body) {
    const outcome = perform(at, instruction);
    if (outcome !== 'worked') return outcome;
  }
  return 'worked';
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
    case 'evenly':
      return performEvenly(at, instruction);
    case 'shape':
      return performShape(at, instruction);
    case 'over':
      return performOver(at, instruction);
    case 'turn':
      return turn(at, instruction.mark);
    default:
      return performHanging(at, instruction);
  }
}

type Hanging = Exclude<
  Instruction,
  { kind: 'work' | 'work-to' | 'work-as-set' | 'group' | 'into-one' | 'evenly' | 'shape' | 'over' | 'turn' }
>;

function performHanging(at: Performance, instruction: Hanging): Outcome {
  switch (instruction.kind) {
    case 'marker':
      return performMarker(at, instruction);
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
    case 'waste-yarn':
      return 'worked'; // the stitches go back and are worked again by what follows
  }
}

/** Works an operation (or the stitches as they present themselves, `null`) so many times. */
export function workTimes(
  at: Performance,
  operation: Operation | null,
  what: { readonly count: number; readonly span: Span }
): Outcome {
  const takes = operation?.takes ?? 1;
  for (let times = 0; times < what.count; times += 1) {
    if (!enough(at, takes)) return tooLong(at, takes * (what.count - times), what.span);
    at.context.countStep();
    at.work.perform(operation ?? asPresented(at.work), what.span);
  }
  return 'worked';
}

function enough(at: Performance, takes: number): boolean {
  if (takes === 0) return true;
  const { work } = at;
  return work.room() >= takes || (at.mayPassBor && work.room(work.ahead.length) >= takes);
}

function tooLong(at: Performance, needs: number, span: Span): Outcome {
  const { work } = at;
  const total = work.taken + work.room();
  at.context.report('row-too-long', span, { expected: work.taken + needs, found: total });
  return 'stopped';
}

/** Knit or purl, so that the next stitch goes on showing the face it shows. */
function asPresented(work: RowWork): Operation {
  const shows = work.peek()?.face ?? 'knit';
  return standard((shows === 'knit') === (work.side === 'RS') ? 'k' : 'p');
}

function workTo(at: Performance, instruction: Extract<Instruction, { kind: 'work-to' }>): Outcome {
  const count = distance(at, instruction.target, instruction.span);
  if (count === null) return 'stopped';
  const takes = Math.max(instruction.operation?.takes ?? 1, 1);
  return workTimes(at, instruction.operation, { count: Math.floor(count / takes), span: instruction.span });
}

function distance(at: Performance, target: Target, span: Span): number | null {
  const found = reach(at.work, target, at.context.size);
  if (found.kind === 'stitches') return found.count;
  at.context.report(`${found.what}-missing`, span, { about: found.name });
  return null;
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

function intoOne(instruction: Extract<Instruction, { kind: 'into-one' }>): Operation {
  const operations = instruction.body.flatMap((part) =>
    part.kind === 'work' ? new Array<Operation>(forSize(part.count, 0) ?? 1).fill(part.operation) : []
  );
  const faces = operations.flatMap((operation) => operation.faces);
  const name = `(${operations.map((operation) => `${operation.name}${operation.takes === 1 ? '1' : ''}`).join(', ')}) in 1`;
  return {
    name,
    words: `${operations.map((operation) => operation.words).join(', ')}, all in the next stitch`,
    family: 'increase',
    takes: 1,
    makes: faces.length,
    faces,
    leans: 'none',
    crosses: false
  };
}

function performEvenly(at: Performance, instruction: Extract<Instruction, { kind: 'evenly' }>): Outcome {
  const { operation, span } = instruction;
  const count = forSize(instruction.count, at.context.size) ?? 0;
  const plain = at.work.room() - count * operation.takes;
  if (plain < 0) return tooLong(at, count * operation.takes, span);
  for (let place = 0; place < count; place += 1) {
    const stretch = Math.floor(((place + 1) * plain) / count) - Math.floor((place * plain) / count);
    workTimes(at, null, { count: stretch, span });
    workTimes(at, operation, { count: 1, span });
  }
  return 'worked';
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

function within(at: Performance, instruction: Extract<Instruction, { kind: 'over' }>, to: number): Outcome {
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
