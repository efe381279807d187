/** One live loop on a needle. */

/** Identity of a stitch; unique within one fabric and never used again. */
export type StitchId = number;

/** How a stitch shows on the right side of the fabric. */
export const FACES = ['knit', 'purl'] as const;
/** One of `FACES`. */
export type Face = (typeof FACES)[number];

/** What happened to the loop when it was last met: worked plainly, slipped, wrapped by a turn, pulled into a double stitch. */
export const LOOPS = ['plain', 'slipped', 'wrapped', 'double'] as const;
/** One of `LOOPS`. */
export type Loop = (typeof LOOPS)[number];

/** A live loop. It keeps its identity while it is knitted in place; a decrease makes a new one with several parents. */
export interface Stitch {
  readonly id: StitchId;
  readonly face: Face;
  readonly loop: Loop;
  /** The stitches that were worked into this one when it was made; empty for a cast-on, yarn-over or picked-up stitch. */
  readonly parents: readonly StitchId[];
}
