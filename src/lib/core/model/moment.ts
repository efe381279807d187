/** One moment of the work: which needle does what, and every stitch on it. Both the drawing and the words are made from it. */

import type { Side } from './pattern.ts';
import type { Letter, Setup } from './setup.ts';
import type { Face, Loop, StitchId } from './stitch.ts';

/** What a needle does now. A resting needle is not worked at all in this stage; a holding one waits in this round. */
export const NEEDLE_STATES = ['feeding', 'working', 'holding', 'resting', 'free'] as const;
/** One of `NEEDLE_STATES`. */
export type NeedleState = (typeof NEEDLE_STATES)[number];

/** A stitch on a needle. */
export interface HeldStitch {
  readonly id: StitchId;
  readonly face: Face;
  readonly loop: Loop;
  /** Section it belongs to; `null` when it belongs to none. */
  readonly section: string | null;
  /** True when the present row crosses it over a neighbour: it lies in a cable or twist. */
  readonly crossed: boolean;
}

/** A run of one section on one needle. */
export interface Piece {
  /** Name of the section, "" for stitches of none. */
  readonly name: string;
  readonly stitches: number;
}

/** A marker on a needle. */
export interface HungMarker {
  /** "BOR" for the beginning of round. */
  readonly name: string;
  readonly kind: 'ring' | 'locking';
  /** Stitches of this needle before it, 0 to its load; for a locking marker the stitch it hangs in is the next one. */
  readonly after: number;
}

/** One needle (of a magic loop: one group) at this moment. */
export interface NeedleMoment {
  readonly letter: Letter;
  /** 1 for N1; `null` for a needle without stitches. */
  readonly number: number | null;
  /** Which group of a magic loop; `null` elsewhere. */
  readonly group: 'front' | 'back' | null;
  readonly state: NeedleState;
  /** In the order of the ring, which is the order of working on the right side. */
  readonly stitches: readonly HeldStitch[];
  readonly pieces: readonly Piece[];
  readonly markers: readonly HungMarker[];
  /** What is done first and last on this needle in the present row: "k", "p", "yo"; "" when it is not worked. */
  readonly firstIs: string;
  readonly lastIs: string;
}

/** One moment: the start of one pass. */
export interface Moment {
  readonly setup: Setup;
  readonly stage: string;
  /** Label of the row; "" before a stage's first row when it has none. */
  readonly row: string;
  readonly side: Side;
  /** Needles with stitches first, N1 to the last; then those without. */
  readonly needles: readonly NeedleMoment[];
  /** Which tip or needle works: index into `needles` of a free needle, or of the feeding one when its own tip works; `null` when nothing is worked. */
  readonly working: number | null;
  /** Index of the needle being worked; `null` when nothing is worked. */
  readonly feeding: number | null;
  /** The yarn hangs from this stitch: needle index and stitch index on it; `null` before anything was worked. */
  readonly yarn: { readonly needle: number; readonly stitch: number } | null;
  /** Where the beginning of round lies: needle index and stitches of it before the BOR. */
  readonly bor: { readonly needle: number; readonly after: number } | null;
}
