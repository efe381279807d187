/** Knits a pattern stitch by stitch in one size. */

import type { Fabric, Stage } from '../model/fabric.ts';
import type { Pattern } from '../model/pattern.ts';
import { Context, LimitReached } from './context.ts';
import { Knitter } from './knitter.ts';
import { schedule, type Scheduled } from './schedule.ts';
import { alongWith, knitAlong, knitStatement } from './statements.ts';

/**
 * Performs every row of every stage of a pattern.
 *
 * Mistakes in the text are collected in `diagnostics`, one for each, and knitting goes on from the most plausible state.
 * Time and memory grow with the number of stitches worked.
 *
 * @param size - Index of the size, 0 to the number of sizes - 1.
 * @param lineOf - Line of an offset of the text, from 1.
 * @throws RangeError if the size does not exist: a bug in the caller.
 */
export function knitPattern(pattern: Pattern, size: number, lineOf: (offset: number) => number): Fabric {
  const name = pattern.sizes[size];
  if (name === undefined) throw new RangeError(`knitPattern() knows ${pattern.sizes.length} sizes, got size ${size}`);
  const context = new Context(size);
  const stages = pattern.stages.length > 0 ? knitStages(pattern, context, lineOf) : [];
  if (stages.every((stage) => stage.start.stitches.length === 0) && context.diagnostics.length === 0) {
    context.where = pattern.title || 'The text';
    context.report('no-cast-on', { from: 0, to: 0 });
  }
  return {
    title: pattern.title,
    size: name,
    sizeIndex: size,
    sizes: pattern.sizes,
    gauge: pattern.gauge,
    needles: pattern.needles,
    stages,
    diagnostics: context.diagnostics
  };
}

// What is told to happen at the same time goes along with the rows before it.
function knitAll(knitter: Knitter, statements: readonly Scheduled[]): void {
  for (let index = 0; index < statements.length; index += 1) {
    const scheduled = statements[index]!;
    const along = alongWith(scheduled, statements[index + 1]);
    if (along) {
      knitAlong(knitter, scheduled, along);
      index += 1;
    } else knitStatement(knitter, scheduled);
  }
}

function knitStages(pattern: Pattern, context: Context, lineOf: (offset: number) => number): Stage[] {
  const knitter = new Knitter(context, pattern, lineOf);
  const stages: Stage[] = [];
  try {
    pattern.stages.forEach((text, index) => {
      knitter.begin(text, pattern.stages[index + 1] ?? null);
      knitAll(knitter, schedule(text.statements, context.size));
      stages.push(knitter.finish());
    });
  } catch (error) {
    if (!(error instanceof LimitReached)) throw error;
    stages.push(knitter.finish());
  }
  return stages;
}
