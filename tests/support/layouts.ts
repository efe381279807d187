/** Asks for layouts by the loads of their needles. */

import type { Stage } from '$lib/core/model/fabric.ts';
import type { Reason, ReasonCode } from '$lib/core/model/judgement.ts';
import { layoutFromLoads } from '$lib/core/model/layout.ts';
import type { Distribution, Judged } from '$lib/core/model/plan.ts';
import { DEFAULT_SETTINGS, type Settings } from '$lib/core/model/settings.ts';
import { SETUPS, type SetupId } from '$lib/core/model/setup.ts';
import { distribute } from '$lib/core/solve/distribute.ts';
import { judgeLayout } from '$lib/core/solve/judge.ts';
import { stageOf, type StageNotation } from './stages.ts';

/** The answer where there is one. */
export function solved(stage: Stage, setup: SetupId): Extract<Distribution, { kind: 'solved' }> {
  const found = distribute(stage, SETUPS[setup], DEFAULT_SETTINGS);
  if (found.kind !== 'solved') throw new Error(`impossible: ${found.because.code}`);
  return found;
}

/** The best layout. */
export function best(stage: Stage, setup: SetupId): Judged {
  return solved(stage, setup).best[0]!;
}

/** A layout told by its loads, judged. */
export function stated(stage: Stage, setup: SetupId, on: { loads: readonly number[]; first?: number }): Judged {
  const layout = layoutFromLoads(on.loads, on.first ?? 0);
  return judgeLayout(stage, layout, { setup: SETUPS[setup], settings: DEFAULT_SETTINGS });
}

/** Loads, the bigger first. */
export const bySize = (loads: readonly number[]) => [...loads].sort((left, right) => right - left);

/** A stage of rows that are worked once, with what else it has. */
export const once = (rows: string, more: Omit<StageNotation, 'rows'> = {}) =>
  stageOf({ rows: rows.split(' / ').map((row) => [row, 1]), ...more });

/** Everything told about a layout. */
export function reasons(stage: Stage, breaks: readonly number[], setup: SetupId = 'two-circulars'): readonly Reason[] {
  return judgeLayout(stage, { breaks }, { setup: SETUPS[setup], settings: DEFAULT_SETTINGS }).reasons;
}

/** The reason with a code. */
export function find(stage: Stage, breaks: readonly number[], code: ReasonCode): Reason | undefined {
  return reasons(stage, breaks).find((reason) => reason.code === code);
}

/** The settings with double-pointed needles of another length. */
export function withLength(cm: number): Settings {
  const lengthCm = { ...DEFAULT_SETTINGS.lengthCm, 'dpn-5': cm, 'dpn-4': cm };
  return { ...DEFAULT_SETTINGS, lengthCm };
}
