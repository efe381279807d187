/** The ways in which the wording of a row can be read. */

import type { Instruction } from '../model/pattern.ts';
import { everySize, forSize, type Sized } from '../model/sized.ts';
import { countStitches } from './items.ts';
import type { RowTask } from './knit-row.ts';
import { takesOf } from './takes.ts';
import type { Tube } from './tube.ts';

/**
 * One way of reading a row. `times`: so many times in all, or one more; `implied`: repeated to the end though no word says so;
 * `plain`: as it stands. `told`: the number that the way of reading is about.
 */
export interface Variant {
  readonly kind: 'plain' | 'times' | 'implied';
  readonly task: RowTask & { readonly stitches?: number };
  readonly told: number;
}

/** Most stitches by which the ends of a range may differ ("16-18 sts"). */
const MOST_RANGE = 12;

/** Every way of reading a row, the likeliest first; one way for nearly all rows. */
export function variantsOf(tube: Tube, task: RowTask, size: number): Variant[] {
  const times = unclearTimes(task.body);
  if (times) {
    const told = forSize(times, size) ?? 0;
    return ([0, 1] as const).map((extraTimes) => ({ kind: 'times', task: { ...task, extraTimes }, told }));
  }
  const bodies = ranged(task.body) ?? withStitchAfterBindOff(task.body);
  const plain = (bodies ?? [task.body]).map((body): Variant => ({ kind: 'plain', task: { ...task, body }, told: 0 }));
  const implied = impliedRepeat(tube, task, size);
  return implied ? [...plain, implied] : plain;
}

// How often the first such repeat of a row is told to be worked; null when there is none.
function unclearTimes(body: readonly Instruction[]): Sized<number> | null {
  for (const part of body) {
    if (part.kind !== 'group') continue;
    const times = part.extent.kind === 'unclear-times' ? part.extent.count : unclearTimes(part.body);
    if (times) return times;
  }
  return null;
}

// After binding off one stitch stays on the right needle: "BO 6, k23" may count it or not.
function withStitchAfterBindOff(body: readonly Instruction[]): (readonly Instruction[])[] | null {
  const isOpen = (part: Instruction, index: number) =>
    part.kind === 'bind-off' && part.count !== null && body[index + 1]?.kind === 'work';
  if (!body.some(isOpen)) return null;
  const counting = body.flatMap((part, index): Instruction[] =>
    isOpen(part, index) ? [part, { kind: 'work-as-set', count: everySize(1), span: part.span }] : [part]
  );
  return [body, counting];
}

// "pick up 16-18 sts": every number of the range, the smallest first.
function ranged(body: readonly Instruction[]): (readonly Instruction[])[] | null {
  const most = Math.max(0, ...body.map((part) => (part.kind === 'pick-up' ? part.atMost - (part.count[0] ?? 0) : 0)));
  if (most === 0 || most > MOST_RANGE) return null;
  return Array.from({ length: most + 1 }, (_, more) => body.map((part) => withMore(part, more)));
}

function withMore(part: Instruction, more: number): Instruction {
  if (part.kind !== 'pick-up' || part.atMost === 0) return part;
  return { ...part, count: part.count.map((entry) => (entry === null ? null : Math.min(entry + more, part.atMost))) };
}

// "K6, k2tog." over 64 stitches: a unit that was printed once, its repeat understood.
function impliedRepeat(tube: Tube, task: RowTask, size: number): Variant | null {
  const takes = task.mayStopShort || task.body.length < 2 ? null : takesOf(task.body, size);
  const stitches = task.shape === 'flat' ? task.run.to - task.run.from : countStitches(tube.items);
  const [first] = task.body;
  if (!takes || !first || stitches % takes !== 0 || stitches === takes) return null;
  if (task.body.some((part) => part.kind !== 'work' && part.kind !== 'into-one' && part.kind !== 'group')) return null;
  const body: Instruction[] = [
    { kind: 'group', body: task.body, extent: { kind: 'to', target: { kind: 'end' } }, span: first.span }
  ];
  return { kind: 'implied', task: { ...task, body, stitches }, told: takes };
}
