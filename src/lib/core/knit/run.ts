/** Flat stages: whether a stage is worked flat, over which run of the ring, and which side faces. */

import type { FlatOver, NeedleRefs } from '../model/needle-words.ts';
import type { Instruction, RowText, Side, StageText, Statement } from '../model/pattern.ts';
import { wrap, type Ring } from '../model/ring.ts';
import { forSize } from '../model/sized.ts';
import type { Context } from './context.ts';
import type { NeedleId } from './items.ts';
import { sameName } from './targets.ts';
import { takesOf } from './takes.ts';
import { countOn, takesNeedle, toldSegments } from './told-needles.ts';
import { handGap, ringOf, type Tube } from './tube.ts';

/** A run of the ring, in gaps; `to` may pass the end of the ring when the run lies across the BOR. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

/** A stage is flat when its heading says over what, when a row turns, or when a row claims the wrong side. */
export function isFlat(stage: StageText): boolean {
  return stage.over !== null || stage.statements.some(isFlatStatement);
}

function isFlatStatement(statement: Statement): boolean {
  if (statement.kind === 'arrange') return statement.actions.some(({ kind }) => kind === 'work-flat');
  if (statement.kind !== 'row') return false;
  return statement.side === 'WS' || hasTurn(statement.body);
}

/**
 * A stage that casts on and never joins is a strip when its numbered rows are called rows: "1st row: sl 1, k to end." Stitches
 * that are laid on several needles make a tube without a word about joining.
 */
export function isStrip(stage: StageText): boolean {
  const { statements } = stage;
  const numbered = statements.filter((statement) => statement.kind === 'row' && statement.numbers.kind === 'numbers');
  const joins = statements.some(({ kind }) => kind === 'join' || kind === 'layout' || kind === 'arrange');
  const casts = statements.some(({ kind }) => kind === 'cast-on');
  return casts && !joins && numbered.length > 0 && numbered.every((row) => row.kind === 'row' && row.noun === 'Row');
}

/** Whether a row ends with a turn. */
export function hasTurn(body: readonly Instruction[]): boolean {
  return body.some((part) => part.kind === 'turn' || ('body' in part && hasTurn(part.body)));
}

/** "Turn." alone: the row before has ended, and the next one begins where the yarn hangs. */
export function isBareTurn(body: readonly Instruction[]): boolean {
  return body.length === 1 && body[0]!.kind === 'turn' && body[0]!.mark === 'none';
}

/** The run that the tube already carries from the flat stage before, or `null`. */
export function runOf(tube: Tube): Run | null {
  let from = -1;
  let to = -1;
  let at = 0;
  for (const item of tube.items) {
    if (item.kind === 'stitch') at += 1;
    if (item.kind === 'limit' && item.end === 'first') from = at;
    if (item.kind === 'limit' && item.end === 'last') to = at;
  }
  if (from < 0 || to < 0) return null;
  return to > from ? { from, to } : { from, to: to + at };
}

/**
 * The run that a flat stage is worked over: what its heading names, the run of the flat stage before, the section whose
 * name stands in the heading, or as many stitches as its first row works before it turns.
 */
export function findRun(stage: StageText, tube: Tube, context: Context): Run {
  const ring = ringOf(tube);
  const carried = runOf(tube);
  const gap = handGap(tube);
  const stated = stage.over && statedRun(stage.over, tube, context);
  if (stated) return stated;
  return carried ?? impliedRun(stage, { ring, gap, tube, context });
}

/** The run of needles, a section or a count, as the text states it; `null` when neither tells. */
export function statedRun(over: FlatOver, tube: Tube, context: Context): Run | null {
  if (over === 'each' || !('section' in over)) return unionRun(over, tube, context);
  const ring = ringOf(tube);
  const named = over.section ? sectionRun(ring, over.section) : null;
  if (named) return named;
  const count = over.count ? forSize(over.count, context.size) : null;
  if (count === null || count <= 0) return null;
  return fromHand(ring, handGap(tube), { count, carried: runOf(tube) });
}

// The run that the needles, the heading or the rows imply.
function impliedRun(stage: StageText, place: Place): Run {
  const { ring, tube, context } = place;
  const marked = context.needles.marked;
  return (
    (startsWithTurn(stage) && toldSegments(tube) ? firstTurn(stage, place) : null) ??
    (marked === null ? null : needleRun(tube, marked)) ??
    headingSection(ring, stage) ??
    headingNeedle(stage, tube, context) ??
    carriedNeedle(place) ??
    firstTurn(stage, place)
  );
}

// A count is told from where the yarn hangs; a run that ends there and has this length is the same run, met from its end.
function fromHand(ring: Ring, gap: number, told: { readonly count: number; readonly carried: Run | null }): Run {
  const { count, carried } = told;
  if (carried && carried.to - carried.from === count) return carried;
  return { from: gap, to: gap + Math.min(count, ring.stitches.length) };
}

/** The run of a flat piece: all of its stitches. */
export function wholeOf(tube: Tube): Run {
  return { from: 0, to: ringOf(tube).stitches.length };
}

/** The run of a named section; one that lies across the BOR is told past the end of the ring. */
export function sectionRun(ring: Ring, name: string): Run | null {
  const runs = ring.sections.filter((run) => sameName(run.name, name));
  const [first, last] = [runs[0], runs.at(-1)];
  if (!first || !last) return null;
  const acrossBor = runs.length === 2 && first.from === 0 && last.to === ring.stitches.length;
  return acrossBor ? { from: last.from, to: first.to + ring.stitches.length } : { from: first.from, to: last.to };
}

function headingSection(ring: Ring, stage: StageText): Run | null {
  const words = stage.name.toLowerCase().split(/[^a-z]+/u);
  const section = ring.sections.find((run) => words.some((word) => sameName(word, run.name)));
  return section ? sectionRun(ring, section.name) : null;
}

/** "K the first 14 stitches of the first needle, turn": the run is made by the rows that follow. */
export function startsWithTurn(stage: StageText): boolean {
  const row = firstRow(stage);
  return row?.numbers.kind === 'next' && hasTurn(row.body);
}

// The first row behind the steps that only arrange the needles.
function firstRow(stage: StageText): RowText | undefined {
  const rows = stage.statements.filter((statement): statement is RowText => statement.kind === 'row');
  return rows.find(({ body }) => !isBareTurn(body) && (hasTurn(body) || !takesNeedle(body))) ?? rows[0];
}

interface Place {
  readonly ring: Ring;
  readonly gap: number;
  readonly tube: Tube;
  readonly context: Context;
}

function firstTurn(stage: StageText, at: Place): Run {
  const row = firstRow(stage);
  const all = at.ring.stitches.length;
  const takes = Math.min((row && takesBeforeTurn(row.body, at)) ?? all, all);
  const behind = row ? heldBehind(row.body, at) : 0;
  const from = wrap(at.gap - behind, all);
  return { from, to: from + Math.min(behind + takes, all) };
}

// "K the 14 sts of N1 on to N4, turn": the stitches that N4 holds already are worked as well.
function heldBehind(body: readonly Instruction[], { ring, gap, tube, context }: Place): number {
  const take = body.find((part) => part.kind === 'take-needle' && part.needle?.kind === 'named');
  const needle = take?.kind === 'take-needle' && take.needle ? context.needles.find(take.needle) : null;
  const segment = toldSegments(tube)?.find((one) => one.needle === needle);
  const endsHere = segment && wrap(segment.from + segment.stitches, ring.stitches.length) === gap;
  return endsHere ? segment.stitches : 0;
}

// "1st needle: k to end, turn" works the stitches of that needle.
function takesBeforeTurn(body: readonly Instruction[], at: Place): number | null {
  const turn = body.findIndex((part) => hasTurn([part]));
  if (turn < 0) return null;
  const last = body[turn]!;
  const before = takesBefore(body.slice(0, turn), at);
  if (before === null || last.kind !== 'over-needles' || last.needles === 'each') return before;
  const inner = takesBeforeTurn(last.body, at);
  const needle = at.context.needles.find(last.needles[0]!);
  return before + (inner ?? (needle === null ? 0 : countOn(at.tube, needle)));
}

// "K the sts of N1 on to N3, turn" takes what is on that needle.
function takesBefore(body: readonly Instruction[], at: Place): number | null {
  return body.reduce<number | null>((sum, part) => {
    const onNeedle = part.kind === 'work-to' && part.target.kind === 'needle' ? part.target.needle : null;
    const needle = onNeedle && at.context.needles.find(onNeedle);
    const takes = needle === null ? takesOf([part], at.context.size) : countOn(at.tube, needle);
    return sum === null || takes === null ? null : sum + takes;
  }, 0);
}

// The run of the stitches on a told needle.
function needleRun(tube: Tube, needle: NeedleId): Run | null {
  const segment = toldSegments(tube)?.find((candidate) => candidate.needle === needle);
  return segment ? { from: segment.from, to: segment.from + segment.stitches } : null;
}

// The run of several neighbouring told needles; `null` when one of them is unknown or they lie apart.
function unionRun(needles: NeedleRefs, tube: Tube, context: Context): Run | null {
  const segments = [...(toldSegments(tube) ?? [])].sort((left, right) => left.from - right.from);
  const ids =
    needles === 'each' ? segments.map(({ needle }) => needle) : needles.map((ref) => context.needles.find(ref));
  const isIn = (index: number) => ids.includes(segments[wrap(index, segments.length)]?.needle ?? null);
  const first = segments.findIndex((_, index) => isIn(index) && !isIn(index - 1));
  if (ids.includes(null) || segments.length === 0) return null;
  const { from } = segments[Math.max(first, 0)]!;
  return { from, to: from + segments.reduce((sum, one, index) => (isIn(index) ? sum + one.stitches : sum), 0) };
}

// The needle that stitches were put on, here or in the stage before, where the yarn hangs at one of its ends.
function carriedNeedle({ ring, gap, tube, context }: Place): Run | null {
  const { moved, markedBefore } = context.needles;
  const runs = [moved, markedBefore].map((needle) => (needle === null ? null : needleRun(tube, needle)));
  const isAtEnd = (run: Run) => [run.from, run.to].some((end) => wrap(end, ring.stitches.length) === gap);
  return runs.find((run) => run && isAtEnd(run)) ?? null;
}

function headingNeedle(stage: StageText, tube: Tube, context: Context): Run | null {
  for (const name of stage.name.toLowerCase().split(/[^a-z]+/u)) {
    const needle = name === '' ? null : context.needles.find({ kind: 'named', name });
    const run = needle === null ? null : needleRun(tube, needle);
    if (run) return run;
  }
  return null;
}

/** Which side a row works, and whether the yarn hangs where such a row can start. */
export function sideOf(
  told: Side | null,
  at: { readonly tube: Tube; readonly run: Run; readonly previous: Side | null }
): { readonly side: Side; readonly fits: boolean } {
  const stitches = Math.max(ringOf(at.tube).stitches.length, 1);
  const gap = handGap(at.tube);
  const [atStart, atEnd] = [gap === wrap(at.run.from, stitches), gap === wrap(at.run.to, stitches)];
  const due: Side = at.previous ? (at.previous === 'RS' ? 'WS' : 'RS') : atEnd && !atStart ? 'WS' : 'RS';
  const side = told ?? due;
  if (at.previous && side === due) return { side, fits: true };
  const fits = side === 'RS' ? atStart : atEnd || (at.previous !== null && side === due);
  return { side, fits };
}

/** The tube with the yarn at the end of the run where a row of this side starts. */
export function handAtRun(tube: Tube, run: Run, side: Side): Tube {
  const stitches = Math.max(ringOf(tube).stitches.length, 1);
  const wanted = wrap(side === 'RS' ? run.from : run.to, stitches);
  const index = tube.items.findIndex((item) => item.kind === 'stitch' && item.at === wanted);
  return { ...tube, hand: index < 0 ? 1 : index };
}
