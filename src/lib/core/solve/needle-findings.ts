/** What a needle pays for the stitches it holds, in every row. */

import type { ReasonCode } from '../model/judgement.ts';
import type { Settings } from '../model/settings.ts';
import type { Setup } from '../model/setup.ts';
import { mostOn, usable } from './capacity.ts';
import type { Measure, Track } from './track.ts';

/** Fewest stitches that stay on a needle. */
const FEWEST = 2;

/**
 * Too few to stay on a needle in a later row: dearer than anything that is only awkward. Not infinite, since no layout can
 * help it where a crown ends.
 */
const TOO_FEW = 1000;

/** The rules for the needles of one question. */
export interface NeedleRules {
  readonly track: Track;
  /** How many needles hold the stitches. */
  readonly needles: number;
  readonly settings: Settings;
  readonly usable: number;
  readonly most: number;
  /** Shares of the round are compared: not with one holder, and not where part of the ring rests. */
  readonly shares: boolean;
}

/** One finding about a needle in the rows of one measure; the price is for one row. */
export interface NeedleFinding {
  readonly code: ReasonCode;
  readonly price: number;
  readonly detail: Readonly<Record<string, number>>;
}

/** The rules for so many needles of a set-up. */
export function needleRules(track: Track, needles: number, on: { setup: Setup; settings: Settings }): NeedleRules {
  return {
    track,
    needles,
    settings: on.settings,
    usable: usable(on.setup, on.settings),
    most: mostOn(on.setup, on.settings),
    shares: needles > 1 && track.stage.shape === 'round'
  };
}

/** Stitches of the needle from gap `from` to gap `to` (gaps of the start ring; `to` may be past its end) in a measure. */
function loadIn({ at, stitches }: Measure, from: number, to: number): number {
  const start = at.length - 1;
  if (to - from >= start) return stitches;
  return to <= start ? at[to]! - at[from]! : at[start]! - at[from]! + at[to - start]!;
}

// Fewer than two needles' worth are drawn together or lie on one needle, whatever the layout.
function isTooFew(load: number, stitches: number): boolean {
  return load < FEWEST && stitches >= 2 * FEWEST;
}

/**
 * What a needle with so many of `stitches` pays for its load.
 *
 * With f the whole part of stitches / needles, (L - f)(L - f - 1) is convex, whole, and 0 for L = f and L = f + 1. Summed
 * over the needles it differs from the sum of (L - stitches / needles)² by a constant: with r = stitches - needles · f, the
 * first is Σ(L - f)² - r and the second Σ(L - f)² - r² / needles.
 */
export function loadPrice(load: number, stitches: number, needles: number): number {
  const fair = Math.floor(stitches / needles);
  return (load - fair) * (load - fair - 1);
}

/** A needle in one measure: its load, the stitches of the ring, and what it pays per row for being uneven. */
export interface NeedleInMeasure {
  readonly load: number;
  readonly stitches: number;
  readonly fair: number;
}

/**
 * The needle from gap `from` to gap `to` in a measure. Where part of the ring rests, loads are compared as they are at the
 * start: shaping on the needle in work says nothing about those that wait.
 */
export function needleIn(rules: NeedleRules, measure: Measure, ends: readonly [number, number]): NeedleInMeasure {
  const { track, needles } = rules;
  const load = loadIn(measure, ends[0], ends[1]);
  const fair =
    track.stage.shape === 'flat'
      ? loadPrice(ends[1] - ends[0], track.stitches, needles)
      : loadPrice(load, measure.stitches, needles);
  return { load, stitches: measure.stitches, fair };
}

/** Everything that one measure says about a needle; prices are for one row. */
export function needleFindings(rules: NeedleRules, on: NeedleInMeasure): NeedleFinding[] {
  const { settings, needles } = rules;
  const { load, stitches, fair } = on;
  const { prices, minimum, share } = settings;
  const found: NeedleFinding[] = [];
  const add = (code: ReasonCode, price: number, detail: NeedleFinding['detail']) => found.push({ code, price, detail });
  if (fair > 0) add('uneven-load', fair, { stitches: load });
  const above = load - Math.floor((stitches * share.most) / 100);
  const below = Math.ceil((stitches * share.least) / 100) - load;
  if (rules.shares && above > 0) add('share-above-limit', above * prices.shareBeyond, { stitches: load, of: stitches });
  if (rules.shares && below > 0) add('share-below-limit', below * prices.shareBeyond, { stitches: load, of: stitches });
  if (isTooFew(load, stitches)) add('too-few-to-hold', TOO_FEW, { stitches: load });
  else if (load < minimum && needles > 1) {
    add('under-minimum', (minimum - load) * prices.underMinimum, { stitches: load, limit: minimum });
  }
  if (load > rules.most) add('needle-too-full', 0, { stitches: load, limit: rules.most });
  else if (load > rules.usable) {
    add('crowded', (load - rules.usable) * prices.overCapacity, { stitches: load, limit: rules.usable });
  }
  return found;
}

/** What stops a needle from holding so many stitches at the very start, before any row. */
export function startFindings(rules: NeedleRules, load: number): NeedleFinding[] {
  if (load > rules.most) {
    return [{ code: 'needle-too-full', price: 0, detail: { stitches: load, limit: rules.most } }];
  }
  const tooFew = rules.needles > 1 && load < FEWEST;
  return tooFew ? [{ code: 'too-few-to-hold', price: TOO_FEW, detail: { stitches: load } }] : [];
}

/** Price of the needle from gap `from` to gap `to`, summed over the rows; Infinity when it cannot be. */
export function needlePrice(rules: NeedleRules, from: number, to: number): number {
  if (startFindings(rules, to - from).length > 0) return Infinity;
  let price = 0;
  for (const measure of rules.track.measures) {
    const on = needleIn(rules, measure, [from, to]);
    if (on.load > rules.most) return Infinity;
    price += measure.rows.length * pricePerRow(rules, on);
  }
  return price;
}

// The sum of the prices of `needleFindings`, without making them: this is asked for every pair of gaps.
function pricePerRow(rules: NeedleRules, { load, stitches, fair }: NeedleInMeasure): number {
  const { prices, minimum, share } = rules.settings;
  let price = fair;
  if (rules.shares) {
    price += Math.max(0, load - Math.floor((stitches * share.most) / 100)) * prices.shareBeyond;
    price += Math.max(0, Math.ceil((stitches * share.least) / 100) - load) * prices.shareBeyond;
  }
  if (isTooFew(load, stitches)) price += TOO_FEW;
  else if (load < minimum && rules.needles > 1) price += (minimum - load) * prices.underMinimum;
  return price + Math.max(0, load - rules.usable) * prices.overCapacity;
}

/** Whether a needle has too few stitches to stay on it in some row. */
export function endsTooFew(rules: NeedleRules, [from, to]: readonly [number, number]): boolean {
  return rules.track.measures.some((measure) => isTooFew(loadIn(measure, from, to), measure.stitches));
}

/**
 * A lower bound for the price of any needle with so many stitches at the start, or with more where that is more than an
 * even share, or with fewer where it is less.
 *
 * A longer needle holds in every row at least what a shorter one inside it holds, and an uneven load pays more the farther
 * it lies from the even share. So the least load that `load` stitches come to anywhere on the ring (the greatest, below
 * the even share) bounds them all. Time: measures × stitches.
 */
export function leastForLoad(rules: NeedleRules, load: number): number {
  const { track, needles } = rules;
  const flat = track.stage.shape === 'flat';
  return track.measures.reduce((sum, measure) => {
    const stitches = flat ? track.stitches : measure.stitches;
    const extreme = flat ? load : extremeLoad(measure, load, load * needles > track.stitches);
    return sum + measure.rows.length * priceBeyond(extreme, load * needles > track.stitches, [stitches, needles]);
  }, 0);
}

function priceBeyond(load: number, above: boolean, [stitches, needles]: readonly [number, number]): number {
  const beyond = above ? load * needles > stitches : load * needles < stitches;
  return beyond ? loadPrice(load, stitches, needles) : 0;
}

function extremeLoad(measure: Measure, load: number, above: boolean): number {
  const start = measure.at.length - 1;
  let extreme = above ? Infinity : 0;
  for (let from = 0; from < start; from += 1) {
    const here = loadIn(measure, from, from + load);
    extreme = above ? Math.min(extreme, here) : Math.max(extreme, here);
  }
  return extreme;
}
