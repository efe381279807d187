/** What a needle pays for the stitches it holds, in every row. */

import type { ReasonCode } from '../model/judgement.ts';
import type { Settings } from '../model/settings.ts';
import type { Setup } from '../model/setup.ts';
import { wrap } from '../model/ring.ts';
import { mostOn, usable } from './capacity.ts';
import type { Measure, Track } from './track.ts';

/** Fewest stitches that stay on a needle. */
const FEWEST = 2;

/** Too few to stay on a needle in a later row: dearer than anything that is only awkward. */
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
function loadIn(measure: Measure, from: number, to: number): number {
  const start = measure.at.length;
  if (to - from >= start) return measure.stitches;
  return wrap(measure.at[to % start]! - measure.at[from % start]!, measure.stitches);
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
  if (load < FEWEST) add('too-few-to-hold', TOO_FEW, { stitches: load });
  else if (load < minimum && needles > 1) {
    add('under-minimum', (minimum - load) * prices.underMinimum, { stitches: load, limit: minimum });
  }
  if (load > rules.most) add('needle-too-full', 0, { stitches: load, limit: rules.most });
  else if (load > rules.usable) {
    add('crowded', (load - rules.usable) * prices.overCapacity, { stitches: load, limit: rules.usable });
  }
  return found;
}

/** Price of the needle from gap `from` to gap `to`, summed over the rows; Infinity when it cannot be. */
export function needlePrice(rules: NeedleRules, from: number, to: number): number {
  if (rules.needles > 1 && to - from < FEWEST) return Infinity;
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
  if (load < FEWEST) price += TOO_FEW;
  else if (load < minimum && rules.needles > 1) price += (minimum - load) * prices.underMinimum;
  return price + Math.max(0, load - rules.usable) * prices.overCapacity;
}
