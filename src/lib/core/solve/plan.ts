/** Lays a whole pattern out on one set-up: a layout for every stage, and the letters as they move on. */

import type { Fabric, Stage, StatedLayout } from '../model/fabric.ts';
import { loadsOf, type Layout } from '../model/layout.ts';
import type { Hands, Judged, Plan, StagePlan } from '../model/plan.ts';
import type { Settings } from '../model/settings.ts';
import type { Setup } from '../model/setup.ts';
import { distribute } from './distribute.ts';
import { afterRow, firstHands, withHolders } from './hands.ts';
import { judgeLayout } from './judge.ts';
import { breaksByRow, loadsBetween } from './passes.ts';

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
  const relaid = relaidIn(stage, request, at.index);
  const chosen = wanted ? judgeRelaid(stage, wanted.layout, { setup, settings, relaid }) : best;
  const letters = lettersFor(setup, at.hands, chosen);
  return {
    stage,
    chosen,
    origin: wanted?.origin ?? 'best',
    relaid,
    distribution,
    letters,
    ...endOf(stage, setup, { chosen, relaid, letters })
  };
}

/**
 * Judges a layout. Where the pattern lays the stitches out anew before later rows, those rows are judged on that layout: the
 * first rows only lead to it.
 */
function judgeRelaid(
  stage: Stage,
  layout: Layout,
  on: { readonly setup: Setup; readonly settings: Settings; readonly relaid: readonly StatedLayout[] }
): Judged {
  const last = on.relaid.findLast(({ row }) => row < stage.rows.length);
  if (!last) return judgeLayout(stage, layout, on);
  const rows = stage.rows.slice(last.row);
  const later: Stage = {
    ...stage,
    rows,
    start: rows[0]!.before,
    run: rows.find(({ shape }) => shape === 'flat')?.run ?? stage.run
  };
  const judged = judgeLayout(later, { breaks: last.breaks }, on);
  const reasons = judged.reasons.map((reason) => ({ ...reason, rows: reason.rows.map((row) => row + last.row) }));
  return { ...judged, layout, loads: loadsOf(layout, stage.start.stitches.length), reasons };
}

function wantedLayout(
  stage: Stage,
  request: PlanRequest,
  index: number
): { readonly layout: Layout; readonly origin: 'tried' | 'stated' } | null {
  const tried = request.tried.get(index);
  if (tried) return { layout: tried, origin: 'tried' };
  const stated = stage.stated.find((layout) => layout.row === 0 && fits(layout, request.setup));
  return stated ? { layout: { breaks: stated.breaks }, origin: 'stated' } : null;
}

// Layouts of later rows; what the knitter tries goes its own way.
function relaidIn(stage: Stage, request: PlanRequest, index: number): readonly StatedLayout[] {
  if (request.tried.has(index)) return [];
  const { setup } = request;
  const atRest = (layout: StatedLayout) => layout.row === stage.rows.length && restsOn(layout, setup);
  return stage.stated.filter((layout) => layout.row > 0 && (fits(layout, setup) || atRest(layout)));
}

// While nothing is worked the free needle may hold stitches too.
function restsOn(layout: StatedLayout, setup: Setup): boolean {
  return setup.works === 'free-needle' && layout.breaks.length >= 2 && layout.breaks.length <= setup.needles.length;
}

function fits(layout: StatedLayout, setup: Setup): boolean {
  return layout.breaks.length >= 2 && layout.breaks.length <= setup.holds;
}

function lettersFor(setup: Setup, hands: Hands | null, chosen: Judged | null): Hands {
  const holders = chosen?.layout.breaks.length ?? 0;
  if (!hands || setup.works === 'back-tip') return firstHands(setup, holders);
  return withHolders(hands, holders);
}

function endOf(
  stage: Stage,
  setup: Setup,
  start: { readonly chosen: Judged | null; readonly relaid: readonly StatedLayout[]; readonly letters: Hands }
): Pick<StagePlan, 'endLoads' | 'endBreaks' | 'endLetters'> {
  if (!start.chosen) return { endLoads: [], endBreaks: [], endLetters: start.letters };
  const breaks = breaksByRow(stage, start.chosen.layout, start.relaid);
  const endBreaks = breaks.at(-1)!;
  const endLetters = stage.rows.reduce(
    (hands, row, index) => afterRow(setup, hands, { row, breaks: breaks[index]!, next: breaks[index + 1]! }),
    start.letters
  );
  return { endLoads: loadsBetween(endBreaks, stage.exit.stitches.length), endBreaks, endLetters };
}
