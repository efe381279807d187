/** How a text speaks of needles: which one it means, and what it moves from one to another without working it. */

import type { Sized } from './sized.ts';
import type { Span } from './span.ts';

/**
 * A needle as the text points to it. `name`: a role in small letters: the number of a numbered needle ("1"), or what the
 * needle carries ("heel", "first side"). `same`: the one that took the last stitch. `empty`: one without stitches, which
 * the text may name at once.
 */
export type NeedleRef =
  | { readonly kind: 'named'; readonly name: string }
  | { readonly kind: 'same' }
  | { readonly kind: 'empty'; readonly name: string | null };

/** Several needles: some by name, or every one in turn. */
export type NeedleRefs = readonly NeedleRef[] | 'each';

/** What flat work goes over: told needles, or a section or count. */
export type FlatOver = NeedleRefs | { readonly section: string | null; readonly count: Sized<number> | null };

/** Stitches or names that change needles without being worked. */
export type Arrangement =
  /**
   * Slips stitches to another needle: "sl first 2 sts of 2nd needle to 1st needle". `count` null: all of them. `end` null:
   * those that lie next to the other needle. `from` null: the stitches in front of the hands. `until`: as many as it takes
   * for the other needle to hold that number.
   */
  | {
      readonly kind: 'move-stitches';
      readonly count: Sized<number> | null;
      readonly end: 'first' | 'last' | null;
      readonly from: NeedleRef | null;
      readonly until: Sized<number> | null;
      readonly to: NeedleRef;
      readonly span: Span;
    }
  /**
   * Puts a run of stitches on needles of its own: "put the other 28 sts on one needle, the front needle". `of`: the needles
   * or the section they come from; `rest`: all that is not
   * worked now; `run`: all that is. Loads as many as needles.
   */
  | {
      readonly kind: 'gather';
      readonly of: { readonly kind: 'rest' | 'run' } | { readonly kind: 'section'; readonly name: string } | NeedleRefs;
      readonly loads: readonly (Sized<number> | null)[];
      readonly name: string | null;
      readonly span: Span;
    }
  /** Gives a needle a name: "(this is the 1st needle again)", "the second side needle is now the left needle". */
  | { readonly kind: 'name-needle'; readonly needle: NeedleRef; readonly name: string; readonly span: Span }
  /** Flat work goes over these needles, or this section: "work back and forth on needle B only". */
  | {
      readonly kind: 'work-flat';
      readonly over: FlatOver;
      readonly span: Span;
    }
  /** The yarn is joined anew at the first stitch of a needle. */
  | { readonly kind: 'move-yarn'; readonly to: NeedleRef; readonly span: Span }
  /** The round begins here from now on, or at the first stitch of a needle. */
  | { readonly kind: 'move-bor'; readonly to: NeedleRef | null; readonly span: Span };
