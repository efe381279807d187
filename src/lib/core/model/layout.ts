/** The breaks of one moment: which stitches sit on which needle. */

/**
 * Breaks of a ring, ascending, each 0 to n - 1: the gaps where one needle ends and the next begins. Needle N1 begins at
 * the first break, so that the last needle reaches across the BOR when the first break is not 0. With one holder the
 * only break is gap 0: nothing ends there but the round.
 */
export interface Layout {
  readonly breaks: readonly number[];
}

/** Stitches on each needle, N1 first. They add up to `stitches`. */
export function loadsOf(layout: Layout, stitches: number): number[] {
  const { breaks } = layout;
  return breaks.map((from, index) => {
    const to = breaks[index + 1] ?? (breaks[0] ?? 0) + stitches;
    return to - from;
  });
}

/** The layout with these loads, the first needle starting at gap `first` (default: the BOR). */
export function layoutFromLoads(loads: readonly number[], first = 0): Layout {
  let at = first;
  const breaks = loads.map((load) => {
    const here = at;
    at += load;
    return here;
  });
  const stitches = at - first;
  const wrapped = breaks.map((gap) => (stitches === 0 ? 0 : gap % stitches));
  return { breaks: [...new Set(wrapped)].sort((left, right) => left - right) };
}
