/** Flat work over a run of the ring: which run it is, which side faces, and a run that grows. */

import type { Row } from '../model/fabric.ts';
import type { Instruction, RowText, Side, StageText } from '../model/pattern.ts';
import { wrap } from '../model/ring.ts';
import type { Span } from '../model/span.ts';
import type { Arrangement } from '../model/needle-words.ts';
import { missing } from './arrange.ts';
import type { Context } from './context.ts';
import { findRun, handAtRun, runOf, sideOf, startsWithTurn, statedRun, wholeOf, type Run } from './run.ts';
import { takesOf } from './takes.ts';
import { takesNeedle, toldSegments, withoutNeedles } from './told-needles.ts';
import { handGap, ringOf, withRun, type Tube } from './tube.ts';

/** The tube in work: it is read here, and replaced where the run or the yarn moves. */
export interface TubePlace {
  readonly get: () => Tube;
  readonly set: (tube: Tube) => void;
  /** The row worked last under this heading. */
  readonly lastRow: () => Row | null;
}

/** The side worked last and the run in work. Mutable, and never leaves `knit/`. */
export class FlatWork {
  private previousSide: Side | null = null;
  /** Whether the run was made by a turn, so that the next row may take in as much on the other side. */
  private grows = false;
  /** Whether the first row begins inside the run, behind stitches that its needle holds already. */
  private startsInside = false;

  constructor(
    private readonly context: Context,
    private readonly place: TubePlace
  ) {}

  /** Work in the round begins: the next flat row may face either side. */
  leave(): void {
    this.previousSide = null;
  }

  /** Opens the run of a stage. One carried over goes on where the flat stage before stopped; another starts afresh. A strip that was never
   * joined is worked from end to end. */
  open(stage: StageText, options: { readonly needleWords: boolean; readonly strip: boolean }): void {
    const { place } = this;
    const carried = runOf(place.get());
    const isStrip = options.strip && !carried && stage.over === null;
    const run = isStrip ? wholeOf(place.get()) : findRun(stage, place.get(), this.context);
    this.grows = !carried && startsWithTurn(stage);
    this.startsInside = this.grows && wrap(run.from, ringOf(place.get()).stitches.length) !== handGap(place.get());
    if (!(carried && carried.from === run.from && carried.to === run.to)) {
      this.previousSide = null;
      place.set(withRun(place.get(), run.from, run.to));
    }
    if (!options.needleWords && !isOneNeedle(place.get(), run)) place.set(withoutNeedles(place.get()));
  }

  /** Opens a run over told needles or a section; says so when there is none of that name. */
  openOver({ over, span }: Extract<Arrangement, { kind: 'work-flat' }>): void {
    const { place, context } = this;
    const run = statedRun(over, place.get(), context);
    if (run) place.set(withRun(place.get(), run.from, run.to));
    else if (over !== 'each' && !('section' in over)) missing({ context }, over[0]!, span);
    this.previousSide = null;
    this.grows = false;
  }

  /** The run of a row: "… then p the 16 sts of 4th needle on to the same needle" makes it grow by what the needle takes. */
  runFor(body: readonly Instruction[]): Run {
    const tube = this.place.get();
    const stitches = ringOf(tube).stitches.length;
    const run = runOf(tube) ?? { from: 0, to: stitches };
    const mayGrow = this.grows || takesNeedle(body);
    const takes = mayGrow ? Math.min(takesOf(body, this.context.size) ?? 0, stitches) : 0;
    if (this.previousSide !== null) this.grows = false;
    if (takes <= run.to - run.from) return run;
    const atEnd = handGap(tube) === wrap(run.to, stitches);
    const from = wrap(atEnd ? run.to - takes : run.from, stitches);
    this.place.set(withRun(tube, from, from + takes));
    return { from, to: from + takes };
  }

  /** The side that a row works; says so when the yarn hangs where such a row cannot start, and goes to where it can.
   * `fresh`: nothing has been worked yet, so that either side may begin. */
  takeSide(text: RowText | null, at: { readonly run: Run; readonly span: Span; readonly fresh: boolean }): Side {
    const tube = this.place.get();
    const { side, fits } = sideOf(text?.side ?? null, { tube, run: at.run, previous: this.previousSide });
    if (!fits && !this.startsInside) {
      if (!at.fresh) this.context.report('wrong-side', at.span, { about: side === 'RS' ? 'right-side' : 'wrong-side' });
      this.place.set(handAtRun(tube, at.run, side));
    }
    this.startsInside = false;
    this.previousSide = side;
    return side;
  }
}

function isOneNeedle(tube: Tube, run: Run): boolean {
  const from = wrap(run.from, ringOf(tube).stitches.length);
  const segments = toldSegments(tube) ?? [];
  return segments.length === 0 || segments.some((one) => one.from === from && one.stitches === run.to - run.from);
}
