/** What one row says about a break in one gap. */

import type { RepeatStretch, Step } from '../model/fabric.ts';
import type { ReasonCode } from '../model/judgement.ts';
import type { Prices } from '../model/settings.ts';
import { wrap } from '../model/ring.ts';
import type { Neighbours } from './neighbours.ts';
import type { Effect } from './track.ts';

/** One finding in one row; the price is for that row. */
export interface Finding {
  readonly code: ReasonCode;
  readonly price: number;
  readonly detail: Readonly<Record<string, number>>;
  readonly about: string;
}

/** Longest unit of knit and purl that is a plain rib (ours). */
const LONGEST_RIB = 8;

/** A gap in a row, with what stands around it. */
export interface GapInRow {
  readonly effect: Effect;
  readonly neighbours: Neighbours;
  /** Gap of the start ring. */
  readonly gap: number;
  readonly prices: Prices;
  /** True when the run of a flat stage must lie on one needle. */
  readonly onOne: boolean;
}

/** Everything that a row says about a break in a gap. */
export function findingsAt(at: GapInRow): Finding[] {
  const { effect, gap } = at;
  const cut = effect.cutBy[gap] ?? -1;
  if (cut >= 0) return [cutFinding(at, effect.row.steps[cut]!)];
  if (effect.row.shape === 'flat') return flatFindings(at);
  return [...endFindings(at), ...patternFindings(at), ...pairFindings(at), ...driftFindings(at)];
}

function finding(code: ReasonCode, price: number, about = ''): Finding {
  return { code, price, detail: {}, about };
}

function placeOf(at: GapInRow): number {
  return wrap(at.effect.before[at.gap] ?? 0, at.effect.row.before.stitches.length);
}

function cutFinding(at: GapInRow, step: Step): Finding {
  const stitches = at.effect.row.before.stitches.length;
  const left = wrap(placeOf(at) - step.from, stitches);
  const detail = { left, right: step.takes - left };
  return { code: cutCode(step), price: 0, detail, about: step.operation.name };
}

function cutCode(step: Step): ReasonCode {
  const { family, crosses } = step.operation;
  if (family === 'twist') return 'cuts-twist';
  if (family === 'cable' || crosses) return 'cuts-cable';
  return family === 'increase' ? 'cuts-increase' : 'cuts-decrease';
}

// Where several needles carry a run, what is first and last on a needle is told on the right side, where ribs are named.
function flatFindings(at: GapInRow): Finding[] {
  if (!insideRun(at)) return [];
  if (at.onOne) return [finding('section-broken', 0)];
  return at.effect.row.side === 'RS' ? [...endFindings(at), ...patternFindings(at), ...pairFindings(at)] : [];
}

function insideRun(at: GapInRow): boolean {
  const { row } = at.effect;
  const offset = wrap(placeOf(at) - row.run.from, row.before.stitches.length);
  return offset > 0 && offset < row.run.to - row.run.from;
}

function endFindings(at: GapInRow): Finding[] {
  const place = placeOf(at);
  const first = at.neighbours.first[place]?.operation;
  const last = at.neighbours.last[place]?.operation;
  const price = at.prices.increaseAtEnd;
  const found: Finding[] = [];
  if (first?.family === 'yarn-over') found.push(finding('yarn-over-first', price, first.name));
  if (first?.family === 'increase') found.push(finding('increase-first', price, first.name));
  if (last?.family === 'increase') found.push(finding('increase-last', price, last.name));
  return [...found, ...madeLast(at, place)];
}

// What is made after the last stitch of a round stays on the last needle.
function madeLast({ effect, prices }: GapInRow, place: number): Finding[] {
  const trailing = effect.row.steps.at(-1);
  if (place !== effect.row.start || trailing?.takes !== 0) return [];
  const { family, name } = trailing.operation;
  if (family === 'yarn-over') return [finding('yarn-over-last', prices.increaseAtEnd, name)];
  return family === 'increase' ? [finding('increase-last', prices.increaseAtEnd, name)] : [];
}

// Lace may carry stitches over a break though the total stays: the gap then lies elsewhere, told from the BOR.
function driftFindings({ effect, gap, prices }: GapInRow): Finding[] {
  const stitches = effect.after.length;
  if (effect.row.after.stitches.length !== stitches) return [];
  const moved = wrap(effect.after[gap]! - effect.after[0]! - gap, stitches);
  const detail = { stitches: Math.min(moved, stitches - moved) };
  return moved === 0 ? [] : [{ code: 'drift', price: prices.drift, detail, about: '' }];
}

function isPurl(step: Step | null): boolean {
  return step?.operation.family === 'purl';
}

// A rib pays for a split pair or a purl first, once; any other repeat for a gap off the repeat. Outside repeats only a purl
// that follows something else is told: in a purled round every needle starts with one.
function patternFindings(at: GapInRow): Finding[] {
  const place = placeOf(at);
  const first = at.neighbours.first[place] ?? null;
  const last = at.neighbours.last[place] ?? null;
  const repeat = at.neighbours.repeat[place] ?? null;
  if (repeat && isRib(at, repeat)) return ribFindings(first, last, repeat.unit ** 2);
  if (repeat) return repeatFindings(at, repeat, place);
  return isPurl(first) && !isPurl(last) ? [finding('purl-first', at.prices.purlFirst)] : [];
}

function ribFindings(first: Step | null, last: Step | null, price: number): Finding[] {
  const split = first !== null && last !== null && isPurl(first) === isPurl(last);
  const purl = isPurl(first);
  if (split && purl) return [finding('splits-rib', price), finding('purl-first', 0)];
  if (split) return [finding('splits-rib', price)];
  return purl ? [finding('purl-first', price)] : [];
}

function repeatFindings(at: GapInRow, repeat: RepeatStretch, place: number): Finding[] {
  const offset = wrap(place - repeat.from, at.effect.row.before.stitches.length) % repeat.unit;
  if (offset === 0 || isUniform(at, repeat)) return [];
  return [{ code: 'splits-repeat', price: repeat.unit ** 2, detail: { repeat: repeat.unit }, about: '' }];
}

function unitSteps(at: GapInRow, repeat: RepeatStretch): (Step | null)[] {
  const stitches = at.effect.row.before.stitches.length;
  return Array.from(
    { length: repeat.unit },
    (_, offset) => at.neighbours.last[wrap(repeat.from + offset + 1, stitches)] ?? null
  );
}

function isRib(at: GapInRow, repeat: RepeatStretch): boolean {
  if (repeat.unit > LONGEST_RIB) return false;
  const families = new Set(unitSteps(at, repeat).map((step) => step?.operation.family));
  return families.size === 2 && families.has('knit') && families.has('purl');
}

function isUniform(at: GapInRow, repeat: RepeatStretch): boolean {
  const names = new Set(unitSteps(at, repeat).map((step) => step?.operation.name));
  return names.size === 1 && unitSteps(at, repeat)[0]?.takes === 1;
}

// k2tog, a spine of at most two plain stitches, ssk: such a pair belongs together, unless it flanks the BOR, an edge or a
// marker.
function pairFindings(at: GapInRow): Finding[] {
  const place = placeOf(at);
  const behind = nearestDecrease(at, place, -1);
  const ahead = nearestDecrease(at, place, 1);
  if (!behind || !ahead || behind.plain + ahead.plain > 2) return [];
  if (behind.step.operation.leans !== 'right' || ahead.step.operation.leans !== 'left') return [];
  const flanks = boundaries(at).some((gap) => place - behind.plain <= gap && gap <= place + ahead.plain);
  return flanks ? [] : [finding('splits-shaping-pair', at.prices.splitPair)];
}

// The BOR is met from either side.
function boundaries({ effect }: GapInRow): number[] {
  const { stitches, sections, markers } = effect.row.before;
  const edges = sections.flatMap((run) => [run.from, run.to]);
  const hung = markers.filter((marker) => marker.kind === 'ring').map((marker) => marker.at);
  return [0, stitches.length, ...edges, ...hung];
}

function nearestDecrease(
  at: GapInRow,
  place: number,
  way: 1 | -1
): { readonly step: Step; readonly plain: number } | null {
  const stitches = at.effect.row.before.stitches.length;
  const { first, last } = at.neighbours;
  for (let plain = 0; plain <= 2; plain += 1) {
    const gap = wrap(place + way * plain, stitches);
    const step = way === 1 ? first[gap] : last[gap];
    if (!step || first[gap]?.takes === 0) return null;
    if (step.operation.family === 'decrease') return { step, plain };
  }
  return null;
}
