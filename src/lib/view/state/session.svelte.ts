/** The open project: its text and what was chosen, and the last answer to the question what follows from them. */

import { MOST_TEXT, type Layout, type SetupId } from '$lib/core/index.ts';
import { DEFAULT_LIMITS, type Limits, type Project, type TriedLayout } from '$lib/project/project.ts';
import { NO_PIECE, type Answer, type Question } from './answers/question.ts';
import { sameLayout, triedAt, withoutTried, withTried, type TriedPlace } from './tried.ts';
import type { Answers } from './workroom.svelte.ts';

/** How long an answer may take before the knitter is told that it is being worked out, in milliseconds. */
const MOMENT = 400;

const NOTHING_YET: Answer = { piece: NO_PIECE, inUse: DEFAULT_LIMITS, view: null, broken: false };

/** What the knitter has open. One for the whole app. The last answer stays in view until the next one is there. */
export class Session {
  /** The text as it stands in the editor. */
  text = $state('');
  /** The text that the last file or example replaced; `null` when there is none. */
  former = $state.raw<string | null>(null);
  /** True once the kept project or an example has been opened. */
  opened = $state(false);
  setup = $state<SetupId>('dpn-5');
  limits = $state.raw<Limits>(DEFAULT_LIMITS);
  tried = $state.raw<readonly TriedLayout[]>([]);
  /** A layout under the knitter's finger, not let go yet. */
  held = $state.raw<Layout | null>(null);
  /** True when the next answer takes longer than a moment. */
  slow = $state(false);
  /** The text that the last answer is about; `null` before the first. */
  knitted = $state.raw<string | null>(null);

  /** The text that is to be knitted: what is typed comes to it after a rest. */
  #text = '';
  #size = $state(0);
  #stage = $state(0);
  #row = $state(0);
  #answer = $state.raw<Answer>(NOTHING_YET);

  readonly #answers: Answers;
  #mirrored = false;
  #rest: ReturnType<typeof setTimeout> | undefined;
  #moment: ReturnType<typeof setTimeout> | undefined;
  #asked: Question | null = null;
  #waiting: (() => void)[] = [];

  constructor(answers: Answers) {
    this.#answers = answers;
    answers.listen((answer, question) => this.#take(answer, question));
  }

  readonly piece = $derived(this.#answer.piece);
  readonly inUse = $derived(this.#answer.inUse);
  /** The stage in view on its needles, with the held layout if there is one. */
  readonly view = $derived(this.#answer.view);
  /** True when the last question could not be answered. */
  readonly broken = $derived(this.#answer.broken);
  readonly size = $derived(Math.min(this.#size, this.piece.sizes.length - 1));
  readonly stage = $derived(Math.min(this.#stage, Math.max(0, this.piece.stages.length - 1)));
  readonly rows = $derived(this.piece.stages[this.stage]?.rows ?? []);
  readonly row = $derived(Math.min(this.#row, this.rows.length));
  /** True when the knitter has changed a limit. */
  readonly hasOwnLimits = $derived(JSON.stringify(this.limits) !== JSON.stringify(DEFAULT_LIMITS));
  /** The layout of the stage in view: at once, before it has been judged. */
  readonly layout: Layout | null = $derived.by(() => {
    const place = this.#place();
    return this.held ?? (place && triedAt(this.tried, place)) ?? this.view?.chosen?.layout ?? null;
  });

  /** Takes what was typed; it is knitted after a short rest. */
  write(text: string): void {
    this.text = text;
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.settle(), this.#answers.rest);
  }

  /** Has the text knitted as it stands. */
  settle(): void {
    clearTimeout(this.#rest);
    this.#text = this.text;
    this.#ask();
  }

  /** Resolves when everything that was asked is answered. */
  settled(): Promise<void> {
    return new Promise((resolve) => {
      if (this.#asked) this.#waiting.push(resolve);
      else resolve();
    });
  }

  /** Opens another pattern text in place of this one, which stays at hand. */
  open(text: string): void {
    this.former = this.text.trim() === '' || this.text === text ? this.former : this.text;
    this.#replace(text);
    this.settle();
  }

  /** Changes the open text and the one before it. */
  swapFormer(): void {
    if (this.former === null) return;
    const { former, text } = this;
    this.former = text;
    this.#replace(former);
    this.settle();
  }

  chooseSize(size: number): void {
    this.held = null;
    this.#size = size;
    this.#ask();
  }

  chooseSetup(setup: SetupId): void {
    this.held = null;
    this.setup = setup;
    this.#ask();
  }

  setLimits(limits: Limits): void {
    this.held = null;
    this.limits = limits;
    this.#ask();
  }

  mirror(mirrored: boolean): void {
    this.#mirrored = mirrored;
    this.#ask();
  }

  /** Goes to a stage, to its first row. */
  chooseStage(stage: number): void {
    this.#goTo(stage, 0);
  }

  /** Goes to a row of the stage; the number of rows is the moment after the last. */
  chooseRow(row: number): void {
    this.#row = Math.max(0, Math.min(row, this.rows.length));
    this.#ask();
  }

  /** Goes to the stage that a line of the text belongs to, and to the first row that is knitted from it. */
  followLine(line: number): void {
    const stage = this.piece.stages.findLastIndex((other) => other.line <= line);
    if (stage < 0) return;
    const place = this.piece.counts.find((other) => other.line === line)?.place;
    const row = place?.stage === stage ? place.row : -1;
    if (stage !== this.stage) this.#goTo(stage, Math.max(0, row));
    else if (row >= 0 && row !== this.row) this.chooseRow(row);
  }

  /** Holds the stage in view in a layout without keeping it; `null` lets it go. */
  hold(layout: Layout | null): void {
    this.held = layout;
    this.#ask();
  }

  /** Puts the stage in view on the needles in a layout of the knitter's own. */
  tryLayout(layout: Layout): void {
    const place = this.#place();
    this.held = null;
    if (place && !this.#isUnheld(layout, place)) this.tried = withTried(this.tried, place, layout);
    this.#ask();
  }

  /** Forgets the knitter's own layout of the stage in view: the stated or the best one holds again. */
  forgetTried(): void {
    const place = this.#place();
    if (place) this.restoreTried(withoutTried(this.tried, place));
  }

  /** Takes back everything that was tried since. */
  restoreTried(tried: readonly TriedLayout[]): void {
    this.held = null;
    this.tried = tried;
    this.#ask();
  }

  /** Everything that is kept. */
  get project(): Project {
    const { text, former, setup, limits, tried } = this;
    return { text, former, setup, limits, tried, size: this.#size, stage: this.#stage, row: this.#row };
  }

  /** Takes over a kept project. */
  adopt(project: Project): void {
    this.#replace(project.text);
    this.former = project.former;
    this.setup = project.setup;
    this.limits = project.limits;
    this.tried = project.tried;
    this.#size = project.size;
    this.#stage = project.stage;
    this.#row = project.row;
    this.settle();
  }

  /** Asks the last question again. */
  askAgain(): void {
    this.#asked = null;
    this.#ask();
  }

  #replace(text: string): void {
    this.text = text.slice(0, MOST_TEXT);
    this.#stage = 0;
    this.#row = 0;
    this.held = null;
    this.opened = true;
  }

  #goTo(stage: number, row: number): void {
    this.held = null;
    this.#stage = stage;
    this.#row = row;
    this.#ask();
  }

  // What is done to a layout is done to the stage that is seen, even when another has been asked for.
  #place(): TriedPlace | null {
    const { view, piece } = this;
    return view && { stages: piece.stages, stage: view.stage, setup: view.setup.id, size: piece.size };
  }

  #isUnheld(layout: Layout, place: TriedPlace): boolean {
    const { origin, layout: unheld } = this.view!.unheld;
    return !triedAt(this.tried, place) && origin !== 'tried' && sameLayout(unheld, layout);
  }

  #ask(): void {
    if (!this.opened) return;
    const { setup, limits, tried, held } = this;
    const places = { size: this.#size, stage: this.#stage, row: this.#row };
    this.#asked = { text: this.#text, setup, limits, tried, held, ...places, mirrored: this.#mirrored };
    this.#moment ??= setTimeout(() => (this.slow = true), MOMENT);
    this.#answers.ask(this.#asked);
  }

  #take(answer: Answer | null, question: Question): void {
    this.#answer = answer ?? { ...this.#answer, view: null, broken: true };
    if (answer) this.knitted = question.text;
    if (question !== this.#asked) return;
    clearTimeout(this.#moment);
    this.#moment = undefined;
    this.#asked = null;
    this.slow = false;
    for (const go of this.#waiting.splice(0)) go();
  }
}
