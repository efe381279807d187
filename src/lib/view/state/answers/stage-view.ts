/** One stage of a plan as it is shown: on its needles at one row, with what every layout of it pays. */

import {
  drawMoment,
  gapPrices,
  judgeLayout,
  momentAt,
  sayImpossible,
  sayMoment,
  sayReason,
  type Judged,
  type Layout,
  type Moment,
  type Plan,
  type Ring,
  type Stage,
  type StagePlan
} from '$lib/core/index.ts';
import type { Offer, Question, RingOutline, Scene, StageView } from './question.ts';

/** What of the question is about one stage. */
type Look = Pick<Question, 'row' | 'held' | 'mirrored'>;

/** Shows a stage of a plan; `null` when the plan has no stage. A stage or row beyond the last is the last. */
export function viewStage(plan: Plan, index: number, look: Look): StageView | null {
  const stage = Math.min(index, plan.stages.length - 1);
  const unheld = plan.stages[stage];
  if (!unheld) return null;
  const planned = look.held ? holding(plan, unheld, look.held) : unheld;
  const row = Math.min(look.row, planned.stage.rows.length);
  const moment = momentAt({ ...plan, stages: plan.stages.with(stage, planned) }, { stage, row, pass: 0 });
  return {
    stage,
    name: planned.stage.name,
    setup: plan.setup,
    ring: outlineRing(planned.stage.start),
    prices: gapPrices(planned.stage, plan.setup, plan.settings).map(({ price }) => price),
    ...layoutsOf(planned),
    unheld: { origin: unheld.origin, layout: unheld.chosen?.layout ?? null },
    words: moment ? sayMoment(moment) : [],
    scene: moment && planned.chosen ? drawScene(moment, planned.chosen, look.mirrored) : null
  };
}

function holding(plan: Plan, planned: StagePlan, held: Layout): StagePlan {
  return { ...planned, chosen: judgeLayout(planned.stage, held, plan), origin: 'tried' };
}

function layoutsOf({ stage, chosen, origin, distribution }: StagePlan) {
  const best = distribution.kind === 'solved' ? distribution.best : [];
  return {
    chosen: chosen && offer(chosen, stage),
    origin,
    stated: stage.stated.some((loads) => loads.row === 0),
    offers: best.map((judged) => offer(judged, stage)),
    impossible: distribution.kind === 'impossible' ? sayImpossible(distribution.because) : ''
  };
}

function offer(judged: Judged, stage: Stage): Offer {
  const { layout, loads, price } = judged;
  const reasons = judged.reasons.map((reason) => ({
    code: reason.code,
    severity: reason.severity,
    price: reason.price,
    words: sayReason(reason, judged, stage)
  }));
  return { layout, loads, price, reasons };
}

function outlineRing({ stitches, markers, sections }: Ring): RingOutline {
  return { stitches: stitches.length, markers, sections };
}

// The page gives the picture the theme of the moment it is seen in.
function drawScene(moment: Moment, { loads }: Judged, mirrored: boolean): Scene {
  const picture = drawMoment(moment, { mirrored, theme: 'light' });
  return { picture, stage: moment.stage, works: moment.setup.works, loads, mirrored };
}
