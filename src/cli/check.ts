/** `roundsplit check`: every size on every set-up, one line for each finding. */

import { planJson, planWorkpiece, SETUP_IDS, type CheckJson, type PlanJson, type Workpiece } from '$lib/core/index.ts';
import type { Io } from './io.ts';
import { openPattern, patternCode, setupsNamed, sizesNamed } from './usage.ts';

/** Options of the command, as commander reads them. */
export interface CheckOptions {
  readonly on: readonly string[];
  readonly size: readonly string[];
  readonly all: boolean;
}

/** Prints mistakes in the pattern, then findings about the needles. Exit code 1 on errors and blockers. */
export function checkCommand(file: string, options: CheckOptions, io: Io): number {
  const workpiece = openPattern(file, io);
  const setups = setupsNamed(options.on, SETUP_IDS);
  const sizes = sizesNamed(options.size, workpiece, 'all');
  const plans = sizes.flatMap((size) =>
    setups.map((setup) => planJson(workpiece, planWorkpiece(workpiece, { setup, size })))
  );
  const findings = plans.flatMap((plan) => findingsOf(plan, options.all));
  const lines = [...mistakes(workpiece, plans[0]), ...findings.map((finding) => finding.line)];
  io.out(lines.length > 0 ? `${lines.join('\n')}\n` : 'Nothing found.\n');
  return findings.some((finding) => finding.severity === 'blocker') ? 1 : patternCode(workpiece);
}

function mistakes(workpiece: Workpiece, plan: PlanJson | undefined): string[] {
  return (plan?.diagnostics ?? []).map((found) => {
    const sizes = found.sizes.length > 0 && workpiece.fabrics.length > 1 ? ` (size ${found.sizes.join(', ')})` : '';
    const remedy = found.remedy ? ` ${found.remedy}` : '';
    return `line ${found.line}:${found.column} ${found.severity} ${found.code}${sizes}: ${found.message}${remedy}`;
  });
}

function findingsOf(plan: PlanJson, all: boolean): { readonly severity: string; readonly line: string }[] {
  return plan.stages.flatMap((stage) =>
    stage.checks
      .filter((check) => all || check.severity !== 'note')
      .map((check) => ({ severity: check.severity, line: findingLine(plan, check) }))
  );
}

function findingLine(plan: PlanJson, check: CheckJson): string {
  const size = plan.size === '' ? '' : `size ${plan.size}, `;
  const fix = check.fix ? ` Better: ${check.fix.loads.join('/')}.` : '';
  return `${size}${plan.setup.id}, ${check.stage}: ${check.severity} ${check.code}: ${check.message}${fix}`;
}
