/** Sizes beyond which a text is refused, so that nothing pasted can hang the program. */

/** Longest pattern text that is read, in UTF-16 code units (about 1 MB). */
export const MOST_TEXT = 1_000_000;

/** Most stitches in one ring. */
export const MOST_STITCHES = 4_000;

/** Most rows in one pattern. */
export const MOST_ROWS = 20_000;

/** Most operations performed in one pattern; reached only by absurd repeats. */
export const MOST_STEPS = 4_000_000;
