/** Distributes the stitches of a stage over the needles of a set-up. */

import type { Stage } from '../model/fabric.ts';
import { loadsOf, type Layout } from '../model/layout.ts';
import type { Distribution, Impossible, Judged } from '../model/plan.ts';
import type { Settings } from '../model/settings.ts';
import type { Setup } from '../model/setup.ts';
import { bestLayouts, type Priced, type Question } from './best-layouts.ts';
import { mostOn } from './capacity.ts';
import { isSectionEdge } from './gap-reasons.ts';
import { judgeOf, judgeWith, type Judge } from './judge.ts';
import { loadPrice, needlePrice, needleRules } from './needle-findings.ts';
import { rowCount } from './track.ts';

/** How much longer than the offer the exact list is made, so that near-copies can be left out of it. */
const LONGER = [4, 24] as const;

/**
 * Finds the best layouts of a stage on a set-up, at most `settings.alternatives` of them, the best one first.
 *
 * Exact: see `bestLayouts`. Those that follow are the next ones in the same order that differ from all before them (see
 * `isNearCopy`). Fewer needles than the set holds are tried when a needle of the best layout starts under the minimum;
 * the cheaper answer is taken, and of equal ones that with more needles.
 */
export function distribute(stage: Stage, setup: Setup, settings: Settings): Distribution {
  const stitches = stage.start.stitches.length;
  if (stitches === 0) return { kind: 'impossible', because: { code: 'no-stitches', detail: {} } };
  const judge = judgeOf(stage, setup, settings);
  if (setup.holds === 1) return { kind: 'solved', best: [judgeWith(judge, { breaks: [0] })] };
  const needles = neededNeedles(judge);
  if (needles === null) return { kind: 'impossible', because: whyNot(judge) };
  return { kind: 'solved', best: offer(judge, needles) };
}

// The number of needles of the cheapest layout; null when there is none.
function neededNeedles(judge: Judge): number | null {
  let chosen: { readonly needles: number; readonly price: number } | null = null;
  for (let needles = judge.setup.holds; needles >= 2; needles -= 1) {
    const [best] = bestLayouts(questionOf(judge, needles), 1);
    if (best && (!chosen || best.price < chosen.price)) chosen = { needles, price: best.price };
    if (best && !isUnderMinimum(judge, best.layout)) break;
  }
  return chosen?.needles ?? null;
}

function isUnderMinimum(judge: Judge, layout: Layout): boolean {
  return loadsOf(layout, judge.track.stitches).some((load) => load < judge.settings.minimum);
}

/** The question that a judge puts for so many needles. */
export function questionOf(judge: Judge, needles: number): Question {
  const { track, setup, settings } = judge;
  const rules = needleRules(track, needles, { setup, settings });
  const gaps = judge.gaps.map((gap) => gap.price);
  for (const wanted of judge.wanted) gaps[wanted.gap]! -= wanted.price;
  const { stitches } = track;
  const prices = new Float64Array(stitches * stitches).fill(-1);
  const first = track.measures[0]!;
  const edges = gaps.map((_, gap) => isSectionEdge(track, gap));
  return {
    stitches,
    needles,
    gaps,
    base: judge.wanted.reduce((sum, wanted) => sum + wanted.price, 0),
    needle: (from, to) => {
      const cell = (from % stitches) * stitches + (to - from - 1);
      if (prices[cell]! < 0) prices[cell] = needlePrice(rules, from, to);
      return prices[cell]!;
    },
    leastForLoad: (load) => (track.measures.length === 1 ? first.rows.length * loadPrice(load, stitches, needles) : 0),
    mostLoad: track.measures.length === 1 ? rules.most : stitches,
    isEdge: (gap) => edges[gap] === true
  };
}

function offer(judge: Judge, needles: number): Judged[] {
  const wanted = judge.settings.alternatives;
  const question = questionOf(judge, needles);
  let kept: Priced[] = [];
  for (const times of LONGER) {
    const exact = bestLayouts(question, wanted * times);
    kept = different(exact, question.stitches).slice(0, wanted);
    if (kept.length === wanted || exact.length < wanted * times) break;
  }
  return kept.map(({ layout }) => judgeWith(judge, layout));
}

function different(layouts: readonly Priced[], stitches: number): Priced[] {
  const kept: Idea[] = [];
  for (const priced of layouts) {
    const loads = loadsOf(priced.layout, stitches)
      .sort((left, right) => left - right)
      .join();
    if (!kept.some((other) => isNearCopy({ priced, loads }, other))) kept.push({ priced, loads });
  }
  return kept.map((idea) => idea.priced);
}

interface Idea {
  readonly priced: Priced;
  /** Its loads in ascending order, as one word. */
  readonly loads: string;
}

// The same loads in another order or turned round the ring are one idea, and so are breaks that lie at most one stitch apart.
function isNearCopy(left: Idea, right: Idea): boolean {
  if (left.loads === right.loads) return true;
  const others = right.priced.layout.breaks;
  return left.priced.layout.breaks.every((gap, index) => Math.abs(gap - others[index]!) <= 1);
}

function whyNot(judge: Judge): Impossible {
  const { track, setup, settings } = judge;
  const most = mostOn(setup, settings);
  const largest = Math.max(...track.measures.map((measure) => measure.stitches));
  if (largest > most * setup.holds) {
    return { code: 'too-many-for-set', detail: { stitches: largest, holds: setup.holds, limit: most } };
  }
  if (track.stitches < 4) return { code: 'too-few-stitches', detail: { stitches: track.stitches } };
  return { code: 'no-free-gap', detail: { rows: rowCount(track.stage) } };
}
