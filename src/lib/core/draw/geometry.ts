/** Points, poses and boxes. Units of the picture, y downwards, angles in degrees, clockwise. */

import type { Point } from '../model/picture.ts';

/** A place and the way things lie there: at angle 0 the fabric hangs down and the first stitch is at the right. */
export interface Pose extends Point {
  readonly angle: number;
}

/** An upright box; `x` and `y` are its middle. */
export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

/** A direction of length 1 (or a distance, where it says so). */
export type Vector = Point;

/** The direction at an angle; 0 points to the right, 90 down. */
export function direction(angle: number): Vector {
  const turn = (angle * Math.PI) / 180;
  return { x: Math.cos(turn), y: Math.sin(turn) };
}

/** The point that lies `along` and `out` from a pose: along its needle, and away from it on the side of the fabric. */
export function from(pose: Pose, along: number, out: number): Point {
  const axis = direction(pose.angle);
  return { x: pose.x + axis.x * along - axis.y * out, y: pose.y + axis.y * along + axis.x * out };
}

/** The side of the fabric, as a direction. */
export function outward(pose: Pose): Vector {
  return direction(pose.angle + 90);
}

/** The point at a share of the way from one to the other. */
export function mix(start: Point, end: Point, share: number): Point {
  return { x: start.x + (end.x - start.x) * share, y: start.y + (end.y - start.y) * share };
}

/** How far apart two points are. */
export function distance(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/** The angle of the way from one point to another. */
export function bearing(start: Point, end: Point): number {
  return (Math.atan2(end.y - start.y, end.x - start.x) * 180) / Math.PI;
}

/** Brings an angle into the range above -180 up to 180. */
export function shortTurn(angle: number): number {
  const turn = ((angle % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}

/** Keeps a number inside a range. */
export function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** Points along the straight way between two points, both included, at most `step` apart. */
export function walk(start: Point, end: Point, step: number): Point[] {
  const parts = Math.max(1, Math.ceil(distance(start, end) / step));
  return Array.from({ length: parts + 1 }, (_, index) => mix(start, end, index / parts));
}

/** Points along a line with corners, all corners included. */
export function walkAll(points: readonly Point[], step: number): Point[] {
  const [first] = points;
  if (!first) return [];
  return [first, ...points.slice(1).flatMap((point, index) => walk(points[index]!, point, step).slice(1))];
}

/** Points of a cubic Bézier curve, both ends included. */
export function bezier(curve: readonly [Point, Point, Point, Point], parts: number): Point[] {
  const [start, one, two, end] = curve;
  return Array.from({ length: parts + 1 }, (_, index) => {
    const t = index / parts;
    const left = mix(mix(start, one, t), mix(one, two, t), t);
    const right = mix(mix(one, two, t), mix(two, end, t), t);
    return mix(left, right, t);
  });
}

/**
 * The same line with `count` points, at equal distances along it.
 *
 * @param count - At least 2.
 */
export function resample(points: readonly Point[], count: number): Point[] {
  const ways = points.slice(1).map((point, index) => distance(points[index]!, point));
  const whole = ways.reduce((sum, way) => sum + way, 0);
  return Array.from({ length: count }, (_, index) => pointAt(points, ways, (whole * index) / (count - 1)));
}

/** The point at a share of the length of a line. */
export function pointAlong(points: readonly Point[], share: number): Point {
  const ways = points.slice(1).map((point, index) => distance(points[index]!, point));
  return pointAt(points, ways, share * ways.reduce((sum, way) => sum + way, 0));
}

function pointAt(points: readonly Point[], ways: readonly number[], at: number): Point {
  let left = at;
  for (const [index, way] of ways.entries()) {
    if (left <= way && way > 0) return mix(points[index]!, points[index + 1]!, left / way);
    left -= way;
  }
  return points.at(-1)!;
}
