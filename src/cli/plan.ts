/** `roundsplit plan`: which stitches sit on which needle, stage by stage. */

import { planCsv, planJson, planMarkdown, planText, planWorkpiece, type PlanJson } from '$lib/core/index.ts';
import type { Io } from './io.ts';
import { openPattern, patternCode, setupsNamed, sizesNamed } from './usage.ts';

/** Options of the command, as commander reads them. */
export interface PlanOptions {
  readonly on: readonly string[];
  readonly size: readonly string[];
  readonly format: 'text' | 'json' | 'markdown' | 'csv';
}

/** Prints the plans asked for. Exit code 1 when the pattern has errors. */
export function planCommand(file: string, options: PlanOptions, io: Io): number {
  const workpiece = openPattern(file, io);
  const setups = setupsNamed(options.on, ['dpn-5']);
  const sizes = sizesNamed(options.size, workpiece, 'first');
  const plans = sizes.flatMap((size) =>
    setups.map((setup) => planJson(workpiece, planWorkpiece(workpiece, { setup, size })))
  );
  io.out(PRINTERS[options.format](plans));
  return patternCode(workpiece);
}

const PRINTERS: Readonly<Record<PlanOptions['format'], (plans: readonly PlanJson[]) => string>> = {
  text: (plans) => plans.map(planText).join('\n'),
  markdown: (plans) => plans.map(planMarkdown).join('\n'),
  csv: planCsv,
  json: (plans) => `${JSON.stringify(plans.length === 1 ? plans[0] : plans, null, 2)}\n`
};
