/** Where the stitches are worked out: a thread of its own, so that the page never waits; without one, the page itself. */

import type { Answerer } from './answers/answerer.ts';
import { Receiver, Sender, type Sent } from './answers/errand.ts';
import type { Answer, Question } from './answers/question.ts';

/** Whoever answers questions; only the newest counts. */
export interface Answers {
  /** How long to rest after a key stroke before asking, in milliseconds. */
  readonly rest: number;
  ask(question: Question): void;
  /** Names who is told. `null`: this question could not be answered. */
  listen(tell: Tell): void;
}

/** Hears an answer with the question it belongs to. */
export type Tell = (answer: Answer | null, question: Question) => void;

/** Least and greatest rest after a key stroke, in milliseconds. */
const REST = { least: 120, most: 3_000 };

/** How long the work on a text may go on after a newer one has come, in milliseconds. */
const PATIENCE = 250;

/**
 * `closed`: not started yet, so that the page comes first; `apart`: in a thread of its own; `page`: on the page, for want
 * of one; `missing`: not at all.
 */
type Place = 'closed' | 'apart' | 'page' | 'missing';

/** Answers one question at a time. While it works only the newest question waits; work on an older text is given up. */
export class Workroom implements Answers {
  place = $state<Place>('closed');

  #tell: Tell = () => undefined;
  #worker: Worker | null = null;
  #answerer: Answerer | null = null;
  #ready = false;
  #now: Question | null = null;
  #next: Question | null = null;
  #patience: ReturnType<typeof setTimeout> | undefined;
  /** How long the last answer took on the page. */
  #took = 0;
  #sender = new Sender();
  #receiver = new Receiver();

  get rest(): number {
    return this.place === 'page' ? Math.min(REST.most, Math.max(REST.least, this.#took * 2)) : REST.least;
  }

  listen(tell: Tell): void {
    this.#tell = tell;
  }

  /** Starts work; questions asked before wait for it. */
  open(): void {
    if (this.place !== 'closed') return;
    this.place = 'apart';
    this.#start();
  }

  ask(question: Question): void {
    this.#next = question;
    if (this.place === 'missing') this.#giveUp();
    if (this.place === 'apart' && this.#isStale()) this.#patience ??= setTimeout(() => this.#restart(), PATIENCE);
    this.#work();
  }

  /** Ends the thread. */
  close(): void {
    clearTimeout(this.#patience);
    this.#worker?.terminate();
    this.#worker = null;
    this.#ready = false;
    this.place = 'closed';
  }

  #start(): void {
    this.#sender = new Sender();
    this.#receiver = new Receiver();
    this.#ready = false;
    try {
      this.#worker = new Worker(new URL('./answers/worker.ts', import.meta.url), { type: 'module' });
    } catch {
      void this.#moveToPage();
      return;
    }
    this.#worker.onmessage = ({ data }: MessageEvent<Sent>) => this.#hear(data);
    this.#worker.onerror = () => this.#fail();
    this.#worker.onmessageerror = () => this.#fail();
  }

  #hear(sent: Sent): void {
    if (sent === 'open') this.#ready = true;
    else this.#finish(this.#receiver.answer(sent));
    this.#work();
  }

  #work(): void {
    if (!this.#ready || this.#now || !this.#next) return;
    [this.#now, this.#next] = [this.#next, null];
    if (this.#worker) this.#worker.postMessage(this.#sender.question(this.#now));
    else setTimeout(() => this.#workHere());
  }

  #workHere(): void {
    const start = performance.now();
    if (this.#now && this.#answerer) this.#finish(this.#answerer.answer(this.#now));
    this.#took = performance.now() - start;
    this.#work();
  }

  #finish(answer: Answer | null): void {
    clearTimeout(this.#patience);
    this.#patience = undefined;
    const question = this.#now;
    const isVoid = this.#isStale();
    this.#now = null;
    if (question && !isVoid) this.#tell(answer, question);
  }

  // True while an older text is worked on than the one that is wanted.
  #isStale(): boolean {
    return this.#now !== null && this.#next !== null && this.#now.text !== this.#next.text;
  }

  #restart(): void {
    this.#patience = undefined;
    this.#worker?.terminate();
    this.#now = null;
    this.#start();
  }

  // A thread that never opened cannot be had here; one that breaks off later is replaced.
  #fail(): void {
    this.#worker?.terminate();
    this.#worker = null;
    if (!this.#ready) return void this.#moveToPage();
    this.#finish(null);
    this.#start();
  }

  async #moveToPage(): Promise<void> {
    this.#worker = null;
    try {
      const { Answerer } = await import('./answers/answerer.ts');
      this.#answerer = new Answerer();
      this.place = 'page';
      this.#ready = true;
      this.#work();
    } catch {
      this.place = 'missing';
      this.#giveUp();
    }
  }

  #giveUp(): void {
    this.#now = this.#next;
    this.#next = null;
    this.#finish(null);
  }
}
