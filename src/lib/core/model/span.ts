/** Where something stands in the pattern text. */

/** A half-open stretch of the text, in UTF-16 code units counted from 0. */
export interface Span {
  /** Offset of the first code unit. */
  readonly from: number;
  /** Offset just after the last code unit; never less than `from`. */
  readonly to: number;
}
