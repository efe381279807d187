/** Knits a row whose wording can be read in several ways, and takes the reading that comes out. */

import type { Diagnostic } from '../model/diagnostic.ts';
import type { Context } from './context.ts';
import { knitRow, type KnittedRow, type RowTask } from './knit-row.ts';
import type { Tube } from './tube.ts';
import { variantsOf, type Variant } from './variants.ts';

interface Reading {
  readonly variant: Variant;
  readonly knitted: KnittedRow;
  readonly mistakes: readonly Diagnostic[];
}

/**
 * Knits the row in every way it can be read. Of the readings without a mistake the one that comes to the printed total is
 * taken, else the first; where that was a choice, the text is told of it.
 *
 * @param total - Stitches printed after the row; `null` when none are.
 */
export function knitReadings(
  tube: Tube,
  task: RowTask,
  on: { readonly context: Context; readonly total: number | null }
): KnittedRow {
  const variants = variantsOf(tube, task, on.context.size);
  if (variants.length === 1) return knitRow(tube, variants[0]!.task, on.context);
  const readings = variants.map((variant) => read(tube, variant, on.context));
  const clean = readings.filter(({ mistakes }) => mistakes.length === 0);
  const printed = clean.find(({ knitted }) => knitted.row.after.stitches.length === on.total);
  const taken = printed ?? clean.find(({ variant }) => mayBeTaken(variant, on.total)) ?? readings[0]!;
  on.context.diagnostics.push(...taken.mistakes);
  if (taken.mistakes.length === 0)
    tell(taken.variant, { ...on, choice: clean.length > 1, isPrinted: taken === printed });
  return taken.knitted;
}

// Against a printed count a repeat that nobody wrote is not to be assumed.
function mayBeTaken({ kind }: Variant, total: number | null): boolean {
  return kind !== 'implied' || total === null;
}

function read(tube: Tube, variant: Variant, context: Context): Reading {
  const before = context.diagnostics.length;
  const knitted = knitRow(tube, variant.task, context);
  return { variant, knitted, mistakes: context.diagnostics.splice(before) };
}

function tell(
  { task, told, kind }: Variant,
  on: { readonly context: Context; readonly choice: boolean; readonly isPrinted: boolean }
): void {
  const { context } = on;
  if (kind === 'times') {
    if (on.choice && !on.isPrinted) context.report('ambiguous-repeats', task.span, { found: told, expected: told + 1 });
    else context.report('repeats-decided', task.span, { about: String(told), found: told + task.extraTimes });
  }
  if (kind === 'implied') {
    const code = on.isPrinted ? 'implied-repeat-decided' : 'implied-repeat';
    context.report(code, task.span, { found: told, expected: task.stitches ?? 0 });
  }
}
