/** Small rings of stitches on needles, told as their breaks. */

/** Every way to end so many needles in a ring: ascending gaps counted from the BOR. */
export function arrangementsOf(stitches: number, count: number, from = 0): number[][] {
  if (count === 0) return [[]];
  const found: number[][] = [];
  for (let gap = from; gap < stitches; gap += 1) {
    for (const rest of arrangementsOf(stitches, count - 1, gap + 1)) found.push([gap, ...rest]);
  }
  return found;
}

/** How many stitches lie on each needle, from the first break on. */
export function loadsOf(breaks: readonly number[], stitches: number): number[] {
  return breaks.map((start, index) => (breaks[index + 1] ?? breaks[0]! + stitches) - start);
}
