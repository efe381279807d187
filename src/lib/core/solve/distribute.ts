/** Distributes the stitches of a stage over the needles of a set-up. */

import type { Stage } from '../model/fabric.ts';
import { loadsOf, type Layout } from '../model/layout.ts';
import type { Distribution, Impossible, Judged } from '../model/plan.ts';
import type { Settings } from '../model/settings.ts';
import { wrap } from '../model/ring.ts';
import type { Setup } from '../model/setup.ts';
import { layoutsInOrder, type Priced, type Question } from './best-layouts.ts';
import { mostOn, usable } from './capacity.ts';
import { isSectionEdge } from './gap-notes.ts';
import { judgeOf, judgeWith, type Judge } from './judge.ts';
import { endsTooFew, leastForLoad, needleIn, needlePrice, needleRules } from './needle-findings.ts';
import { rowCount } from './track.ts';

/** How many times longer than the offer the exact list may be from which near-copies are left out. */
const LONGEST = 24;

/**
 * Finds the best layouts of a stage on a set-up, at most `settings.alternatives` of them, the best one first.
 *
 * Exact: see `bestLayouts`. Those that follow are the next ones in the same order that differ from all before them (see
 * `isNearCopy`). Fewer needles than the set holds are tried when a needle of the best layout falls under the minimum in
 * the first row, and one needle less (never fewer than three) when one ends with too few to stay on; the cheapest answer is taken, of equal
 * ones that with more needles. A needle that ends with too few stitches whatever the layout weighs in the search, though
 * a blocker has no price to show.
 */
export function distribute(stage: Stage, setup: Setup, settings: Settings): Distribution {
  const stitches = stage.start.stitches.length;
  if (stitches === 0) return { kind: 'impossible', because: { code: 'no-stitches', detail: {} } };
  const judge = judgeOf(stage, setup, settings);
  if (setup.holds === 1) return { kind: 'solved', best: [judgeWith(judge, { breaks: [0] })] };
  const answers = answersFor(stage);
  const key = dependsOn(judge);
  const answer = answers.get(key) ?? solve(judge);
  answers.set(key, answer);
  return answer;
}

// Two circulars, a magic loop and flexible needles often put the same question: a stage never changes, so that what was
// answered for one serves the others.
const ANSWERS = new WeakMap<Stage, Map<string, Distribution>>();

function answersFor(stage: Stage): Map<string, Distribution> {
  const known = ANSWERS.get(stage) ?? new Map<string, Distribution>();
  ANSWERS.set(stage, known);
  return known;
}

// Everything that the answer depends on besides the stage. Room for more stitches than there are makes no difference.
function dependsOn({ track, setup, settings }: Judge): string {
  const all = Math.max(track.stitches, ...track.measures.map((measure) => measure.stitches));
  const room = [usable(setup, settings), mostOn(setup, settings)].map((stitches) => Math.min(stitches, all));
  const { minimum, share, prices, alternatives } = settings;
  return JSON.stringify([setup.holds, room, minimum, share, prices, alternatives]);
}

function solve(judge: Judge): Distribution {
  const cheapest = cheapestOf(judge);
  if (cheapest === null) return { kind: 'impossible', because: whyNot(judge) };
  return { kind: 'solved', best: offer(judge, cheapest) };
}

/** A question with its best layout, and the others still to come. */
interface Answered {
  readonly question: Question;
  readonly best: Priced;
  readonly others: Iterable<Priced>;
}

// The question with the number of needles of the cheapest layout; null when there is no layout at all.
function cheapestOf(judge: Judge): Answered | null {
  let chosen: Answered | null = null;
  for (let needles = judge.setup.holds; needles >= 2; needles -= 1) {
    const question = questionOf(judge, needles);
    const others = layoutsInOrder(question);
    const { value: best } = others.next();
    if (best && (!chosen || best.price < chosen.best.price)) chosen = { question, best, others };
    if (best && !mayBeFewer(judge, best.layout)) break;
  }
  return chosen;
}

function mayBeFewer({ track, setup, settings }: Judge, layout: Layout): boolean {
  const loads = loadsOf(layout, track.stitches);
  const rules = needleRules(track, loads.length, { setup, settings });
  const ends = layout.breaks.map((from, index) => [from, from + loads[index]!] as const);
  const first = track.measures[0]!;
  if (ends.some((needle) => needleIn(rules, first, needle).load < settings.minimum)) return true;
  return loads.length > 3 && ends.some((needle) => endsTooFew(rules, needle));
}

/** The question that a judge puts for so many needles. */
export function questionOf(judge: Judge, needles: number): Question {
  const { track, setup, settings } = judge;
  const rules = needleRules(track, needles, { setup, settings });
  const gaps = judge.gaps.map((gap) => gap.price);
  for (const wanted of judge.wanted) gaps[wanted.gap]! -= wanted.price;
  const { stitches } = track;
  const longest = Math.min(stitches, rules.most);
  const prices = new Float64Array(stitches * longest).fill(-1);
  const edges = gaps.map((_, gap) => isSectionEdge(track, gap));
  return {
    stitches,
    needles,
    gaps,
    base: judge.wanted.reduce((sum, wanted) => sum + wanted.price, 0),
    needle: (from, to) => {
      if (to - from > longest) return Infinity;
      const cell = (from % stitches) * longest + (to - from - 1);
      if (prices[cell]! < 0) prices[cell] = needlePrice(rules, from % stitches, (from % stitches) + to - from);
      return prices[cell]!;
    },
    leastForLoad: (load) => leastForLoad(rules, load),
    mostLoad: longest,
    isEdge: (gap) => edges[gap] === true
  };
}

function offer(judge: Judge, { question, best, others }: Answered): Judged[] {
  const wanted = judge.settings.alternatives;
  const kept: Idea[] = [ideaOf(best, question)];
  let looked = 1;
  for (const priced of wanted > 1 ? others : []) {
    const idea = ideaOf(priced, question);
    if (!kept.some((other) => isNearCopy(idea, other, question.stitches))) kept.push(idea);
    looked += 1;
    if (kept.length >= wanted || looked >= wanted * LONGEST) break;
  }
  return kept.map(({ priced }) => judgeWith(judge, priced.layout));
}

interface Idea {
  readonly priced: Priced;
  /** Its loads in ascending order, as one word. */
  readonly loads: string;
  /** The BOR and the section edges that it ends a needle on. */
  readonly places: readonly number[];
}

function ideaOf(priced: Priced, question: Question): Idea {
  const { breaks } = priced.layout;
  const loads = loadsOf(priced.layout, question.stitches).sort((left, right) => left - right);
  const places = breaks.filter((gap) => gap === 0 || question.isEdge(gap));
  return { priced, loads: loads.join(), places };
}

// The same loads in another order or turned round the ring are one idea, unless needles end on other edges or off the BOR;
// and so are breaks that each lie at most one stitch from those before, unless that stitch brings one on to an edge.
function isNearCopy(idea: Idea, before: Idea, stitches: number): boolean {
  const isOnNoOther = idea.places.every((gap) => before.places.includes(gap));
  if (idea.loads === before.loads && isOnNoOther && idea.places.length === before.places.length) return true;
  const [some, others] = [idea.priced.layout.breaks, before.priced.layout.breaks];
  return isOnNoOther && liesBeside(some, others, stitches) && liesBeside(others, some, stitches);
}

function liesBeside(some: readonly number[], others: readonly number[], stitches: number): boolean {
  return some.every((gap) => others.some((other) => wrap(gap - other + 1, stitches) <= 2));
}

function whyNot(judge: Judge): Impossible {
  const { track, setup, settings } = judge;
  const most = mostOn(setup, settings);
  const largest = Math.max(...track.measures.map((measure) => measure.stitches));
  if (largest > most * setup.holds) {
    return { code: 'too-many-for-set', detail: { stitches: largest, holds: setup.holds, limit: most } };
  }
  if (track.stitches < 4) return { code: 'too-few-stitches', detail: { stitches: track.stitches } };
  const free = judge.gaps.filter((gap) => Number.isFinite(gap.price)).length;
  return { code: 'no-free-gap', detail: { rows: rowCount(track.stage), free } };
}
