/** Rows that the text does not write out. */

import type { Instruction } from './pattern.ts';

/** Rows of one simple stitch pattern. */
export interface PlainStitch {
  /** `as-set`: the stitches as they present themselves; `rib` and `seed` have a unit. */
  readonly as: 'knit' | 'purl' | 'as-set' | 'stockinette' | 'garter' | 'seed' | 'rib';
  /** One repeat of the first row; empty for a pattern without one. */
  readonly unit: readonly Instruction[];
}
