/** Which earlier rows are worked again, and when that stops. */

import type { NeedleRefs } from './needle-words.ts';
import type { Side } from './pattern.ts';
import type { Sized } from './sized.ts';

/** Which earlier rows are worked again. */
export type RowReference =
  | { readonly kind: 'numbers'; readonly numbers: readonly number[] }
  | { readonly kind: 'last'; readonly count: number }
  | { readonly kind: 'named'; readonly name: string };

/** A length to work to, in centimetres. */
export interface LengthStop {
  readonly lengthCm: Sized<number>;
  /** What is measured: the whole piece, or what was worked under this heading. */
  readonly from: 'cast-on' | 'stage';
  /** The side of the last row, where the text says with which it ends; rows are added for it. */
  readonly lastSide: Side | null;
}

/** When repeating rows stops. */
export type RowExtent =
  /** `more`: after the first time; `total`: counting it; `unclear`: the printed count decides. */
  | { readonly kind: 'times'; readonly count: Sized<number>; readonly meaning: 'more' | 'total' | 'unclear' }
  /** Until the ring (or one section, or each of some needles) has `count` stitches. */
  | {
      readonly kind: 'until';
      readonly count: Sized<number>;
      readonly of: string | null;
      readonly on: NeedleRefs | null;
    }
  /** For this many rows; `total`: with those worked the first time. The last repeat may be cut short. */
  | { readonly kind: 'rows'; readonly count: Sized<number>; readonly meaning: 'more' | 'total' }
  /** Until a turn leaves nothing unworked. */
  | { readonly kind: 'all-worked' }
  /** Up to a length; needs a row gauge. */
  | ({ readonly kind: 'length' } & LengthStop)
  /** As far as the knitter finds right: the text gives no number. */
  | { readonly kind: 'free' };
