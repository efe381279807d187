/** The place of work: the end of the front needle from which stitches are taken now. */

import type { Letter } from '../model/setup.ts';
import type { Point } from '../model/picture.ts';
import { direction, from, type Pose, type Vector } from './geometry.ts';
import { onTrack, poseOf, type Seat, type Table } from './seats.ts';

/** A pole stands here; the flag flies to this side first. */
export interface FlagPlace {
  readonly id: string;
  readonly text: string;
  readonly solid: boolean;
  readonly at: Point;
  /** Sides to try, best first: `rise` 1 when the pole goes up, -1 down; `flies` as in a flag. */
  readonly ways: readonly { readonly rise: 1 | -1; readonly flies: 1 | -1 }[];
}

/** What the needles leave for the yarn and the flags. */
export interface Tools {
  readonly flags: readonly FlagPlace[];
  /** The working needle or tip: where it enters the stitch, which way it lies from there, and its length. */
  readonly working: { readonly tip: Point; readonly angle: number; readonly length: number } | null;
}

/** How steeply the working needle lies, in degrees; flatter beside a needle whose end bends upwards. */
const SLOPE = 30;
const FLAT = 6;

/** The work end of the front needle: the pose of its first stitch to be worked. `null` when nothing is worked. */
export function workPose(table: Table): Pose | null {
  return table.moment.feeding === null ? null : handPose(table);
}

/** A point seen from the first stitch to be worked: `along` towards the tip, `out` towards the fabric. */
export function atWork(table: Table, along: number, out: number): Point {
  return from(handPose(table), along * table.hand, out);
}

/** Where the working needle enters the work, and the way it lies: down from it and away. At rest it lies a little apart. */
export function entry(table: Table): { readonly tip: Point; readonly angle: number; readonly way: Vector } {
  const { hand, scale, moment } = table;
  const slope = moment.setup.form === 'flexible' ? FLAT : SLOPE;
  const angle = hand === 1 ? slope : 180 - slope;
  const way = direction(angle);
  const worked = moment.feeding !== null;
  const crossing = worked ? atWork(table, scale.pitch * 0.32, 0) : atWork(table, scale.end * 0.8, scale.thick * 2);
  const over = worked ? scale.thick * 2 : 0;
  return { tip: { x: crossing.x - way.x * over, y: crossing.y - way.y * over }, angle, way };
}

function handPose({ front, hand }: Table): Pose {
  return front ? poseOf(front, nearBead(front, hand)) : { x: 0, y: 0, angle: 0 };
}

/** Distance along the track of the place where the shaft ends at the work end. */
export function nearEnd(table: Table, seat: Seat): number {
  const { end } = table.scale;
  return table.hand === 1 ? onTrack(seat, 0) - end : onTrack(seat, seat.beads.room) + end;
}

/** The name of the needle that works: its letter, when it is a needle of its own. */
export function workingLetter({ moment }: Table): Letter | null {
  const needle = moment.working === null ? undefined : moment.needles[moment.working];
  return needle && needle.number === null ? needle.letter : null;
}

function nearBead(seat: Seat, hand: 1 | -1): number {
  const { stitches, room } = seat.beads;
  return (hand === 1 ? stitches[0] : stitches.at(-1)) ?? (hand === 1 ? 0 : room);
}

/** The other side. */
export function otherWay(hand: 1 | -1): 1 | -1 {
  return hand === 1 ? -1 : 1;
}
