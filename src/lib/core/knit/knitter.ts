/** Knits the statements of one stage after another. Holds what one statement hands on to the next. */

import type { Row, Stage } from '../model/fabric.ts';
import type { Arrangement } from '../model/needle-words.ts';
import { MOST_ROWS, MOST_STITCHES } from '../model/limits.ts';
import type { Assertion, Instruction, Pattern, RowText, StageText } from '../model/pattern.ts';
import { EMPTY_RING, type Ring } from '../model/ring.ts';
import { forSize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import type { Bench, ToldLoads } from './arrange.ts';
import { Counts } from './assertions.ts';
import { checkPurpose } from './claims.ts';
import { LimitReached, type Context } from './context.ts';
import { FlatWork } from './flat-work.ts';
import type { RowTask } from './knit-row.ts';
import type { Along } from './shape-rows.ts';
import { labelOf } from './labels.ts';
import { knitReadings } from './readings.ts';
import { isBareTurn, isFlat, isStrip, runOf } from './run.ts';
import {
  dueAfter,
  endsFlatWork,
  isStepBefore,
  mayStopShort,
  rowsOf,
  type RowToKnit,
  type StageInWork
} from './stage-in-work.ts';
import { StatedLayouts } from './stated-layouts.ts';
import { changesRing, hasNeedleWords, lastNeedles, withoutNeedles } from './told-needles.ts';
import { handGap, ringOf, withBorAt, withoutRun, type Tube } from './tube.ts';

/** A row that was told, so that it can be worked again. */
export interface ToldRow {
  readonly text: RowText;
  readonly number: number | null;
}

/** Knits one pattern in one size. Mutable, and never leaves `knit/`. */
export class Knitter {
  tube: Tube | null = null;
  tubes = 0;
  /** Rows told under the last headings, by number and by name, and in the order of working. */
  readonly numbered = new Map<number, RowText>();
  readonly named = new Map<string, RowText>();
  history: ToldRow[] = [];
  /** Whether the present tube was joined or worked in the round; before that it is a flat piece. */
  joined = false;
  /** Rows worked since the cast-on of the present tube. */
  rowsWorked = 0;
  stage: StageInWork;
  /** Shaping that goes along with the rows being worked. */
  along: Along | null = null;
  /** What the row before left to be done at the beginning of the next. */
  private due: readonly Instruction[] = [];
  private readonly flat: FlatWork;
  private readonly layouts: StatedLayouts;
  private readonly counts: Counts;

  constructor(
    readonly context: Context,
    readonly pattern: Pattern,
    private readonly lineOf: (offset: number) => number
  ) {
    const place = {
      get: () => this.tube!,
      set: (tube: Tube) => (this.tube = tube),
      lastRow: () => this.stage.rows.at(-1) ?? null
    };
    this.counts = new Counts(context);
    this.flat = new FlatWork(context, place);
    this.layouts = new StatedLayouts(context, place);
    this.stage = this.open(pattern.stages[0]!, null);
  }

  /** The ring as it is now; empty when nothing is on the needles. */
  ring(): Ring {
    return this.tube ? ringOf(this.tube) : EMPTY_RING;
  }

  private open(text: StageText, next: StageText | null): StageInWork {
    const flatNext = next !== null && isFlat(next);
    const needleWords = hasNeedleWords(text);
    return {
      text,
      flat: isFlat(text) || isStrip(text),
      entry: this.ring(),
      rows: [],
      stated: [],
      needleWords,
      notes: [],
      flatNext
    };
  }

  /** Begins a stage: finds the run of a flat one, or leaves the run of the one before. */
  begin(text: StageText, next: StageText | null): void {
    this.stage = this.open(text, next);
    this.context.where = text.name;
    this.numbered.clear();
    this.context.needles.forgetMark();
    if (!this.tube) return;
    this.noteLayout(null);
    if (!this.stage.flat) {
      this.tube = withoutRun(this.tube);
      return this.flat.leave();
    }
    if (runOf(this.tube) || !this.stage.needleWords) this.openRun();
  }

  private openRun(): void {
    this.flat.open(this.stage.text, { needleWords: this.stage.needleWords, strip: !this.joined });
  }

  /** Flat work goes over these needles or stitches from here on. */
  workFlat(told: Extract<Arrangement, { kind: 'work-flat' }>): void {
    this.flat.openOver(told);
  }

  /** The stitches are joined: a piece that was worked flat so far goes round from here on, also under the same heading. */
  goRound(): void {
    this.joined = true;
    if (!this.tube || !this.stage.flat || this.stage.rows.length === 0) return;
    this.stage.flat = false;
    this.tube = withoutRun(this.tube);
    this.flat.leave();
  }

  /** Knits one told row, checks its printed counts and remembers it. */
  work(told: ToldRow, options: { readonly remember: boolean }): void {
    const { text, number } = told;
    if (isBareTurn(text.body)) return;
    const label = labelOf(text, number);
    this.context.where = `${this.stage.text.name}, ${label}`;
    this.knit({ label, span: text.span, body: text.body, text });
    for (const assertion of text.assertions) this.check(assertion);
    checkPurpose(this, text);
    if (!options.remember) return;
    this.history.push(told);
    if (number !== null) this.numbered.set(number, text);
    if (text.name) this.named.set(text.name.toLowerCase(), text);
  }

  /** Knits one plain row that the text does not write out. */
  workPlain(label: string, body: readonly Instruction[], span: Span): void {
    this.context.where = `${this.stage.text.name}, ${label}`;
    this.knit({ label, span, body, text: null });
  }

  private knit(what: RowToKnit): void {
    if (!this.ready(what.span)) return;
    const body = [...this.due, ...(this.along?.next(what.body) ?? what.body)];
    this.due = dueAfter(what.body);
    const task = this.taskFor({ ...what, body });
    const { row, tube: after } = knitReadings(this.tube!, task, {
      context: this.context,
      total: this.printedTotal(what.text)
    });
    this.tube = !this.stage.needleWords && changesRing(what.body) ? withoutNeedles(after) : after;
    if (row.shape === 'round') this.joined = true;
    this.stage.rows.push(row);
    this.noteLayout(row);
    this.rowsWorked += 1;
    this.guardLimits(row, what.span);
  }

  // May open the run, and move the yarn to where the row can start.
  private taskFor(what: RowToKnit): RowTask {
    const isUnopened = this.stage.flat && !runOf(this.tube!);
    if (isUnopened && isStepBefore(what.text)) return this.stepTask(what);
    if (isUnopened) this.openRun();
    return this.task(what);
  }

  private printedTotal(text: RowText | null): number | null {
    const total = text?.assertions.find((assertion) => assertion.kind === 'total');
    return total ? forSize(total.count, this.context.size) : null;
  }

  private ready(span: Span): boolean {
    if (this.tube && this.ring().stitches.length > 0) return true;
    this.context.report('nothing-on-needles', span);
    return false;
  }

  private guardLimits(row: Row, span: Span): void {
    if (row.after.stitches.length > MOST_STITCHES) {
      this.context.report('too-many-stitches', span, { expected: MOST_STITCHES });
      throw new LimitReached();
    }
    if (this.rowsWorked > MOST_ROWS) {
      this.context.report('too-many-rows', span, { expected: MOST_ROWS });
      throw new LimitReached();
    }
  }

  private task(what: RowToKnit): RowTask {
    const { label, span, body, text } = what;
    const base = { label, span, body, line: this.lineOf(span.from), extraTimes: 0 as const };
    if (!this.stage.flat) {
      this.beginRound(text);
      const mayStop = mayStopShort(this.stage, text, this.tube!);
      return { ...base, shape: 'round', side: 'RS', run: { from: 0, to: 0 }, mayStopShort: mayStop };
    }
    const run = this.flat.runFor(body);
    return {
      ...base,
      shape: 'flat',
      side: this.flat.takeSide(text, { run, span, fresh: !this.joined && this.rowsWorked === 0 }),
      run,
      mayStopShort: endsFlatWork(this.stage, text)
    };
  }

  // A numbered round that starts elsewhere is the first of those that begin there.
  private beginRound(text: RowText | null): void {
    const tube = this.tube!;
    if (text?.numbers.kind === 'numbers' && handGap(tube) !== 0) this.tube = withBorAt(tube, tube.hand);
  }

  // A step that arranges the needles before flat work begins: a partial round.
  private stepTask(what: RowToKnit): RowTask {
    const line = this.lineOf(what.span.from);
    return { ...what, line, extraTimes: 0, shape: 'round', side: 'RS', run: { from: 0, to: 0 }, mayStopShort: true };
  }

  /** Checks a printed count against the ring now. */
  check(assertion: Assertion): void {
    const run = this.stage.flat && this.tube ? runOf(this.tube) : null;
    const knitted = {
      ring: this.ring(),
      row: this.stage.rows.at(-1) ?? null,
      run,
      onNeedles: this.tube ? lastNeedles(this.context, this.tube) : [],
      mayBePart: this.stage.flat || this.stage.flatNext,
      rows: rowsOf(this.stage)
    };
    this.counts.check(assertion, knitted);
    if (assertion.kind === 'on-needles' && this.tube) this.checkNeedles(assertion, this.tube);
    if (assertion.kind === 'loads' && this.ring().stitches.length > 0) this.layouts.check(this.stage, assertion);
  }

  private checkNeedles(assertion: Extract<Assertion, { kind: 'on-needles' }>, tube: Tube): void {
    const count = forSize(assertion.count, this.context.size);
    if (assertion.needles === 'each' && count !== null) this.layouts.stateEach(this.stage, count);
    else if (assertion.needles !== 'each') this.layouts.nameLast(assertion.needles);
    this.counts.checkNeedles(assertion, tube);
  }

  /** Lays the stitches on the needles as the text states it. */
  state(told: ToldLoads): void {
    this.layouts.state(this.stage, told, false);
  }

  /** The stitches as they lie now, to be arranged. */
  bench(): Bench {
    return this.layouts.bench();
  }

  /** Keeps the told layout where it does not follow from the one before. `row`: the row just worked. */
  noteLayout(row: Row | null): void {
    this.layouts.note(this.stage, row);
  }

  /** Ends the stage. */
  finish(): Stage {
    const { text, rows, entry, stated, notes } = this.stage;
    const start = rows[0]?.before ?? this.ring();
    const shape = rows.some((row) => row.shape === 'flat') ? 'flat' : 'round';
    return {
      name: text.name,
      line: text.line,
      shape,
      side: rows[0]?.side ?? 'RS',
      tube: this.tube?.number ?? 0,
      entry,
      start,
      exit: this.ring(),
      rows: [...rows],
      run: rows.find((row) => row.shape === 'flat')?.run ?? { from: 0, to: start.stitches.length },
      held: [...this.context.held],
      stated,
      notes
    };
  }
}
