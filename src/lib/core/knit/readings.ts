/** Knits a row whose "7 times" after an asterisk can be read in two ways: 7 in all, or 7 more than the first time. */

import type { Diagnostic } from '../model/diagnostic.ts';
import type { Instruction } from '../model/pattern.ts';
import { everySize, forSize, type Sized } from '../model/sized.ts';
import type { Context } from './context.ts';
import { knitRow, type KnittedRow, type RowTask } from './knit-row.ts';
import type { Tube } from './tube.ts';

interface Reading {
  readonly knitted: KnittedRow;
  readonly mistakes: readonly Diagnostic[];
}

/**
 * Knits the row both ways when it has such a repeat, else once. Of the readings without a mistake the one that comes to
 * the printed total is taken; where both come out and none is printed, the text is told to be ambiguous.
 *
 * @param total - Stitches printed after the row; `null` when none are.
 */
export function knitReadings(
  tube: Tube,
  task: RowTask,
  on: { readonly context: Context; readonly total: number | null }
): KnittedRow {
  const times = unclearTimes(task.body);
  if (times === null) return knitPlainly(tube, task, on.context);
  const readings = ([0, 1] as const).map((extraTimes) => read(tube, { ...task, extraTimes }, on.context));
  const clean = readings.filter((reading) => reading.mistakes.length === 0);
  const printed = clean.find(({ knitted }) => knitted.row.after.stitches.length === on.total);
  if (clean.length === 2 && on.total === null) {
    const found = forSize(times, on.context.size) ?? 0;
    on.context.report('ambiguous-repeats', task.span, { found, expected: found + 1 });
  }
  const taken = printed ?? clean[0] ?? readings[0]!;
  on.context.diagnostics.push(...taken.mistakes);
  return taken.knitted;
}

// After binding off one stitch stays on the right needle: "BO 6, k23" may count it or not.
function knitPlainly(tube: Tube, task: RowTask, context: Context): KnittedRow {
  const counting = withStitchAfterBindOff(task.body);
  if (!counting) return knitRow(tube, task, context);
  const readings = [task.body, counting].map((body) => read(tube, { ...task, body }, context));
  const taken = readings.find(({ mistakes }) => mistakes.length === 0) ?? readings[0]!;
  context.diagnostics.push(...taken.mistakes);
  return taken.knitted;
}

function withStitchAfterBindOff(body: readonly Instruction[]): Instruction[] | null {
  const isOpen = (part: Instruction, index: number) =>
    part.kind === 'bind-off' && part.count !== null && body[index + 1]?.kind === 'work';
  if (!body.some(isOpen)) return null;
  return body.flatMap((part, index) =>
    isOpen(part, index) ? [part, { kind: 'work-as-set', count: everySize(1), span: part.span }] : [part]
  );
}

function read(tube: Tube, task: RowTask, context: Context): Reading {
  const before = context.diagnostics.length;
  const knitted = knitRow(tube, task, context);
  return { knitted, mistakes: context.diagnostics.splice(before) };
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
