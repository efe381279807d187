/**
 * Reads and knits a great many spoilt texts: `npm run fuzz`, or `npm run fuzz -- SEED RUNS`. The same seed gives the same
 * texts. Prints the first text that breaks a law or takes too long, and leaves with 1.
 */

import fc from 'fast-check';
import { knitText } from '$lib/core/index.ts';
import { brokenLaws } from '../support/laws.ts';
import { mutated } from '../support/mutations.ts';
import { textsIn } from '../support/texts.ts';

const DEFAULT_SEED = 64;
const DEFAULT_RUNS = 100_000;

/** Texts between two lines of progress. */
const BATCH = 1000;

/** Longest that one text may take, in milliseconds: far beyond the slowest example on a busy machine. */
const LONGEST = 20_000;

function keepsLaws(text: string): void {
  const start = performance.now();
  const broken = brokenLaws(knitText(text));
  const spent = performance.now() - start;
  if (broken.length > 0) throw new Error(broken.slice(0, 5).join('\n'));
  if (spent > LONGEST) throw new Error(`took ${Math.round(spent)} ms, more than ${LONGEST}`);
}

function fuzz(seed: number, runs: number): boolean {
  const holds = fc.property(mutated(textsIn().map(({ text }) => text)), keepsLaws);
  for (let done = 0; done < runs; done += BATCH) {
    const found = fc.check(holds, { seed: seed + done, numRuns: Math.min(BATCH, runs - done) });
    if (found.failed) {
      const [text] = found.counterexample ?? [];
      console.log(`seed ${found.seed}, path ${found.counterexamplePath}\n${String(found.errorInstance)}\n\n${text}`);
      return false;
    }
    console.log(`${Math.min(done + BATCH, runs)} of ${runs}`);
  }
  return true;
}

const [seed = DEFAULT_SEED, runs = DEFAULT_RUNS] = process.argv.slice(2).map(Number);
process.exitCode = fuzz(seed, runs) ? 0 : 1;
