/** Lays a whole pattern out on one set-up: a layout for every stage, and the letters as they move on. */

import type { Fabric, Stage } from '../model/fabric.ts';
import { layoutFromLoads, type Layout } from '../model/layout.ts';
import type { Hands, Judged, Plan, StagePlan } from '../model/plan.ts';
import type { Settings } from '../model/settings.ts';
import type { Setup } from '../model/setup.ts';
import { distribute } from './distribute.ts';
import { afterPasses, firstHands, withHolders } from './hands.ts';
import { judgeLayout } from './judge.ts';
import { breaksByRow, loadsBetween, passesOf } from './passes.ts';

/** Layouts that the knitter tries instead of the best one: index of the stage → layout. */
export type Tried = ReadonlyMap<number, Layout>;

/** How a fabric is to be laid out. */
export interface PlanRequest {
  readonly setup: Setup;
  readonly settings: Settings;
  readonly tried: Tried;
}

/**
 * Plans every stage of a fabric on a set-up.
 *
 * Each stage is distributed by itself, exactly. A layout that the pattern states is kept when the set-up has the needles
 * for it; one that the knitter tries goes before both.
 */
export function planFabric(fabric: Fabric, request: PlanRequest): Plan {
  const settings = settingsFor(fabric, request.settings);
  const stages: StagePlan[] = [];
  let hands: Hands | null = null;
  fabric.stages.forEach((stage, index) => {
    const planned: StagePlan = planStage(stage, { ...request, settings }, { index, hands });
    stages.push(planned);
    hands = planned.chosen ? planned.endLetters : hands;
  });
  return { fabric, setup: request.setup, settings, stages };
}

// What the pattern says about gauge and needle length goes before the settings.
function settingsFor(fabric: Fabric, settings: Settings): Settings {
  const { stitchesPer10cm } = fabric.gauge;
  const length = fabric.needles.lengthCm;
  return {
    ...settings,
    stitchesPer10cm: stitchesPer10cm ?? settings.stitchesPer10cm,
    lengthCm: length === null ? settings.lengthCm : { ...settings.lengthCm, 'dpn-5': length, 'dpn-4': length }
  };
}

function planStage(
  stage: Stage,
  request: PlanRequest,
  at: { readonly index: number; readonly hands: Hands | null }
): StagePlan {
  const { setup, settings } = request;
  const distribution = distribute(stage, setup, settings);
  const wanted = wantedLayout(stage, request, at.index);
  const best = distribution.kind === 'solved' ? distribution.best[0]! : null;
  const chosen = wanted ? judgeLayout(stage, wanted.layout, { setup, settings }) : best;
  const letters = lettersFor(setup, at.hands, chosen);
  return {
    stage,
    chosen,
    origin: wanted?.origin ?? 'best',
    distribution,
    letters,
    ...endOf(stage, setup, { chosen, letters })
  };
}

function wantedLayout(
  stage: Stage,
  request: PlanRequest,
  index: number
): { readonly layout: Layout; readonly origin: 'tried' | 'stated' } | null {
  const tried = request.tried.get(index);
  if (tried) return { layout: tried, origin: 'tried' };
  const stated = stage.stated.find((loads) => loads.row === 0);
  if (!stated || stated.loads.length > request.setup.holds || stated.loads.length < 2) return null;
  const total = stated.loads.reduce((sum, load) => sum + load, 0);
  if (total !== stage.start.stitches.length || stated.loads.includes(0)) return null;
  return { layout: layoutFromLoads(stated.loads), origin: 'stated' };
}

function lettersFor(setup: Setup, hands: Hands | null, chosen: Judged | null): Hands {
  const holders = chosen?.layout.breaks.length ?? 0;
  if (!hands || setup.works === 'back-tip') return firstHands(setup, holders);
  return withHolders(hands, holders);
}

function endOf(
  stage: Stage,
  setup: Setup,
  start: { readonly chosen: Judged | null; readonly letters: Hands }
): Pick<StagePlan, 'endLoads' | 'endBreaks' | 'endLetters'> {
  if (!start.chosen) return { endLoads: [], endBreaks: [], endLetters: start.letters };
  const breaks = breaksByRow(stage, start.chosen.layout);
  const endBreaks = breaks.at(-1)!;
  const endLetters = stage.rows.reduce(
    (hands, row, index) => afterPasses(setup, hands, passesOf(row, breaks[index]!)),
    start.letters
  );
  return { endLoads: loadsBetween(endBreaks, stage.exit.stitches.length), endBreaks, endLetters };
}
