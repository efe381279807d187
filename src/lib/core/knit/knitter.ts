/** Knits the statements of one stage after another. Holds what one statement hands on to the next. */

import type { Row, Stage, StatedLoads } from '../model/fabric.ts';
import { MOST_ROWS, MOST_STITCHES } from '../model/limits.ts';
import type { Assertion, Instruction, Pattern, RowText, Side, StageText } from '../model/pattern.ts';
import { EMPTY_RING, type Ring } from '../model/ring.ts';
import { everySize, forSize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import { Counts } from './assertions.ts';
import { LimitReached, standard, type Context } from './context.ts';
import type { RowTask } from './knit-row.ts';
import type { Along } from './shape-rows.ts';
import { labelOf } from './labels.ts';
import { knitReadings } from './readings.ts';
import { findRun, handAtRun, hasTurn, isFlat, runOf, sideOf, wholeOf } from './run.ts';
import { handGap, ringOf, withoutRun, withRun, type Tube } from './tube.ts';

/** A row that was told, so that it can be worked again. */
export interface ToldRow {
  readonly text: RowText;
  readonly number: number | null;
}

/** The stage in work. */
export interface StageInWork {
  readonly text: StageText;
  readonly flat: boolean;
  readonly entry: Ring;
  readonly rows: Row[];
  readonly stated: StatedLoads[];
  readonly notes: string[];
  /** Whether the next heading starts flat work, so that the last round here may stop where that begins. */
  readonly flatNext: boolean;
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
  private previousSide: Side | null = null;
  private readonly counts: Counts;

  constructor(
    readonly context: Context,
    readonly pattern: Pattern,
    private readonly lineOf: (offset: number) => number
  ) {
    this.counts = new Counts(context);
    this.stage = this.open(pattern.stages[0]!, null);
  }

  /** The ring as it is now; empty when nothing is on the needles. */
  ring(): Ring {
    return this.tube ? ringOf(this.tube) : EMPTY_RING;
  }

  private open(text: StageText, next: StageText | null): StageInWork {
    const flatNext = next !== null && isFlat(next);
    return { text, flat: isFlat(text), entry: this.ring(), rows: [], stated: [], notes: [], flatNext };
  }

  /** Begins a stage: finds the run of a flat one, or leaves the run of the one before. */
  begin(text: StageText, next: StageText | null): void {
    this.stage = this.open(text, next);
    this.context.where = text.name;
    this.numbered.clear();
    if (!this.tube) return;
    if (!this.stage.flat) {
      this.tube = withoutRun(this.tube);
      this.previousSide = null;
      return;
    }
    this.openRun();
  }

  // A run carried over from the flat stage before goes on where that one stopped; another run starts afresh.
  private openRun(): void {
    if (!this.tube) return;
    const carried = runOf(this.tube);
    const isStrip = !this.joined && !carried && this.stage.text.over === null;
    const run = isStrip ? wholeOf(this.tube) : findRun(this.stage.text, this.tube, this.context.size);
    if (carried && sameRun(carried, run)) return;
    this.previousSide = null;
    this.tube = withRun(this.tube, run.from, run.to);
  }

  /** Knits one told row, checks its printed counts and remembers it. */
  work(told: ToldRow, options: { readonly remember: boolean }): void {
    const { text, number } = told;
    const label = labelOf(text, number);
    this.context.where = `${this.stage.text.name}, ${label}`;
    this.knit({ label, span: text.span, body: text.body, text });
    for (const assertion of text.assertions) this.check(assertion);
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

  private knit(what: {
    readonly label: string;
    readonly span: Span;
    readonly body: readonly Instruction[];
    readonly text: RowText | null;
  }): void {
    if (!this.ready(what.span)) return;
    if (this.stage.flat && !runOf(this.tube!)) this.openRun();
    const body = [...this.due, ...(this.along?.next(what.body) ?? what.body)];
    this.due = dueAfter(what.body);
    const task = this.task(this.tube!, { ...what, body }); // may move the yarn to where the row can start
    const { row, tube: after } = knitReadings(this.tube!, task, {
      context: this.context,
      total: this.printedTotal(what.text)
    });
    this.tube = after;
    if (row.shape === 'round') this.joined = true;
    this.stage.rows.push(row);
    this.rowsWorked += 1;
    this.guardLimits(row, what.span);
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

  private task(
    tube: Tube,
    what: {
      readonly label: string;
      readonly span: Span;
      readonly body: readonly Instruction[];
      readonly text: RowText | null;
    }
  ): RowTask {
    const { label, span, body, text } = what;
    const base = { label, span, body, line: this.lineOf(span.from), extraTimes: 0 as const };
    if (!this.stage.flat) {
      return {
        ...base,
        shape: 'round',
        side: 'RS',
        run: { from: 0, to: 0 },
        mayStopShort: this.mayStopShort(text, tube)
      };
    }
    const run = runOf(tube) ?? { from: 0, to: this.ring().stitches.length };
    return { ...base, shape: 'flat', side: this.takeSide(text, { tube, run, span }), run, mayStopShort: false };
  }

  // An unnumbered row may be part of a round: after a flat stage, before one, or where the text calls it a row.
  private mayStopShort(text: RowText | null, tube: Tube): boolean {
    if (text === null || text.numbers.kind !== 'next' || hasTurn(text.body)) return false;
    return this.stage.flatNext || handGap(tube) !== 0 || /^row/iu.test(text.noun);
  }

  private takeSide(
    text: RowText | null,
    at: { readonly tube: Tube; readonly run: { readonly from: number; readonly to: number }; readonly span: Span }
  ): Side {
    const { side, fits } = sideOf(text ?? PLAIN, { tube: at.tube, run: at.run, previous: this.previousSide });
    if (!fits) {
      // A strip that was just cast on may begin with either side.
      const isFresh = !this.joined && this.rowsWorked === 0;
      if (!isFresh) this.context.report('wrong-side', at.span, { about: side === 'RS' ? 'right-side' : 'wrong-side' });
      this.tube = handAtRun(at.tube, at.run, side);
    }
    this.previousSide = side;
    return side;
  }

  /** Checks a printed count against the ring now. */
  check(assertion: Assertion): void {
    const run = this.stage.flat && this.tube ? runOf(this.tube) : null;
    const knitted = { ring: this.ring(), row: this.stage.rows.at(-1) ?? null, run, rows: this.stage.rows.length };
    this.counts.check(assertion, knitted);
    if (assertion.kind === 'loads') this.state(assertion.loads, assertion.span);
  }

  /** Keeps a layout that the text states. */
  state(loads: Extract<Assertion, { kind: 'loads' }>['loads'], span: Span): void {
    const numbers = loads.map((load) => forSize(load, this.context.size) ?? 0);
    this.stage.stated.push({ row: this.stage.rows.length, loads: numbers, span });
  }

  /** Ends the stage. */
  finish(): Stage {
    const { text, rows, entry, stated, notes } = this.stage;
    const start = rows[0]?.before ?? this.ring();
    const shape = this.stage.flat && rows.some((row) => row.shape === 'flat') ? 'flat' : 'round';
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
      run: shape === 'flat' ? rows[0]!.run : { from: 0, to: start.stitches.length },
      held: [...this.context.held],
      stated,
      notes
    };
  }
}

const PLAIN: RowText = {
  kind: 'row',
  noun: 'Row',
  numbering: 'noun',
  numbers: { kind: 'next' },
  name: null,
  side: null,
  sizes: null,
  body: [],
  assertions: [],
  span: { from: 0, to: 0 }
};

// "Turn, make a double stitch": the stitch that was worked last is pulled up as the first of the next row.
function dueAfter(body: readonly Instruction[]): Instruction[] {
  const turn = body.findLast((part) => part.kind === 'turn');
  if (turn?.kind !== 'turn' || turn.mark !== 'double') return [];
  return [{ kind: 'work', operation: standard('DS'), count: everySize(1), span: turn.span }];
}

function sameRun(left: { from: number; to: number }, right: { from: number; to: number }): boolean {
  return left.from === right.from && left.to === right.to;
}
