/** Runs the benchmarks one after the other and prints a line for each: `npm run bench`. */

/** A piece of work to be timed, and how to call it in the table. */
export interface Benchmark {
  readonly name: string;
  readonly run: () => unknown;
}

/** Every benchmark; each file beside this one exports its own list. */
const BENCHMARKS: readonly Benchmark[] = [];

const SECONDS_EACH = 1;

console.log(`${'benchmark'.padEnd(48)}${'median ms'.padStart(12)}${'runs'.padStart(8)}`);
for (const { name, run } of BENCHMARKS) {
  const times = await measure(run);
  const median = times[Math.floor(times.length / 2)] ?? NaN;
  console.log(`${name.padEnd(48)}${median.toFixed(3).padStart(12)}${String(times.length).padStart(8)}`);
}

/** The sorted times, in milliseconds, of as many runs as fit after one to warm up. */
async function measure(run: () => unknown): Promise<number[]> {
  await run();
  const times: number[] = [];
  const end = performance.now() + SECONDS_EACH * 1000;
  do {
    const start = performance.now();
    await run();
    times.push(performance.now() - start);
  } while (performance.now() < end);
  return times.sort((a, b) => a - b);
}
