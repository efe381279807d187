/** Increases and decreases that are told by their place, or spread over rows. */

import type { Assertion, Instruction } from './pattern.ts';
import type { RowExtent } from './repeating.ts';
import type { Sized } from './sized.ts';
import type { Span } from './span.ts';

/** Increases or decreases `count` stitches at each of the places, and works what lies between as it presents itself. */
export interface Shape {
  readonly kind: 'shape';
  readonly change: 'inc' | 'dec';
  readonly count: Sized<number>;
  /** `markers`: on either side of them; `pair`: outside the next two. */
  readonly places: 'ends' | 'beginning' | 'end' | 'markers' | 'pair';
  /** How many markers have it; `null` for every one ahead. */
  readonly markers: number | null;
  readonly span: Span;
}

/** Rows that increase or decrease among plain ones: "dec 1 st at each end of every 4th row 5 times". */
export interface ShapeRows {
  readonly kind: 'shape-rows';
  readonly change: 'inc' | 'dec';
  /** Worked where the stage names no row for it ("Dec rnd"). */
  readonly body: readonly Instruction[];
  /** Plain rows before each: 3 for "every 4th". */
  readonly plainBetween: number;
  /** True when the first is the next row, before any plain one. */
  readonly atOnce: boolean;
  /** `null`: as long as the rows last that it is worked along with. */
  readonly extent: RowExtent | null;
  /** True for "at the same time": along with the rows told just before. */
  readonly during: boolean;
  readonly sizes: readonly number[] | null;
  readonly assertions: readonly Assertion[];
  readonly span: Span;
}

/** Goes on as the last rows did, with one number growing or falling: "working 1 fewer st between decs each time". */
export interface Progression {
  readonly kind: 'progression';
  /** Stitches more from one shaped row to the next, negative for fewer; `null` when the text does not say. */
  readonly step: number | null;
  readonly extent: Extract<RowExtent, { kind: 'until' | 'all-worked' }>;
  readonly sizes: readonly number[] | null;
  readonly assertions: readonly Assertion[];
  readonly span: Span;
}
