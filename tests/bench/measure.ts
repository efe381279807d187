/** Timing: medians of one run, told as ratios, since the machine's own speed says nothing. */

/** A ratio with what it should be. */
export interface Ratio {
  readonly name: string;
  readonly value: number;
  readonly aim: string;
}

/** Median time of a piece of work in milliseconds, after one run to warm up (none when it is timed only once). */
export function median(work: () => unknown, runs: number): number {
  if (runs > 1) for (let warm = 0; warm < Math.ceil(runs / 2); warm += 1) work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((left, right) => left - right)[Math.floor(runs / 2)] ?? NaN;
}
