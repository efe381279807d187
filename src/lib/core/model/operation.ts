/** One thing done by the hands: how many stitches it takes, how many it makes, and what they look like. */

import type { Face } from './stitch.ts';

/** What kind of thing an operation is. The judge of breaks and the drawing ask for the family, never for the name. */
export const FAMILIES = [
  'knit',
  'purl',
  'slip',
  'decrease',
  'increase',
  'yarn-over',
  'cable',
  'twist',
  'bobble',
  'pick-up',
  'cast-on',
  'bind-off',
  'wrap'
] as const;
/** One of `FAMILIES`. */
export type Family = (typeof FAMILIES)[number];

/**
 * An operation. `faces` tells how each made stitch looks from the side that is being worked, in working order;
 * its length is `makes`. Counts are stitches.
 */
export interface Operation {
  /** The standard abbreviation, as it is written in patterns: `k2tog`, `2/2 LC`. */
  readonly name: string;
  /** The reading in full: "knit 2 together". */
  readonly words: string;
  readonly family: Family;
  /** Stitches taken from the left needle; 0 for a yarn-over. */
  readonly takes: number;
  /** Stitches made on the right needle. */
  readonly makes: number;
  readonly faces: readonly Face[];
  /** Where the result leans on the side worked, for a right-handed knitter. */
  readonly leans: 'left' | 'right' | 'none';
  /** True when stitches change places, so that no break may lie inside. */
  readonly crosses: boolean;
}
