/** Trouble with the pattern text, as data with a place. */

import type { Span } from './span.ts';

/** `error`: the arithmetic or the reading fails; `warning`: something was not understood; `note`: kept as prose. */
export type DiagnosticSeverity = 'error' | 'warning' | 'note';

/** One mistake in the text. Collected, never thrown; one mistake gives one diagnostic. */
export interface Diagnostic {
  readonly severity: DiagnosticSeverity;
  /** Stable, kebab-case, never reused. */
  readonly code: string;
  readonly span: Span;
  /** Says where, what was expected, what was found. Ends with a full stop. */
  readonly message: string;
  /** What to do about it; `null` when there is no obvious remedy. */
  readonly remedy: string | null;
  /** The number that was expected or printed, where the trouble is about a number. */
  readonly expected: number | null;
  /** The number that was found by knitting. */
  readonly found: number | null;
  /** Indices of the sizes in which it happens; empty when it does not depend on the size. */
  readonly sizes: readonly number[];
}
