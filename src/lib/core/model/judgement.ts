/** What speaks for and against a break or a needle. */

/** `blocker`: cannot or must not be knitted so; `awkward`: can, but costs; `note`: good to know. */
export type Severity = 'blocker' | 'awkward' | 'note';

/** Every reason there is, with its severity. Codes are never reused. */
export const REASONS = {
  'cuts-cable': 'blocker',
  'cuts-twist': 'blocker',
  'cuts-decrease': 'blocker',
  'cuts-increase': 'blocker',
  'section-broken': 'blocker',
  'needle-too-full': 'blocker',
  'too-few-to-hold': 'blocker',
  'too-many-needles': 'blocker',
  'does-not-reach': 'blocker',
  'yarn-over-first': 'awkward',
  'yarn-over-last': 'awkward',
  'increase-first': 'awkward',
  'increase-last': 'awkward',
  'purl-first': 'awkward',
  'splits-rib': 'awkward',
  'splits-repeat': 'awkward',
  'splits-shaping-pair': 'awkward',
  'bor-inside-needle': 'awkward',
  'edge-off-break': 'awkward',
  'uneven-load': 'awkward',
  'share-above-limit': 'awkward',
  'share-below-limit': 'awkward',
  'under-minimum': 'awkward',
  crowded: 'awkward',
  drift: 'awkward',
  'off-section': 'note',
  'marker-at-end': 'note',
  ladder: 'note'
} as const satisfies Record<string, Severity>;
/** Code of a reason. */
export type ReasonCode = keyof typeof REASONS;

/** One reason about one break or one needle, gathered over all rows in which it holds. */
export interface Reason {
  readonly code: ReasonCode;
  readonly severity: Severity;
  /** The gap of the stage's start ring it is about, or `null` when it is about a needle or the whole layout. */
  readonly break: number | null;
  /** Index of the needle in ring order from N1, or `null`. */
  readonly needle: number | null;
  /** Indices of the rows of the stage in which it holds, ascending; never empty. */
  readonly rows: readonly number[];
  /** Whole-number price, summed over the rows. 0 for notes; blockers have no price that could be paid and carry 0 too. */
  readonly price: number;
  /** Facts for the sentence: for a cut, the stitches `left` and `right` of the break; for a share, `stitches` and `of`. */
  readonly detail: Readonly<Record<string, number>>;
  /** The name of the operation or section it is about, "" when there is none. */
  readonly about: string;
}
