/** What the knitter may change: lengths, limits, gauge and prices, each default with its source. */

import type { SetupId } from './setup.ts';

/**
 * Prices of reasons, in whole numbers, per row. One is what a needle pays for being one stitch longer than its fair
 * share on top of the last one. Source of the table: computed by brute force so that the published splits in the tests
 * come out (68 in k2 p2 rib → three of 16 and one of 20; 32 with a 12-stitch cable → 12/20; 60 in k3 → 21/21/18 …).
 */
export interface Prices {
  /** The BOR inside a needle instead of on a break. */
  readonly borInsideNeedle: number;
  /** A section edge that a flat stage or shaping needs, not on a break. */
  readonly edgeOffBreak: number;
  /** Each stitch of a needle's share beyond a limit. */
  readonly shareBeyond: number;
  /** Each stitch under the comfortable minimum. */
  readonly underMinimum: number;
  /** Each stitch above the usable length of the needle. */
  readonly overCapacity: number;
  /** A yarn-over or an increase at a needle end. */
  readonly increaseAtEnd: number;
  /** A purl first on a needle, outside ribs. */
  readonly purlFirst: number;
  /** A shaping pair split by a break. */
  readonly splitPair: number;
  /** Stitches that have moved across a break while the total stays. */
  readonly drift: number;
}

/** The knitter's settings. */
export interface Settings {
  /** Length of each needle in centimetres, tip to tip, by set-up. */
  readonly lengthCm: Readonly<Record<SetupId, number>>;
  /** Stitches over 10 cm where the pattern does not say. */
  readonly stitchesPer10cm: number;
  /** Fewest stitches that are comfortable on a needle; fewer than 2 are never planned. */
  readonly minimum: number;
  /** Greatest and least share of the round on one needle, in per cent. One holder is exempt. */
  readonly share: { readonly most: number; readonly least: number };
  readonly prices: Prices;
  /** How many layouts to offer. */
  readonly alternatives: number;
}

/** Prices as they come; see `Prices` for the source. */
const DEFAULT_PRICES: Prices = {
  borInsideNeedle: 37,
  edgeOffBreak: 41,
  shareBeyond: 1,
  underMinimum: 4,
  overCapacity: 1,
  increaseAtEnd: 4,
  purlFirst: 1,
  splitPair: 4,
  drift: 1
};

/** Settings as they come. Sources stand beside each value. */
export const DEFAULT_SETTINGS: Settings = {
  lengthCm: {
    // 15 cm for socks: SWR 2021 handout; 5 to 7 in: Knitter's Review, "DPNs explained".
    'dpn-5': 15,
    // 20 cm in sets of four: loads of 30 and more on one needle are usual after the heel (common practice, no source).
    'dpn-4': 20,
    // 60 cm (24 in): two circulars may be of any length a bit over 16 in (KnittingHelp forum 65461).
    'two-circulars': 60,
    // 100 cm (40 in), often preferred: KnittingHelp forum 157102, 58249, 69895.
    'magic-loop': 100,
    // About 20 cm, two short tips and a cord between them (from memory).
    'flexible-3': 20,
    // 23 cm (9 in), the usual small circular for socks (from memory).
    'short-circular': 23
  },
  // A common sock gauge (memory of many printed patterns; yarn weight 1 gives 27 to 32, standards.md 4.1).
  stitchesPer10cm: 30,
  // Four: common practice, no source.
  minimum: 4,
  // 60 % and 15 %: common practice, no source; an editor's rule is a quarter to a half (Modern Daily Knitting).
  share: { most: 60, least: 15 },
  prices: DEFAULT_PRICES,
  alternatives: 10
};
