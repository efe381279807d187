/** The open project: its text, what was chosen, and everything that follows from them. */

import {
  DEFAULT_SETTINGS,
  judgeLayout,
  MOST_TEXT,
  momentAt,
  planWorkpiece,
  type Layout,
  type Moment,
  type Plan,
  type Settings,
  type SetupId,
  type StagePlan,
  type Workpiece
} from '$lib/core/index.ts';
import { DEFAULT_LIMITS, type Limits, type Project, type TriedLayout } from '$lib/project/project.ts';
import { knitSafely } from './knit-safely.ts';
import { sameLayout, triedByStage, withoutTried, withTried } from './tried.ts';

/** Least and greatest rest after a key stroke before the text is knitted, in milliseconds. */
const REST = { least: 120, most: 3_000 };

/** Longest title that is shown. */
const TITLE = 120;

/** What the knitter has open. One for the whole app. */
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

  #knitted = $state.raw('');
  #size = $state(0);
  #stage = $state(0);
  #row = $state(0);
  #rest: ReturnType<typeof setTimeout> | undefined;
  /** How long the last knitting took, in milliseconds. */
  #took = 0;

  readonly workpiece: Workpiece = $derived(knitSafely(this.#knitted));
  readonly sizes = $derived(this.workpiece.pattern.sizes);
  readonly size = $derived(Math.min(this.#size, this.sizes.length - 1));
  readonly fabric = $derived(this.workpiece.fabrics[this.size]!);
  readonly title = $derived(this.fabric.title.slice(0, TITLE));
  /** True when the knitter has changed a limit. */
  readonly hasOwnLimits = $derived(JSON.stringify(this.limits) !== JSON.stringify(DEFAULT_LIMITS));
  readonly settings: Settings = $derived({ ...DEFAULT_SETTINGS, ...this.limits });
  readonly plan: Plan = $derived(
    planWorkpiece(this.workpiece, {
      setup: this.setup,
      size: this.size,
      settings: this.settings,
      tried: triedByStage(this.tried, this.fabric, { setup: this.setup, size: this.size })
    })
  );
  readonly stage = $derived(Math.min(this.#stage, Math.max(0, this.fabric.stages.length - 1)));
  /** The stage in view on its needles, with the held layout if there is one. */
  readonly stagePlan: StagePlan | null = $derived.by(() => this.#withHeld(this.plan.stages[this.stage] ?? null));
  readonly rows = $derived(this.stagePlan?.stage.rows ?? []);
  readonly row = $derived(Math.min(this.#row, this.rows.length));
  readonly moment: Moment | null = $derived.by(() => this.#momentNow());

  /** Takes what was typed; it is knitted after a short rest. */
  write(text: string): void {
    this.text = text;
    clearTimeout(this.#rest);
    const rest = Math.min(REST.most, Math.max(REST.least, this.#took * 2));
    this.#rest = setTimeout(() => this.settle(), rest);
  }

  /** Knits the text as it stands. */
  settle(): void {
    clearTimeout(this.#rest);
    const start = performance.now();
    this.#knitted = this.text;
    this.#took = this.workpiece ? performance.now() - start : 0;
  }

  /** Opens another pattern text in place of this one, which stays at hand. */
  open(text: string): void {
    this.former = this.text.trim() === '' || this.text === text ? this.former : this.text;
    this.#replace(text);
  }

  /** Changes the open text and the one before it. */
  swapFormer(): void {
    if (this.former === null) return;
    const { former, text } = this;
    this.former = text;
    this.#replace(former);
  }

  #replace(text: string): void {
    this.text = text.slice(0, MOST_TEXT);
    this.#stage = 0;
    this.#row = 0;
    this.held = null;
    this.opened = true;
    this.settle();
  }

  chooseSize(size: number): void {
    this.held = null;
    this.#size = size;
  }

  chooseSetup(setup: SetupId): void {
    this.held = null;
    this.setup = setup;
  }

  setLimits(limits: Limits): void {
    this.held = null;
    this.limits = limits;
  }

  /** Goes to a stage, to its first row. */
  chooseStage(stage: number): void {
    this.held = null;
    this.#stage = stage;
    this.#row = 0;
  }

  /** Goes to a row of the stage; the number of rows is the moment after the last. */
  chooseRow(row: number): void {
    this.#row = Math.max(0, Math.min(row, this.rows.length));
  }

  /** Goes to the stage that a line of the text belongs to, and to its row if it is one. */
  followLine(line: number): void {
    const stage = this.fabric.stages.findLastIndex((other) => other.line <= line);
    if (stage < 0) return;
    if (stage !== this.stage) this.chooseStage(stage);
    const row = this.rows.findIndex((other) => other.line === line);
    if (row >= 0) this.chooseRow(row);
  }

  /** Puts the stage on the needles in a layout of the knitter's own. */
  tryLayout(layout: Layout): void {
    this.held = null;
    const { stagePlan, fabric, stage, setup, size } = this;
    if (!stagePlan) return;
    const place = { fabric, stage, setup, size };
    const own = this.plan.stages[stage]!;
    const isOwn = own.origin !== 'tried' && sameLayout(own.chosen?.layout ?? null, layout);
    if (!isOwn) this.tried = withTried(this.tried, place, layout);
  }

  /** Forgets the knitter's own layout of the stage: the stated or the best one holds again. */
  forgetTried(): void {
    this.held = null;
    const { fabric, stage, setup, size } = this;
    this.tried = withoutTried(this.tried, { fabric, stage, setup, size });
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
  }

  #withHeld(planned: StagePlan | null): StagePlan | null {
    if (!planned || !this.held) return planned;
    const chosen = judgeLayout(planned.stage, this.held, this.plan);
    return { ...planned, chosen, origin: 'tried' };
  }

  #momentNow(): Moment | null {
    const { plan, stage, row, stagePlan } = this;
    if (!stagePlan) return null;
    const stages = this.held ? plan.stages.with(stage, stagePlan) : plan.stages;
    return momentAt({ ...plan, stages }, { stage, row, pass: 0 });
  }
}
