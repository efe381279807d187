/** How places move from one picture to the next: straight, or round the middle of the ring when the ring is turned. */

import type { Picture, Point } from '../model/picture.ts';
import { bearing, direction, distance, mix, pointAlong, resample, shortTurn } from './geometry.ts';

/** The way from one picture to another, both moved so that the middles of their rings coincide. */
export interface Way {
  readonly from: Picture;
  readonly to: Picture;
  /** 0 to 1. */
  readonly t: number;
  /** Middle of the ring now. */
  readonly centre: Point;
  /** True when the same ring lies turned: everything goes round the middle instead of through it. */
  readonly turns: boolean;
  /** How far the ring is turned, in degrees: half a turn goes the same way for everything. */
  readonly turn: number;
  /** Height of the turn as a share of its width: a low picture is turned in a low oval. */
  readonly flat: number;
}

/** Nearer to the middle than this, a place has no direction from it worth keeping. */
const MIDDLE = 12;

/** A turn below this is one of its own, not that of the ring. */
const SMALL = 60;

/** Tells how a ring gets from one picture to the other. */
export function wayBetween(from: Picture, to: Picture, t: number): Way {
  const same = from.tracks.length === to.tracks.length && from.mirrored === to.mirrored;
  const centre = mix(from.centre, to.centre, t);
  const turns = same && from.front !== to.front;
  const turn = turns ? turnOf(from, to) : 0;
  // A quarter of a turn has room enough in the picture; half of one needs to be low.
  const flat = Math.abs(turn) > 120 ? (from.height + to.height) / (from.width + to.width) : 1;
  return { from: moved(from, centre), to: moved(to, centre), t, centre, turns, turn, flat };
}

// The turn of the first needle, from the one picture to the other.
function turnOf(from: Picture, to: Picture): number {
  const [before, after] = [from.tracks[0]?.points, to.tracks[0]?.points];
  if (!before || !after) return 0;
  return shortTurn(Math.round(bearing(after[0]!, after.at(-1)!) - bearing(before[0]!, before.at(-1)!)));
}

// The picture with its middle somewhere else.
function moved(picture: Picture, centre: Point): Picture {
  const [x, y] = [centre.x - picture.centre.x, centre.y - picture.centre.y];
  const at = <T extends Point>(item: T): T => ({ ...item, x: item.x + x, y: item.y + y });
  const line = <T extends { readonly points: readonly Point[] }>(item: T): T => ({
    ...item,
    points: item.points.map(at)
  });
  return {
    ...picture,
    centre,
    tracks: picture.tracks.map(line),
    shafts: picture.shafts.map(at),
    cords: picture.cords.map(line),
    stitches: picture.stitches.map(at),
    markers: picture.markers.map(at),
    yarns: picture.yarns.map(line),
    lines: picture.lines.map(line),
    labels: picture.labels.map(at),
    flags: picture.flags.map(at)
  };
}

/** A number on the way. */
export function blend(start: number, end: number, t: number): number {
  return start + (end - start) * t;
}

/** An angle on the way: by the shorter turn, but with the ring where it is a long one. */
export function blendAngle({ turn, t }: Way, start: number, end: number): number {
  const short = shortTurn(end - start);
  const whole = Math.abs(short) < SMALL ? short : turn + shortTurn(short - turn);
  return start + whole * t;
}

// The place as seen from the middle, drawn up to a circle; and back.
function opened({ centre, flat }: Way, point: Point): Point {
  return { x: point.x - centre.x, y: (point.y - centre.y) / flat };
}

function closed({ centre, flat }: Way, point: Point): Point {
  return { x: centre.x + point.x, y: centre.y + point.y * flat };
}

const ORIGIN: Point = { x: 0, y: 0 };

/** A place on the way. */
export function blendPoint(way: Way, start: Point, end: Point): Point {
  if (!way.turns) return mix(start, end, way.t);
  return closed(way, turned(way, opened(way, start), opened(way, end)));
}

function turned(way: Way, start: Point, end: Point): Point {
  const { t } = way;
  const [near, far] = [distance(ORIGIN, start), distance(ORIGIN, end)];
  if (near < MIDDLE || far < MIDDLE) return mix(start, end, t);
  const ahead = direction(blendAngle(way, bearing(ORIGIN, start), bearing(ORIGIN, end)));
  const reach = blend(near, far, t);
  return { x: ahead.x * reach, y: ahead.y * reach };
}

/** A line on the way; the number of its points may differ. */
export function blendLine(way: Way, start: readonly Point[], end: readonly Point[]): Point[] {
  if (start.length === end.length) return start.map((point, index) => blendPoint(way, point, end[index]!));
  const count = Math.max(start.length, end.length, 2);
  const [one, other] = [resample(start, count), resample(end, count)];
  return one.map((point, index) => blendPoint(way, point, other[index]!));
}

/** A track on the way: its ends go round the middle, and it keeps its shape while the ring is turned. */
export function blendTrack(way: Way, start: readonly Point[], end: readonly Point[]): Point[] {
  if (!way.turns) return blendLine(way, start, end);
  const count = Math.max(start.length, end.length);
  const chordOf = (points: readonly Point[]) => inChord(resample(points, count).map((point) => opened(way, point)));
  const [one, other] = [chordOf(start), chordOf(end)];
  const middle = turned(way, one.middle, other.middle);
  const along = direction(blendAngle(way, one.angle, other.angle));
  return one.points.map((point, index) => {
    const { x, y } = mix(point, other.points[index]!, way.t);
    return closed(way, { x: middle.x + along.x * x - along.y * y, y: middle.y + along.y * x + along.x * y });
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
