/** One moment of a plan: what every needle does at the start of a pass, and every stitch on it. */

import type { Row } from '../model/fabric.ts';
import type { HeldStitch, HungMarker, Moment, NeedleMoment, NeedleState, Piece } from '../model/moment.ts';
import type { Hands, Plan, StagePlan } from '../model/plan.ts';
import { BOR, sectionAt, wrap, type Ring } from '../model/ring.ts';
import type { StitchId } from '../model/stitch.ts';
import { afterPasses, afterRow } from './hands.ts';
import { breaksAfter, breaksByRow, loadsBetween, needleAt, passesOf } from './passes.ts';

/** Which moment: the start of pass `pass` of row `row` of a stage; `row` equal to the number of rows is the end of it. */
export interface MomentAt {
  readonly stage: number;
  /** 0 to the number of rows of the stage. */
  readonly row: number;
  /** 0 to the number of passes of the row - 1. */
  readonly pass: number;
}

/** A needle's stretch of the ring at this moment, worked already or not. */
interface Stretch {
  readonly ring: Ring;
  readonly from: number;
  readonly load: number;
  readonly worked: boolean;
}

/**
 * The moment at a place of a plan, or `null` when the stage has no layout (nothing on the needles, or impossible).
 *
 * @throws RangeError if the stage or row does not exist: a bug in the caller.
 */
export function momentAt(plan: Plan, at: MomentAt): Moment | null {
  const stagePlan = plan.stages[at.stage];
  if (!stagePlan || at.row > stagePlan.stage.rows.length) {
    throw new RangeError(`momentAt() got stage ${at.stage}, row ${at.row} of a plan of ${plan.stages.length} stages`);
  }
  if (!stagePlan.chosen) return null;
  const breaks = breaksByRow(stagePlan.stage, stagePlan.chosen.layout, stagePlan.relaid);
  const row = stagePlan.stage.rows[at.row] ?? null;
  const here = breaks[at.row]!;
  const place = { plan, stagePlan, at, row, breaks: here, next: row ? breaksAfter(row, here) : here };
  return buildMoment(place, handsAt(plan, stagePlan, { breaks, at }));
}

interface Place {
  readonly plan: Plan;
  readonly stagePlan: StagePlan;
  readonly at: MomentAt;
  readonly row: Row | null;
  readonly breaks: readonly number[];
  readonly next: readonly number[];
}

function handsAt(
  plan: Plan,
  stagePlan: StagePlan,
  where: { readonly breaks: readonly (readonly number[])[]; readonly at: MomentAt }
): Hands {
  let hands = stagePlan.letters;
  stagePlan.stage.rows.slice(0, where.at.row).forEach((row, index) => {
    hands = afterRow(plan.setup, hands, { row, breaks: where.breaks[index]!, next: where.breaks[index + 1]! });
  });
  const row = stagePlan.stage.rows[where.at.row];
  if (!row) return hands;
  return afterPasses(plan.setup, hands, passesOf(row, where.breaks[where.at.row]!).slice(0, where.at.pass));
}

function buildMoment(place: Place, hands: Hands): Moment {
  const { plan, row, stagePlan, at } = place;
  const passes = row ? passesOf(row, place.breaks) : [];
  const fed = passes[at.pass] ?? null;
  const stretches = stretchesOf(place, passes);
  const needles = stretches.map((stretch, index) => needleMoment(place, { stretch, index, fed, passes, hands }));
  const free = hands.free.map((letter, index) => freeNeedle(letter, index === 0 && fed !== null));
  const worker = plan.setup.works === 'free-needle' ? (free.length > 0 ? needles.length : null) : fed;
  return {
    setup: plan.setup,
    stage: stagePlan.stage.name,
    row: row?.label ?? '',
    side: row?.side ?? stagePlan.stage.rows.at(-1)?.side ?? 'RS',
    needles: [...needles, ...free],
    working: fed === null ? null : worker,
    feeding: fed,
    yarn: yarnAt(place, { stretches, passes }),
    bor: borAt(place, stretches)
  };
}

function stretchesOf(place: Place, passes: readonly number[]): Stretch[] {
  const { row, stagePlan, breaks, next, at } = place;
  const before = row?.before ?? stagePlan.stage.exit;
  const after = row?.after ?? before;
  const loads = loadsBetween(breaks, before.stitches.length);
  const nextLoads = loadsBetween(next, after.stitches.length);
  return breaks.map((from, index) => {
    const worked = passes.slice(0, at.pass).includes(index);
    return worked
      ? { ring: after, from: next[index]!, load: nextLoads[index]!, worked }
      : { ring: before, from, load: loads[index]!, worked };
  });
}

interface OneNeedle {
  readonly stretch: Stretch;
  readonly index: number;
  readonly fed: number | null;
  readonly passes: readonly number[];
  readonly hands: Hands;
}

function needleMoment(place: Place, one: OneNeedle): NeedleMoment {
  const { stretch, index, fed } = one;
  const positions = positionsOf(stretch);
  const ends = stretch.worked ? null : endsOf(place.row, stretch);
  return {
    letter: one.hands.holding[index]!,
    number: index + 1,
    group: groupOf(place, index, fed),
    state: stateOf(place, one),
    stitches: positions.map((position) => heldStitch(place.row, stretch, position)),
    pieces: piecesOf(stretch.ring, positions),
    markers: markersOn(stretch),
    firstIs: ends?.first ?? '',
    lastIs: ends?.last ?? ''
  };
}

function freeNeedle(letter: NeedleMoment['letter'], working: boolean): NeedleMoment {
  const state: NeedleState = working ? 'working' : 'free';
  return { letter, number: null, group: null, state, stitches: [], pieces: [], markers: [], firstIs: '', lastIs: '' };
}

// Of a magic loop the group in front is the one being worked.
function groupOf(place: Place, index: number, fed: number | null): 'front' | 'back' | null {
  if (place.plan.setup.works !== 'back-tip') return null;
  return index === (fed ?? 0) ? 'front' : 'back';
}

function stateOf(place: Place, one: OneNeedle): NeedleState {
  if (one.index === one.fed) return 'feeding';
  return place.row === null || one.passes.includes(one.index) ? 'holding' : 'resting';
}

function positionsOf(stretch: Stretch): number[] {
  const stitches = stretch.ring.stitches.length;
  return Array.from({ length: stretch.load }, (_, offset) => wrap(stretch.from + offset, stitches));
}

function heldStitch(row: Row | null, stretch: Stretch, position: number): HeldStitch {
  const { id, face, loop } = stretch.ring.stitches[position]!;
  const crossed = row !== null && !stretch.worked && isCrossed(row, position);
  return { id, face, loop, section: sectionAt(stretch.ring, position), crossed };
}

function isCrossed(row: Row, position: number): boolean {
  const stitches = row.before.stitches.length;
  return row.steps.some((step) => step.operation.crosses && wrap(position - step.from, stitches) < step.takes);
}

function piecesOf(ring: Ring, positions: readonly number[]): Piece[] {
  const pieces: { name: string; stitches: number }[] = [];
  for (const position of positions) {
    const name = sectionAt(ring, position) ?? '';
    const last = pieces.at(-1);
    if (last && last.name === name) last.stitches += 1;
    else pieces.push({ name, stitches: 1 });
  }
  return pieces;
}

// A ring marker in the gap of a break hangs on the needle that begins there. The BOR is told by `bor`.
function markersOn(stretch: Stretch): HungMarker[] {
  const stitches = stretch.ring.stitches.length;
  return stretch.ring.markers
    .filter((marker) => marker.name !== BOR)
    .map((marker) => ({ name: marker.name, kind: marker.kind, after: wrap(marker.at - stretch.from, stitches) }))
    .filter((marker) => marker.after < stretch.load)
    .sort((left, right) => left.after - right.after);
}

// What is done first and last on a needle, in the order of working.
function endsOf(row: Row | null, stretch: Stretch): { first: string; last: string } | null {
  if (!row) return null;
  const stitches = row.before.stitches.length;
  const on = row.steps.filter((step) => wrap(step.from - stretch.from, stitches) < stretch.load);
  const [first, last] = [on[0], on.at(-1)];
  return first && last ? { first: first.operation.name, last: last.operation.name } : null;
}

function borAt(place: Place, stretches: readonly Stretch[]): Moment['bor'] {
  const index = stretches.findIndex(({ ring, from, load }) => {
    const gap = wrap(-from, ring.stitches.length);
    return gap < load;
  });
  const stretch = stretches[index];
  if (!stretch || place.stagePlan.stage.start.stitches.length === 0) return null;
  return { needle: index, after: wrap(-stretch.from, stretch.ring.stitches.length) };
}

function yarnAt(
  place: Place,
  where: { readonly stretches: readonly Stretch[]; readonly passes: readonly number[] }
): Moment['yarn'] {
  const worked = where.passes.slice(0, place.at.pass).at(-1);
  if (worked !== undefined && place.row) {
    const load = where.stretches[worked]!.load;
    return load > 0 ? { needle: worked, stitch: place.row.side === 'RS' ? load - 1 : 0 } : null;
  }
  const ring = place.row?.before ?? place.stagePlan.stage.exit;
  const position = lastWorked(place, ring);
  if (position === null) return null;
  const needle = needleAt(place.breaks, position, ring.stitches.length);
  return { needle, stitch: wrap(position - place.breaks[needle]!, ring.stitches.length) };
}

// Position of the stitch that was worked last before this row; at the cast-on the last stitch of the ring.
function lastWorked(place: Place, ring: Ring): number | null {
  if (ring.stitches.length === 0) return null;
  const positions = new Map<StitchId, number>(ring.stitches.map((stitch, position) => [stitch.id, position]));
  for (const row of rowsBefore(place)) {
    const step = row.steps.findLast((candidate) => candidate.makes > 0);
    if (!step) continue;
    const at = row.side === 'RS' ? step.at + step.makes - 1 : step.at;
    const stitch = row.after.stitches[wrap(at, row.after.stitches.length)];
    return (stitch && positions.get(stitch.id)) ?? ring.stitches.length - 1;
  }
  return ring.stitches.length - 1;
}

function* rowsBefore(place: Place): Generator<Row> {
  yield* place.stagePlan.stage.rows.slice(0, place.at.row).reverse();
  for (let stage = place.at.stage - 1; stage >= 0; stage -= 1) {
    yield* [...place.plan.stages[stage]!.stage.rows].reverse();
  }
}

/** Number of passes of a row of a stage plan; 0 when the stage has no layout. */
export function passCount(stagePlan: StagePlan, row: number): number {
  const { stage, chosen, relaid } = stagePlan;
  const at = stage.rows[row];
  if (!chosen || !at) return 0;
  return passesOf(at, breaksByRow(stage, chosen.layout, relaid)[row]!).length;
}
