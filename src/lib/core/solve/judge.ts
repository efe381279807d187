/** Judges a layout: what it pays, for which gap or needle, in which rows. */

import type { Stage } from '../model/fabric.ts';
import { REASONS, type Reason } from '../model/judgement.ts';
import { loadsOf, type Layout } from '../model/layout.ts';
import type { Judged } from '../model/plan.ts';
import type { Settings } from '../model/settings.ts';
import type { Setup } from '../model/setup.ts';
import { mostOn } from './capacity.ts';
import { liesOnOne, wantedBreaks, type WantedBreak } from './edges.ts';
import { judgeGaps, type GapPrice } from './gap-reasons.ts';
import {
  needleFindings,
  needleIn,
  needleRules,
  startFindings,
  type NeedleFinding,
  type NeedleRules
} from './needle-findings.ts';
import { trackStage, type Track } from './track.ts';

export type { GapPrice } from './gap-reasons.ts';

/** A set-up and the settings it is used with. */
export interface Tools {
  readonly setup: Setup;
  readonly settings: Settings;
}

/** A stage with its gaps judged: what is worked out once and serves every layout of it. */
export interface Judge {
  readonly track: Track;
  readonly gaps: readonly GapPrice[];
  readonly wanted: readonly WantedBreak[];
  readonly setup: Setup;
  readonly settings: Settings;
}

type JudgedGaps = Pick<Judge, 'gaps' | 'wanted'> & { readonly prices: Settings['prices'] };

// A stage never changes. What speaks about its gaps is the same on every set-up whose needles take the run of a flat stage,
// and the same on every one whose needles do not: each is worked out once.
interface JudgedStage {
  readonly track: Track;
  onOne?: JudgedGaps;
  onSeveral?: JudgedGaps;
}
const JUDGED = new WeakMap<Stage, JudgedStage>();

/** Prepares the judging of the layouts of a stage. */
export function judgeOf(stage: Stage, setup: Setup, settings: Settings): Judge {
  const judged = JUDGED.get(stage) ?? { track: trackStage(stage) };
  JUDGED.set(stage, judged);
  const { track } = judged;
  const which = liesOnOne(track, mostOn(setup, settings)) ? 'onOne' : 'onSeveral';
  const known = judged[which];
  const { gaps, wanted } = known?.prices === settings.prices ? known : judgeAll(track, settings, which === 'onOne');
  judged[which] = { gaps, wanted, prices: settings.prices };
  return { track, gaps, wanted, setup, settings };
}

function judgeAll(track: Track, settings: Settings, onOne: boolean): Pick<Judge, 'gaps' | 'wanted'> {
  return { gaps: judgeGaps(track, settings, onOne), wanted: wantedBreaks(track, settings) };
}

/** The price of a break in every gap of a stage's start ring; with one holder no needle ends anywhere, and all cost 0. */
export function gapPrices(stage: Stage, setup: Setup, settings: Settings): readonly GapPrice[] {
  if (setup.holds === 1) return stage.start.stitches.map((_, gap) => ({ gap, price: 0, reasons: [] }));
  return judgeOf(stage, setup, settings).gaps;
}

/** Judges any layout of a stage, also one that no needle could hold. */
export function judgeLayout(stage: Stage, layout: Layout, on: Tools): Judged {
  return judgeWith(judgeOf(stage, on.setup, on.settings), layout);
}

/** Judges a layout with what is known of its stage. */
export function judgeWith(judge: Judge, layout: Layout): Judged {
  const { track, setup, settings } = judge;
  const loads = loadsOf(layout, track.stitches);
  const rules = needleRules(track, Math.max(layout.breaks.length, 1), { setup, settings });
  const breaks = setup.holds === 1 ? [] : breakReasons(judge, layout);
  const needles = layout.breaks.flatMap((from, index) => needleReasons(rules, index, [from, from + loads[index]!]));
  const reasons = [...tooMany(judge, layout), ...breaks, ...needles].sort(byWeight);
  return { layout, loads, price: reasons.reduce((sum, reason) => sum + reason.price, 0), reasons };
}

const WEIGHT = { blocker: 0, awkward: 1, note: 2 } as const;

function byWeight(left: Reason, right: Reason): number {
  return WEIGHT[left.severity] - WEIGHT[right.severity] || right.price - left.price;
}

function tooMany({ setup }: Judge, layout: Layout): Reason[] {
  const needles = layout.breaks.length;
  if (needles <= setup.holds) return [];
  const detail = { needles, holds: setup.holds };
  return [
    { code: 'too-many-needles', severity: 'blocker', break: null, needle: null, rows: [0], price: 0, detail, about: '' }
  ];
}

function breakReasons(judge: Judge, layout: Layout): Reason[] {
  const paid = layout.breaks.flatMap((gap) => judge.gaps[gap]?.reasons ?? []);
  const missed = judge.wanted
    .filter((wanted) => !layout.breaks.includes(wanted.gap))
    .map((wanted): Reason => {
      const { code, rows, price, about, gap } = wanted;
      const needle = needleWith(layout, gap);
      return { code, severity: REASONS[code], break: null, needle, rows, price, detail: { gap }, about };
    });
  return [...paid, ...missed];
}

function needleWith(layout: Layout, gap: number): number {
  const found = layout.breaks.findLastIndex((from) => from <= gap);
  return found < 0 ? Math.max(layout.breaks.length - 1, 0) : found;
}

// The facts of a needle's finding are those of the rows where it is worst.
function needleReasons(rules: NeedleRules, needle: number, [from, to]: readonly [number, number]): Reason[] {
  const atStart = startFindings(rules, to - from).map((finding) => ({ finding, rows: [0] }));
  const later = rules.track.measures.flatMap((measure) =>
    needleFindings(rules, needleIn(rules, measure, [from, to])).map((finding) => ({ finding, rows: measure.rows }))
  );
  const found = [...atStart, ...later];
  const codes = new Set(found.map(({ finding }) => finding.code));
  return [...codes].map((code) =>
    gather(
      code,
      needle,
      found.filter(({ finding }) => finding.code === code)
    )
  );
}

interface FoundInRows {
  readonly finding: NeedleFinding;
  readonly rows: readonly number[];
}

function gather(code: Reason['code'], needle: number, found: readonly FoundInRows[]): Reason {
  const severity = REASONS[code];
  const worst = found.reduce((one, other) => (other.finding.price > one.finding.price ? other : one));
  const price = found.reduce((sum, { finding, rows }) => sum + finding.price * rows.length, 0);
  return {
    code,
    severity,
    break: null,
    needle,
    rows: [...new Set(found.flatMap(({ rows }) => rows))].sort((left, right) => left - right),
    price: severity === 'blocker' ? 0 : price,
    detail: worst.finding.detail,
    about: ''
  };
}
