/** A pattern as it was knitted in one size: stages of rows, each with the ring before and after and every operation. */

import type { Diagnostic } from './diagnostic.ts';
import type { Operation } from './operation.ts';
import type { Gauge, NeedleText, Side } from './pattern.ts';
import type { Ring } from './ring.ts';
import type { Span } from './span.ts';

/** `round`: all round the ring; `flat`: back and forth over a run of it. */
export type Shape = 'round' | 'flat';

/** One performed operation: where it stood, what it took, what it made. */
export interface Step {
  readonly operation: Operation;
  /** Position in the ring before the row of the first stitch taken (in ring order); for an operation that takes none, the gap. */
  readonly from: number;
  /** Position in the ring after the row of the first stitch made (in ring order); for one that makes none, the gap. */
  readonly at: number;
  /** Stitches taken and made; equal to the operation's own unless the text says otherwise. */
  readonly takes: number;
  readonly makes: number;
  readonly span: Span;
}

/** A stretch of a row worked in a repeat, in positions of the ring before the row (in ring order). */
export interface RepeatStretch {
  readonly from: number;
  readonly to: number;
  /** Stitches taken by one repeat. */
  readonly unit: number;
}

/**
 * One row as it was knitted. Steps stand in the order of working: in ring order on the right side, against it on the
 * wrong side. A step's `from + takes` may pass the end of the ring: positions are to be wrapped.
 */
export interface Row {
  /** "Rnd 3", "Row 2 (WS)" without the side, "Dec rnd". */
  readonly label: string;
  /** Line in the text, from 1. */
  readonly line: number;
  readonly span: Span;
  readonly shape: Shape;
  readonly side: Side;
  readonly before: Ring;
  readonly after: Ring;
  readonly steps: readonly Step[];
  readonly repeats: readonly RepeatStretch[];
  /** Run of `before` that the row was worked over; the whole ring in a round. Half-open, in ring order. */
  readonly run: { readonly from: number; readonly to: number };
  /** Stitches of the run left unworked, on either side in ring order; 0 and 0 in a round. */
  readonly unworked: { readonly before: number; readonly after: number };
  /** Where the yarn hangs before the first step: a gap of `before`. */
  readonly start: number;
  /** Where the yarn hangs after the last step: a gap of `after`. */
  readonly end: number;
  /** True when the row ends with a turn. */
  readonly turned: boolean;
}

/** Stitches set aside on waste yarn. */
export interface Held {
  readonly name: string;
  readonly ring: Ring;
}

/** A layout that the pattern itself states, where it does not follow from the one before. */
export interface StatedLayout {
  /** Index of the row it is stated before; the number of rows when it holds at the end of the stage. */
  readonly row: number;
  /** Breaks in the ring before that row, in ring order. */
  readonly breaks: readonly number[];
  /** What the text calls the needles, in the order of the breaks; "" for one without a name. */
  readonly names: readonly string[];
}

/** The part of a fabric under one heading. */
export interface Stage {
  readonly name: string;
  /** Line of the heading, from 1. */
  readonly line: number;
  /** `flat` if any of its rows turns. */
  readonly shape: Shape;
  /** The side facing at the first row. */
  readonly side: Side;
  /** Which tube: 0 for the first, others for thumbs and fingers worked from held stitches. */
  readonly tube: number;
  /** The ring before the first line under the heading; empty before the cast-on. */
  readonly entry: Ring;
  /** The ring that the layout of the stage is for: before the first row, after any cast-on. */
  readonly start: Ring;
  /** The ring after the last row. */
  readonly exit: Ring;
  readonly rows: readonly Row[];
  /** For a flat stage, the run of `start` that is worked; the whole ring in a round stage. */
  readonly run: { readonly from: number; readonly to: number };
  readonly held: readonly Held[];
  readonly stated: readonly StatedLayout[];
  /** Prose kept with the stage. */
  readonly notes: readonly string[];
}

/** A pattern knitted in one size. */
export interface Fabric {
  readonly title: string;
  /** Name of the size; "" when the pattern has only one. */
  readonly size: string;
  readonly sizeIndex: number;
  readonly sizes: readonly string[];
  readonly gauge: Gauge;
  readonly needles: NeedleText;
  readonly stages: readonly Stage[];
  /** Trouble found while knitting this size; that of reading is in the pattern. */
  readonly diagnostics: readonly Diagnostic[];
}
