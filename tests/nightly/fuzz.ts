/**
 * Reads and knits a great many spoilt texts: `npm run fuzz`, or `npm run fuzz -- SEED RUNS`. The same seed gives the same
 * texts. Prints the first text that breaks a law or takes too long, and leaves with 1.
 *
 * The texts are knitted in a thread of their own, so that one that never comes to an end is found as well.
 */

import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
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
const LONGEST = 60_000;

/** What is to be tried. */
interface Task {
  readonly seed: number;
  readonly runs: number;
}

/** What the thread says: which text comes next, how far it is, or what it found. */
type Message =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'progress'; readonly done: number }
  | { readonly kind: 'found'; readonly report: string };

function say(message: Message): void {
  parentPort?.postMessage(message);
}

function keepsLaws(text: string): void {
  say({ kind: 'text', text });
  const broken = brokenLaws(knitText(text));
  if (broken.length > 0) throw new Error(broken.slice(0, 5).join('\n'));
}

function fuzz({ seed, runs }: Task): void {
  const holds = fc.property(mutated(textsIn().map(({ text }) => text)), keepsLaws);
  for (let done = 0; done < runs; done += BATCH) {
    const found = fc.check(holds, { seed: seed + done, numRuns: Math.min(BATCH, runs - done) });
    if (found.failed) {
      const [text] = found.counterexample ?? [];
      say({ kind: 'found', report: `${String(found.errorInstance)}\nseed ${found.seed}\n\n${text}` });
      return;
    }
    say({ kind: 'progress', done: Math.min(done + BATCH, runs) });
  }
}

/** Watches the thread, and stops everything when a text takes too long. */
function watch(task: Task): void {
  const worker = new Worker(new URL(import.meta.url), { workerData: task });
  let timer: NodeJS.Timeout | undefined;
  const stop = (report: string) => {
    console.log(report);
    process.exit(1);
  };
  worker.on('message', (message: Message) => {
    clearTimeout(timer);
    if (message.kind === 'found') stop(message.report);
    else if (message.kind === 'progress') console.log(`${message.done} of ${task.runs}`);
    else timer = setTimeout(() => stop(`takes more than ${LONGEST} ms\n\n${message.text}`), LONGEST);
  });
  worker.on('error', (error) => stop(String(error)));
}

if (isMainThread) {
  const [seed = DEFAULT_SEED, runs = DEFAULT_RUNS] = process.argv.slice(2).map(Number);
  watch({ seed, runs });
} else fuzz(workerData as Task);
