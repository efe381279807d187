/** The told needles of a tube between two rows: as a layout, as a bench to arrange stitches on, and when they are forgotten. */

import type { Row } from '../model/fabric.ts';
import type { Instruction, StageText } from '../model/pattern.ts';
import { sectionAt, wrap } from '../model/ring.ts';
import { withNeedle, type Bench } from './arrange.ts';
import type { Context } from './context.ts';
import type { NeedleId, StitchItem } from './items.ts';
import { runOf } from './run.ts';
import { segmentsOf, stitchesAmong, type Segment } from './needles.ts';
import { borHand, handGap, ringOf, withBorAt, type Tube } from './tube.ts';

/** Words that say on which needle stitches are. */
const NEEDLE_WORDS = new Set([
  ...['take-needle', 'over-needles', 'move-stitches', 'gather', 'name-needle', 'layout', 'loads', 'on-needles'],
  ...['work-flat', 'move-yarn']
]);

/** Whether a stage speaks of needles. */
export function hasNeedleWords({ over, statements }: StageText): boolean {
  const isOver = over !== null && (over === 'each' || !('section' in over));
  return (
    isOver ||
    statements.some(
      (statement) =>
        NEEDLE_WORDS.has(statement.kind) ||
        ('assertions' in statement && statement.assertions.some(({ kind }) => NEEDLE_WORDS.has(kind))) ||
        (statement.kind === 'row' && bodyHas(statement.body, (part) => NEEDLE_WORDS.has(part.kind))) ||
        (statement.kind === 'arrange' && statement.actions.some(({ kind }) => NEEDLE_WORDS.has(kind)))
    )
  );
}

/** Whether an instruction of a row, at any depth, passes a test. */
function bodyHas(body: readonly Instruction[], test: (instruction: Instruction) => boolean): boolean {
  return body.some((part) => test(part) || ('body' in part && bodyHas(part.body, test)));
}

/** Whether a row speaks of needles. */
export function usesNeedles(body: readonly Instruction[]): boolean {
  return bodyHas(
    body,
    (part) =>
      NEEDLE_WORDS.has(part.kind) ||
      (part.kind === 'work-to' && part.target.kind === 'needle' && part.target.needle !== null)
  );
}

/** Whether a row says which needle takes its stitches. */
export function takesNeedle(body: readonly Instruction[]): boolean {
  return bodyHas(body, (part) => part.kind === 'take-needle');
}

/** Whether a row brings stitches in from outside. */
export function changesRing(body: readonly Instruction[]): boolean {
  return bodyHas(body, ({ kind }) => kind === 'pick-up');
}

/** The told needles, those of the BOR first; `null` when the text has not put every stitch on one. */
export function toldSegments(tube: Tube): readonly Segment[] | null {
  return segmentsOf(stitchesAmong(tube.items));
}

/** How many stitches are on a told needle. */
export function countOn(tube: Tube, needle: NeedleId): number {
  return tube.items.filter((item) => item.kind === 'stitch' && item.needle === needle).length;
}

/** The tube with no stitch on a told needle. */
export function withoutNeedles(tube: Tube): Tube {
  const items = tube.items.map((item) =>
    item.kind === 'stitch' && item.needle !== null ? { ...item, needle: null } : item
  );
  return { ...tube, items };
}

function idsMadeIn(row: Row | null): ReadonlySet<number> {
  const ids = (row?.steps ?? []).flatMap(({ at, makes }) =>
    Array.from({ length: makes }, (_, offset) => row!.after.stitches[wrap(at + offset, row!.after.stitches.length)]!.id)
  );
  return new Set(ids);
}

// A yarn that hangs at the BOR stays at it: the round has not begun.
function withBorBefore(tube: Tube, before: StitchItem): Tube {
  const wasAtBor = handGap(tube) === 0;
  const moved = withBorAt(tube, tube.items.indexOf(before));
  return wasAtBor ? { ...moved, hand: borHand(moved.items) } : moved;
}

/** The stitches of a tube, to be arranged; each change is given to `set`. */
export function tubeBench(at: {
  readonly context: Context;
  readonly get: () => Tube;
  readonly set: (tube: Tube) => void;
  readonly lastRow: () => Row | null;
}): Bench {
  const { context, get, set } = at;
  const worked = idsMadeIn(at.lastRow());
  const run = runOf(get());
  const stitches = ringOf(get()).stitches.length;
  return {
    context,
    justWorked: ({ stitch }) => worked.has(stitch.id),
    inRun: run && (({ at: place }) => wrap(place - run.from, stitches) < run.to - run.from),
    stitches: () => stitchesAmong(get().items),
    hand: () => stitchesAmong(get().items.slice(0, get().hand)).length,
    sectionOf: (stitch) => sectionAt(ringOf(get()), stitch.at),
    put: (stitches, needle) => set({ ...get(), items: withNeedle(get().items, stitches, needle) }),
    moveYarn: (before) => set({ ...get(), hand: get().items.indexOf(before) }),
    moveBor: (before) => set(before ? withBorBefore(get(), before) : withBorAt(get(), get().hand))
  };
}

/** Stitches on the needles that the text worked on to or slipped to last. */
export function lastNeedles({ needles }: Context, tube: Tube): number[] {
  return [needles.marked, needles.moved, needles.last].flatMap((needle) =>
    needle === null ? [] : [countOn(tube, needle)]
  );
}
