/** How places move from one picture to the next: straight, or round the middle of the ring when the ring is turned. */

import type { Picture, Point } from '../model/picture.ts';
import { bearing, direction, distance, mix, pointAlong, resample, shortTurn } from './geometry.ts';

/** The way from one picture to another. */
export interface Way {
  readonly from: Picture;
  readonly to: Picture;
  /** 0 to 1. */
  readonly t: number;
  /** True when the same ring lies turned: everything goes round the middle instead of through it. */
  readonly turns: boolean;
}

/** Nearer to the middle than this, a place has no direction from it worth keeping. */
const MIDDLE = 12;

/** Tells how a ring gets from one picture to the other. */
export function wayBetween(from: Picture, to: Picture, t: number): Way {
  const same = from.tracks.length === to.tracks.length && from.mirrored === to.mirrored;
  return { from, to, t, turns: same && from.front !== to.front };
}

/** A number on the way. */
export function blend(start: number, end: number, t: number): number {
  return start + (end - start) * t;
}

/** An angle on the way, by the shorter turn. */
export function blendAngle(start: number, end: number, t: number): number {
  return start + shortTurn(end - start) * t;
}

/** A place on the way. */
export function blendPoint(way: Way, start: Point, end: Point): Point {
  const { from, to, t, turns } = way;
  const centre = mix(from.centre, to.centre, t);
  const [near, far] = [distance(from.centre, start), distance(to.centre, end)];
  if (!turns || near < MIDDLE || far < MIDDLE) return mix(start, end, t);
  const ahead = direction(blendAngle(bearing(from.centre, start), bearing(to.centre, end), t));
  const reach = blend(near, far, t);
  return { x: centre.x + ahead.x * reach, y: centre.y + ahead.y * reach };
}

/** A line on the way; the number of its points may differ. */
export function blendLine(way: Way, start: readonly Point[], end: readonly Point[]): Point[] {
  if (start.length === end.length) return start.map((point, index) => blendPoint(way, point, end[index]!));
  const count = Math.max(start.length, end.length, 2);
  const [one, other] = [resample(start, count), resample(end, count)];
  return one.map((point, index) => blendPoint(way, point, other[index]!));
}

/**
 * A track on the way: it keeps its shape while the ring is turned.
 *
 * Its ends go round the middle, and its shape between them goes from the one to the other.
 */
export function blendTrack(way: Way, start: readonly Point[], end: readonly Point[]): Point[] {
  if (!way.turns) return blendLine(way, start, end);
  const count = Math.max(start.length, end.length);
  const [one, other] = [inChord(resample(start, count)), inChord(resample(end, count))];
  const middle = blendPoint(way, one.middle, other.middle);
  const along = direction(blendAngle(one.angle, other.angle, way.t));
  return one.points.map((point, index) => {
    const { x, y } = mix(point, other.points[index]!, way.t);
    return { x: middle.x + along.x * x - along.y * y, y: middle.y + along.y * x + along.x * y };
  });
}

interface Chord {
  readonly middle: Point;
  readonly angle: number;
  readonly points: readonly Point[];
}

// The points as seen from the middle of the straight line between the ends.
function inChord(points: readonly Point[]): Chord {
  const [first, last] = [points[0]!, points.at(-1)!];
  const [middle, angle] = [mix(first, last, 0.5), bearing(first, last)];
  const along = direction(angle);
  const seen = points.map((point) => {
    const [x, y] = [point.x - middle.x, point.y - middle.y];
    return { x: x * along.x + y * along.y, y: y * along.x - x * along.y };
  });
  return { middle, angle, points: seen };
}

/** Share of a needle at either end over which stitches cross to the neighbouring one. */
const CROSSING = 0.02;

/**
 * The place on a ring at `at`: whole numbers are the starts of its tracks, so 1.5 is the middle of the second. Between two
 * tracks the way leads over both tips.
 */
export function onRing(tracks: readonly (readonly Point[])[], at: number): Point {
  const track = (index: number) => tracks[((index % tracks.length) + tracks.length) % tracks.length]!;
  const index = Math.floor(at);
  const share = at - index;
  const over = (before: number, part: number) =>
    mix(pointAlong(track(before), 1 - CROSSING), pointAlong(track(before + 1), CROSSING), part);
  if (share < CROSSING) return over(index - 1, 0.5 + share / (2 * CROSSING));
  if (share > 1 - CROSSING) return over(index, (share - 1 + CROSSING) / (2 * CROSSING));
  return pointAlong(track(index), share);
}
