/** The shape of a plan as JSON: the public contract, version 1. Fields may be added, none removed or changed. */

/** One needle at the start or the end of a stage. */
export interface NeedleJson {
  /** "N1" …, counted from the BOR. */
  readonly number: string;
  readonly needle: string;
  /** Only with a magic loop. */
  readonly group?: 'front' | 'back';
  readonly state: string;
  readonly stitches: number;
  readonly sections: readonly { readonly name: string; readonly stitches: number }[];
  /** `after`: stitches of this needle before the marker. */
  readonly markers: readonly { readonly name: string; readonly kind: string; readonly after: number }[];
  /** What is worked first and last on it: "k", "p", "k2tog"; "" when it is not worked. */
  readonly firstIs: string;
  readonly lastIs: string;
}

/** One row as it was knitted. */
export interface RowJson {
  readonly label: string;
  readonly line: number;
  readonly side: string;
  /** Stitches of the ring in a round, of the run in work in a flat row. */
  readonly before: number;
  /** Stitches taken from the needles. */
  readonly worked: number;
  readonly after: number;
  /** Left unworked by a turn, in ring order. */
  readonly unworked: { readonly before: number; readonly after: number };
  /** Stitches per needle before the row, in ring order; in a flat stage the needle in work first. */
  readonly loads: readonly number[];
  /** What is worked on each of these needles. */
  readonly needles: readonly string[];
}

/** One thing that a layout pays for. */
export interface PayJson {
  readonly code: string;
  /** The gap it is about, or `null`. */
  readonly break: number | null;
  /** "all", or the labels of the rows. */
  readonly rows: 'all' | readonly string[];
  readonly price: number;
  readonly message: string;
}

/** One of the offered layouts. */
export interface AlternativeJson {
  readonly loads: readonly number[];
  readonly breaks: readonly number[];
  readonly price: number;
  readonly pays: readonly PayJson[];
}

/** One finding about the layout in use. */
export interface CheckJson {
  readonly severity: string;
  readonly code: string;
  readonly stage: string;
  /** Label of the first row in which it holds; "" when it is about the stage. */
  readonly row: string;
  readonly rows: 'all' | readonly string[];
  readonly break: number | null;
  readonly detail: Readonly<Record<string, number>>;
  readonly message: string;
  /** A layout without this finding, or `null` when there is none better. */
  readonly fix: { readonly loads: readonly number[] } | null;
}

/** One movement of stitches. */
export interface MoveJson {
  readonly kind: 'slip' | 'work';
  readonly stitches: number;
  readonly from?: string;
  readonly to?: string;
  readonly onto?: string;
  readonly end?: 'first' | 'last';
}

/** One stage of a plan. */
export interface StageJson {
  readonly name: string;
  readonly line: number;
  readonly worked: 'round' | 'flat';
  readonly side: string;
  readonly total: { readonly start: number; readonly end: number };
  readonly start: readonly NeedleJson[];
  readonly end: readonly NeedleJson[];
  /** Stitches on waste yarn while the stage is worked. */
  readonly held: readonly { readonly name: string; readonly stitches: number }[];
  readonly moves: readonly MoveJson[];
  readonly rows: readonly RowJson[];
  readonly alternatives: readonly AlternativeJson[];
  readonly checks: readonly CheckJson[];
  /** Where the layout in use comes from: "best", "stated" in the pattern, or "tried". */
  readonly origin: string;
  /** Why there is no layout; `null` when there is one. */
  readonly impossible: { readonly code: string; readonly message: string } | null;
}

/** One mistake in the pattern text. Lines and columns count from 1, in UTF-16 code units. */
export interface DiagnosticJson {
  readonly severity: string;
  readonly code: string;
  readonly line: number;
  readonly column: number;
  readonly length: number;
  readonly expected: number | null;
  readonly found: number | null;
  readonly message: string;
  readonly remedy: string | null;
  /** Names of the sizes it happens in; empty when it does not depend on the size. */
  readonly sizes: readonly string[];
}

/** One plan: a pattern on one set-up in one size. */
export interface PlanJson {
  readonly roundsplit: 1;
  readonly title: string;
  readonly size: string;
  readonly sizes: readonly string[];
  readonly setup: {
    readonly id: string;
    readonly name: string;
    readonly holds: number;
    readonly needles: readonly string[];
  };
  readonly stages: readonly StageJson[];
  readonly diagnostics: readonly DiagnosticJson[];
}
