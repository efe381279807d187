/** The live stitches of one tube in working order, with what hangs among them. */

import type { Stitch } from './stitch.ts';

/** A marker. A ring marker sits in a gap between two stitches; a locking marker hangs in a stitch. */
export interface Marker {
  /** The letter or name in the text ("A"), or m1, m2 … in the order of placing. The marker of the beginning of round is "BOR". */
  readonly name: string;
  readonly kind: 'ring' | 'locking';
  /** For a ring marker the gap, 0 to the number of stitches; for a locking marker the position of its stitch. */
  readonly at: number;
}

/** A run of neighbouring stitches that belongs to a named section. A section that lies across the BOR has two runs. */
export interface SectionRun {
  readonly name: string;
  /** Gap before the first stitch of the run. */
  readonly from: number;
  /** Gap after its last stitch; always greater than `from`. */
  readonly to: number;
}

/**
 * The live stitches of one tube, from the beginning of round (BOR).
 *
 * Gap `g` lies before stitch `g`; gap 0 is the BOR, and gap `stitches.length` is the same place again. Section runs
 * are in ring order and do not overlap; stitches outside every run belong to no section.
 */
export interface Ring {
  readonly stitches: readonly Stitch[];
  /** In ring order; markers in the same gap in the order in which the hands meet them. */
  readonly markers: readonly Marker[];
  readonly sections: readonly SectionRun[];
}

/** A ring without stitches: nothing has been cast on yet. */
export const EMPTY_RING: Ring = { stitches: [], markers: [], sections: [] };

/** Name of the marker at the beginning of round. */
export const BOR = 'BOR';

/** The section that the stitch at a position belongs to, or `null`. */
export function sectionAt(ring: Ring, position: number): string | null {
  return ring.sections.find((run) => run.from <= position && position < run.to)?.name ?? null;
}

/** Brings a gap or position into the range 0 to `stitches` - 1; gap `stitches` is gap 0. */
export function wrap(gap: number, stitches: number): number {
  return stitches === 0 ? 0 : ((gap % stitches) + stitches) % stitches;
}
