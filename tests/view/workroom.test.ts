import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEFAULT_LIMITS } from '$lib/project/project.ts';
import { Answerer } from '$lib/view/state/answers/answerer.ts';
import { Receiver, Sender, type Sent, type SentQuestion } from '$lib/view/state/answers/errand.ts';
import type { Question } from '$lib/view/state/answers/question.ts';
import { Workroom } from '$lib/view/state/workroom.svelte.ts';

const COWL = 'Cowl\n\nBODY\nCO 24 sts. Join to work in the rnd.\nRnd 1: K.\n';

const CHOICES: Omit<Question, 'text'> = {
  size: 0,
  stage: 0,
  row: 0,
  setup: 'dpn-5',
  limits: DEFAULT_LIMITS,
  tried: [],
  held: null,
  mirrored: false
};

/** A thread whose work the test does by hand. */
class Thread {
  static made: Thread[] = [];
  onmessage: ((event: { data: Sent }) => void) | null = null;
  onerror: (() => void) | null = null;
  onmessageerror: (() => void) | null = null;
  terminated = false;
  readonly questions: Question[] = [];
  readonly #receiver = new Receiver();
  readonly #sender = new Sender();
  readonly #answerer = new Answerer();

  constructor() {
    Thread.made.push(this);
  }

  postMessage(sent: SentQuestion): void {
    this.questions.push(this.#receiver.question(structuredClone(sent)));
  }

  terminate(): void {
    this.terminated = true;
  }

  open(): void {
    this.onmessage?.({ data: 'open' });
  }

  answer(): void {
    const question = this.questions.shift()!;
    this.onmessage?.({ data: structuredClone(this.#sender.answer(this.#answerer.answer(question))) });
  }
}

function opened() {
  const workroom = new Workroom();
  const told: string[] = [];
  workroom.listen((answer, { text, row }) => told.push(`${text.slice(0, 4)} ${row} ${answer?.piece.title ?? 'none'}`));
  workroom.open();
  return { workroom, told, threads: Thread.made };
}

function ask(workroom: Workroom, text: string, row = 0): void {
  workroom.ask({ ...CHOICES, text, row });
}

beforeEach(() => {
  Thread.made = [];
  vi.useFakeTimers();
  vi.stubGlobal('Worker', Thread);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('nothing is started before it is opened, and what was asked before is answered then', () => {
  const workroom = new Workroom();
  ask(workroom, COWL);
  expect(Thread.made).toEqual([]);
  workroom.open();
  Thread.made[0]!.open();
  expect(Thread.made[0]!.questions).toHaveLength(1);
});

test('while one question is worked on, only the newest of the others waits', () => {
  const { workroom, told, threads } = opened();
  threads[0]!.open();
  for (const row of [0, 1, 2, 3]) ask(workroom, COWL, row);
  threads[0]!.answer();
  threads[0]!.answer();
  expect(told).toEqual(['Cowl 0 Cowl', 'Cowl 3 Cowl']);
  expect(threads[0]!.questions).toEqual([]);
});

test('the answer about a text is void once a newer text is there', () => {
  const { workroom, told, threads } = opened();
  threads[0]!.open();
  ask(workroom, COWL);
  ask(workroom, 'Other');
  threads[0]!.answer();
  threads[0]!.answer();
  expect(told).toEqual(['Othe 0 Other']);
});

test('work on an older text is given up after a short patience', () => {
  const { workroom, told, threads } = opened();
  threads[0]!.open();
  ask(workroom, COWL);
  ask(workroom, 'Other');
  vi.runAllTimers();
  expect(threads[0]!.terminated).toBe(true);
  threads[1]!.open();
  threads[1]!.answer();
  expect(told).toEqual(['Othe 0 Other']);
});

test('another question about the same text does not give up the work on it', () => {
  const { workroom, threads } = opened();
  threads[0]!.open();
  ask(workroom, COWL);
  ask(workroom, COWL, 1);
  vi.runAllTimers();
  expect([threads.length, threads[0]!.terminated]).toEqual([1, false]);
});

test('a thread that breaks off is replaced, and the question is told to be without an answer', () => {
  const { workroom, told, threads } = opened();
  threads[0]!.open();
  ask(workroom, COWL);
  threads[0]!.onerror!();
  expect(told).toEqual(['Cowl 0 none']);
  threads[1]!.open();
  ask(workroom, COWL);
  threads[1]!.answer();
  expect([told.at(-1), workroom.place]).toEqual(['Cowl 0 Cowl', 'apart']);
});

test.each<[string, () => unknown, () => unknown]>([
  ['cannot be made', () => vi.stubGlobal('Worker', undefined), () => undefined],
  ['never opens', () => undefined, () => Thread.made[0]!.onerror!()]
])('the page does the work itself when a thread %s', async (_, before, after) => {
  before();
  const { workroom, told } = opened();
  ask(workroom, COWL);
  after();
  vi.useRealTimers();
  await vi.waitFor(() => expect(told).toEqual(['Cowl 0 Cowl']));
  expect(workroom.place).toBe('page');
});
