/** A pattern as it was read: stages of statements, with a place in the text for each. No stitch has been knitted yet. */

import type { Diagnostic } from './diagnostic.ts';
import type { Arrangement, FlatOver, NeedleRef, NeedleRefs } from './needle-words.ts';
import type { Operation } from './operation.ts';
import type { PlainStitch } from './plain-rows.ts';
import type { LengthStop, RowExtent, RowReference } from './repeating.ts';
import type { Progression, Shape, ShapeRows } from './shaping.ts';
import type { Sized } from './sized.ts';
import type { Span } from './span.ts';
import type { Face } from './stitch.ts';

/** Which side of the fabric faces the knitter. */
export type Side = 'RS' | 'WS';

/** Tension over 10 cm; either number may be missing from the text. */
export interface Gauge {
  readonly stitchesPer10cm: number | null;
  readonly rowsPer10cm: number | null;
}

/** What the text says about needles. */
export interface NeedleText {
  /** Thickness in millimetres. */
  readonly thicknessMm: number | null;
  /** Length in centimetres. */
  readonly lengthCm: number | null;
}

/** A place that working goes on to. */
export type Target =
  | { readonly kind: 'end' }
  /** The next `count` stitches. */
  | { readonly kind: 'next'; readonly count: Sized<number> }
  /** `count` stitches before the end of the row (or of the stretch that a prefix names). */
  | { readonly kind: 'last'; readonly count: Sized<number> }
  /** `before` stitches before a marker; `name` null means any, `nth` the how manieth of those ahead. */
  | { readonly kind: 'marker'; readonly name: string | null; readonly before: Sized<number>; readonly nth: number }
  /** `before` stitches before the gap that the last turn left. */
  | { readonly kind: 'gap'; readonly before: Sized<number> }
  /** `before` stitches before the next double stitch. */
  | { readonly kind: 'double-stitch'; readonly before: Sized<number> }
  /** The middle of a named section. */
  | { readonly kind: 'centre'; readonly name: string }
  /** The end of a named section; `count`: how many stitches the text gives it, for a text that has not named it before. */
  | { readonly kind: 'section'; readonly name: string; readonly count: Sized<number> | null }
  /** `before` stitches before the end of a needle; `needle` null means the one that is being worked. */
  | { readonly kind: 'needle'; readonly needle: NeedleRef | null; readonly before: Sized<number> };

/** How often a group is worked. */
export type Extent =
  | { readonly kind: 'times'; readonly count: Sized<number> }
  /** "7 times" after an asterisk: 7 or 8 in all; the printed count decides. */
  | { readonly kind: 'unclear-times'; readonly count: Sized<number> }
  | { readonly kind: 'to'; readonly target: Target };

/** One instruction inside a row. */
export type Instruction =
  /** Works one operation `count` times: k4, ssk. */
  | { readonly kind: 'work'; readonly operation: Operation; readonly count: Sized<number>; readonly span: Span }
  /** Works one operation, or the stitches as they present themselves (`null`), up to a target. */
  | { readonly kind: 'work-to'; readonly operation: Operation | null; readonly target: Target; readonly span: Span }
  /** Works `count` stitches in the established pattern: "work 20 sts as panel". */
  | { readonly kind: 'work-as-set'; readonly count: Sized<number>; readonly span: Span }
  | { readonly kind: 'group'; readonly body: readonly Instruction[]; readonly extent: Extent; readonly span: Span }
  /** Works the body into one stitch: (k1, p1, k1) in next st. */
  | { readonly kind: 'into-one'; readonly body: readonly Instruction[]; readonly span: Span }
  /** Spreads increases or decreases over the rest of the row; gaps differ by at most one. */
  | { readonly kind: 'evenly'; readonly operation: Operation; readonly count: Sized<number>; readonly span: Span }
  | Shape
  /** `name` null: the next marker, or a new one named m1, m2 … A marker placed as "BOR" moves the beginning of round there. */
  | {
      readonly kind: 'marker';
      readonly action: 'place' | 'slip' | 'remove';
      readonly name: string | null;
      readonly span: Span;
    }
  /** Takes out every marker of the row but that of the BOR. */
  | { readonly kind: 'remove-markers'; readonly span: Span }
  | { readonly kind: 'locking-marker'; readonly name: string | null; readonly span: Span }
  /** Picks up and knits stitches along an edge, at the present position. `atMost`: the other end of a range, 0 without one. */
  | { readonly kind: 'pick-up'; readonly count: Sized<number>; readonly atMost: number; readonly span: Span }
  /** Casts on at the present position, over a gap. */
  | { readonly kind: 'cast-on-here'; readonly count: Sized<number>; readonly span: Span }
  /** `count` null: all that are left. */
  | { readonly kind: 'bind-off'; readonly count: Sized<number> | null; readonly span: Span }
  /** Puts the next stitches on waste yarn. `name` null: the section or stretch they come from gives the name. */
  | {
      readonly kind: 'hold';
      readonly count: Sized<number>;
      readonly name: string | null;
      readonly span: Span;
    }
  /** Works `count` stitches with waste yarn and puts them back, so that an opening can be made there later. */
  | { readonly kind: 'waste-yarn'; readonly count: Sized<number>; readonly span: Span }
  /** Turns and leaves the rest of the row unworked. `mark`: how the turning stitch is secured. */
  | { readonly kind: 'turn'; readonly mark: 'none' | 'wrap' | 'double'; readonly span: Span }
  /** Works a body over one named section only: "Instep: …". */
  | { readonly kind: 'over'; readonly section: string; readonly body: readonly Instruction[]; readonly span: Span }
  /** Works a body over the stitches up to a target: "work the next 15 sts: *k3, p2; rep from * to end". */
  | {
      readonly kind: 'over-target';
      readonly target: Target;
      readonly body: readonly Instruction[];
      readonly span: Span;
    }
  /** Works a body over each of some needles: "1st and 3rd needles: …". */
  | {
      readonly kind: 'over-needles';
      readonly needles: NeedleRefs;
      readonly body: readonly Instruction[];
      readonly span: Span;
    }
  /** From here on the stitches go on to this needle: "with an empty needle …"; `null` ends that. */
  | { readonly kind: 'take-needle'; readonly needle: NeedleRef | null; readonly span: Span }
  | Arrangement;

/** A count printed in the text; checked against what was knitted, never obeyed. */
export type Assertion =
  | { readonly kind: 'total'; readonly count: Sized<number>; readonly span: Span }
  /** Negative for stitches decreased. */
  | { readonly kind: 'change'; readonly count: Sized<number>; readonly span: Span }
  /** Counts the stitches of one section, of the run in work ("17 heel sts rem"), or the rows of the stage. */
  | {
      readonly kind: 'part';
      readonly of: string;
      readonly count: Sized<number>;
      readonly span: Span;
    }
  | { readonly kind: 'rows'; readonly count: Sized<number>; readonly span: Span }
  /** Stitches on each needle, in ring order from the BOR. `names`: how the text calls them; `null` when it only lists them. */
  | {
      readonly kind: 'loads';
      readonly loads: readonly Sized<number>[];
      readonly names: readonly string[] | null;
      readonly span: Span;
    }
  /** Stitches on one needle, or on each of several. */
  | { readonly kind: 'on-needles'; readonly needles: NeedleRefs; readonly count: Sized<number>; readonly span: Span };

/** Which rows a line of instructions is for. */
export type RowNumbers =
  /** Rows by number, in the order written; each is worked once. */
  | { readonly kind: 'numbers'; readonly numbers: readonly number[] }
  /** All odd or even rows from `from` on, as far as the numbered rows around them reach. */
  | { readonly kind: 'parity'; readonly parity: 'odd' | 'even'; readonly from: number }
  /** "Next rnd", "Dec rnd" and rows without a heading: worked where they stand. */
  | {
      readonly kind: 'next';
      /** How many there are: 7 for "Next 7 rnds"; one when missing. */
      readonly times?: number;
    };

/** One line of row instructions with its heading. */
export interface RowText {
  readonly kind: 'row';
  /** "Rnd" or "Row" as written; rounds and rows differ only in the side they may face. */
  readonly noun: string;
  /** How its number is printed: "Rnd 5", "5th rnd", "R5", "5". */
  readonly numbering: 'noun' | 'ordinal' | 'letter' | 'bare';
  readonly numbers: RowNumbers;
  /** "Dec rnd", so that it can be repeated by name; `null` without one. */
  readonly name: string | null;
  /** What its name or a note says it is for; `null` when they say nothing. */
  readonly purpose: 'inc' | 'dec' | null;
  /** The side the text claims; `null` when it claims none. */
  readonly side: Side | null;
  /** Sizes that work this line; `null` means all. */
  readonly sizes: readonly number[] | null;
  readonly body: readonly Instruction[];
  readonly assertions: readonly Assertion[];
  readonly span: Span;
}

/** One statement under a heading. */
export type Statement =
  | RowText
  | {
      readonly kind: 'cast-on';
      readonly count: Sized<number>;
      readonly assertions: readonly Assertion[];
      readonly span: Span;
    }
  | { readonly kind: 'join'; readonly marker: boolean; readonly span: Span }
  /** Names runs of the ring, from the BOR on. */
  | {
      readonly kind: 'sections';
      readonly runs: readonly { readonly name: string; readonly count: Sized<number> }[];
      readonly span: Span;
    }
  | {
      readonly kind: 'repeat-rows';
      readonly rows: RowReference;
      readonly extent: RowExtent;
      /** Plain rows between two repeats: 1 for "every other rnd", 2 for "every third". */
      readonly plainBetween: number;
      readonly sizes: readonly number[] | null;
      readonly assertions: readonly Assertion[];
      readonly span: Span;
    }
  | ShapeRows
  | Progression
  /** Rows of a simple pattern, counted. */
  | ({
      readonly kind: 'even';
      readonly rows: Sized<number>;
      readonly sizes: readonly number[] | null;
      readonly assertions: readonly Assertion[];
      readonly span: Span;
    } & PlainStitch)
  /** Rows of a simple pattern up to a length; needs a row gauge. */
  | ({
      readonly kind: 'even-until';
      readonly sizes: readonly number[] | null;
      readonly assertions: readonly Assertion[];
      readonly span: Span;
    } & PlainStitch &
      LengthStop)
  /** Rows that are worked as far as the knitter finds right: "until leg is desired length". None is counted. */
  | {
      readonly kind: 'free-stop';
      readonly sizes: readonly number[] | null;
      readonly assertions: readonly Assertion[];
      readonly span: Span;
    }
  /** Puts stitches that were set aside back on the needles, as a ring of their own. */
  | {
      readonly kind: 'resume';
      readonly name: string | null;
      readonly count: Sized<number> | null;
      readonly span: Span;
    }
  /** Opens a place that was knitted with waste yarn: its stitches, on both edges, are a ring of their own. */
  | { readonly kind: 'open'; readonly count: Sized<number>; readonly span: Span }
  /** Ends the piece: grafted, drawn through, or fastened off. `counts`: stitches per side for a graft. */
  | {
      readonly kind: 'close';
      readonly how: 'graft' | 'draw-through' | 'bind-off';
      readonly count: Sized<number> | null;
      readonly span: Span;
    }
  /**
   * States a layout: stitches per needle in ring order from the BOR, and how the text calls the needles (`null`: by number).
   * A single load of `null` for each needle: "divide evenly over 4 needles".
   */
  | {
      readonly kind: 'layout';
      readonly loads: readonly (Sized<number> | null)[];
      readonly names: readonly string[] | null;
      readonly span: Span;
    }
  /** Stitches change needles, or needles change names, between two rows. */
  | { readonly kind: 'arrange'; readonly actions: readonly Arrangement[]; readonly span: Span }
  | { readonly kind: 'check'; readonly assertion: Assertion; readonly span: Span }
  /** Says of what the stitches are a multiple: 8 plus 1. */
  | { readonly kind: 'multiple'; readonly of: Sized<number>; readonly plus: Sized<number>; readonly span: Span }
  /** Prose without an instruction; kept and marked so that nothing is dropped in silence. */
  | { readonly kind: 'prose'; readonly text: string; readonly span: Span };

/** The part of a pattern under one heading. */
export interface StageText {
  readonly name: string;
  /** Line of the heading, from 1. */
  readonly line: number;
  readonly heading: Span;
  /** The section or count that the stage is worked flat over ("on the 32 heel sts"); `null` when it says nothing of the kind. */
  readonly over: FlatOver | null;
  readonly statements: readonly Statement[];
  readonly span: Span;
}

/** A pattern as it was read. */
export interface Pattern {
  readonly title: string;
  /** Names of the sizes, smallest first; one unnamed size is `['']`. */
  readonly sizes: readonly string[];
  readonly gauge: Gauge;
  readonly needles: NeedleText;
  /** What stands before the first heading, kept as prose. */
  readonly introduction: readonly Statement[];
  readonly stages: readonly StageText[];
  /** What was not understood while reading. */
  readonly diagnostics: readonly Diagnostic[];
}

/** The face that a stitch shows on the right side when it is worked to show `face` on `side`. */
export function faceOnRightSide(face: Face, side: Side): Face {
  if (side === 'RS') return face;
  return face === 'knit' ? 'purl' : 'knit';
}
