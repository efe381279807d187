/** The layouts that the text states, as a stage keeps them, and printed loads compared with them. */

import type { Row, StatedLayout } from '../model/fabric.ts';
import { followGaps } from '../model/follow.ts';
import type { NeedleRef } from '../model/needle-words.ts';
import type { Assertion } from '../model/pattern.ts';
import { wrap } from '../model/ring.ts';
import { forSize } from '../model/sized.ts';
import { layOut, type Bench, type ToldLoads } from './arrange.ts';
import type { Context } from './context.ts';
import type { TubePlace } from './flat-work.ts';
import { countOn, toldSegments, tubeBench } from './told-needles.ts';
import type { Tube } from './tube.ts';

/** Where a layout is kept. */
export interface LayoutsOfStage {
  readonly rows: readonly Row[];
  readonly stated: StatedLayout[];
}

/** Follows what the text says about needles from row to row. Mutable, and never leaves `knit/`. */
export class StatedLayouts {
  /** Breaks of the told needles now; `null` without any. */
  private told: readonly number[] | null = null;

  constructor(
    private readonly context: Context,
    private readonly place: TubePlace
  ) {}

  /** The stitches as they lie now, to be arranged. */
  bench(): Bench {
    return tubeBench({ context: this.context, ...this.place });
  }

  /** Keeps the told layout where it does not follow from the one before. `row`: the row just worked. */
  note(stage: LayoutsOfStage, row: Row | null): void {
    const layout = layoutOf(this.place.get(), this.context);
    const followed = row && this.told ? followedBreaks(row, this.told) : null;
    this.told = layout?.breaks ?? null;
    if (!layout || layout.breaks.length < 2 || (followed && sameBreaks(followed, layout.breaks))) return;
    if (stage.stated.at(-1)?.row === stage.rows.length) stage.stated.pop();
    stage.stated.push({ row: stage.rows.length, ...layout });
  }

  /** Lays the stitches on the needles as the text states it; see `layOut`. */
  state(stage: LayoutsOfStage, told: ToldLoads, keep: boolean): readonly number[] | null {
    const differing = layOut(this.bench(), told, keep);
    this.note(stage, null);
    return differing;
  }

  /** "16 sts on each needle" lays the stitches out where the text has not done so before. */
  stateEach(stage: LayoutsOfStage, count: number): void {
    const stitches = this.bench().stitches().length;
    const needles = count > 0 && stitches % count === 0 ? stitches / count : 0;
    if (toldSegments(this.place.get()) || needles < 2 || needles > 6) return;
    this.state(stage, { loads: new Array<number>(needles).fill(count), names: null }, false);
  }

  /** "N1: 23 sts" behind a step names the needle that took them, where the text has not named one so before. */
  nameLast(needles: readonly NeedleRef[]): void {
    const [ref] = needles;
    const { last } = this.context.needles;
    if (needles.length !== 1 || ref?.kind !== 'named' || last === null) return;
    const known = this.context.needles.find(ref);
    if (known === null || countOn(this.place.get(), known) === 0) this.context.needles.call(last, ref.name);
  }

  /** Checks the numbers of a list one by one where the text has told before what is on the needles. */
  check(stage: LayoutsOfStage, { loads, names, span }: Extract<Assertion, { kind: 'loads' }>): void {
    const numbers = loads.map((load) => forSize(load, this.context.size));
    const differing = this.state(stage, { loads: numbers, names }, true) ?? [];
    const index = differing.findIndex((found, place) => found !== numbers[place]);
    if (index < 0) return;
    const about = `stitches on needle ${names?.[index] ?? index + 1}`;
    this.context.report('count-mismatch', span, { expected: numbers[index]!, found: differing[index]!, about });
  }
}

function layoutOf(tube: Tube, context: Context): Omit<StatedLayout, 'row'> | null {
  const segments = toldSegments(tube);
  if (!segments) return null;
  const sorted = [...segments].sort((left, right) => left.from - right.from);
  return {
    breaks: sorted.map(({ from }) => from),
    names: sorted.map(({ needle }) => context.needles.nameOf(needle))
  };
}

function followedBreaks(row: Row, breaks: readonly number[]): number[] {
  const { to } = followGaps(row);
  return breaks.map((gap) => wrap(to[gap] ?? 0, row.after.stitches.length));
}

function sameBreaks(left: readonly number[], right: readonly number[]): boolean {
  const sorted = [...left].sort((one, other) => one - other);
  return sorted.length === right.length && sorted.every((gap, index) => gap === right[index]);
}
