/** Any picture on its way to any other: what the hands do, frozen at one moment of it. */

import type {
  Drawn,
  DrawnCord,
  DrawnFlag,
  DrawnLabel,
  DrawnLine,
  DrawnMarker,
  DrawnShaft,
  DrawnStitch,
  DrawnYarn,
  Picture,
  Point
} from '../model/picture.ts';
import { bearing, distance, from as placeFrom, mix } from './geometry.ts';
import { blend, blendAngle, blendLine, blendPoint, blendTrack, onRing, wayBetween, type Way } from './turning.ts';

/**
 * The picture at `t` on the way from one picture to another.
 *
 * Stitches slide along their needles, and over the tips in order when they change needles; the ring turns round its middle;
 * what is only in one of the pictures fades, and text that changes is faded over. `t` 0 and below is `from` itself, 1 and
 * above is `to`.
 */
export function between(from: Picture, to: Picture, t: number): Picture {
  if (t <= 0) return from;
  if (t >= 1) return to;
  const way = wayBetween(from, to, t);
  const [start, end] = [way.from, way.to];
  const tracks = ringOn(way);
  return {
    ...nearer(way, from, to),
    width: blend(from.width, to.width, t),
    height: blend(from.height, to.height, t),
    centre: way.centre,
    tracks: tracks.map((points) => ({ points })),
    shafts: meet(way, [start.shafts, end.shafts], { blend: blendShaft }),
    cords: meet(way, [start.cords, end.cords], { blend: blendPath }),
    stitches: meet(way, [start.stitches, end.stitches], { blend: stitchBlender(tracks) }),
    markers: meet(way, [start.markers, end.markers], { blend: blendPose }),
    yarns: meet(way, [start.yarns, end.yarns], { blend: blendPath }),
    lines: meet(way, [start.lines, end.lines], { blend: blendPath }),
    labels: meet(way, [start.labels, end.labels], { blend: blendPlace, same: sameText }),
    flags: meet(way, [start.flags, end.flags], { blend: blendPlace, same: sameFlag })
  };
}

/** How two things of one id become one. */
interface Meeting<T> {
  readonly blend: (way: Way, start: T, end: T) => T;
  /** False when the one is to be faded over to the other; always true by default. */
  readonly same?: (start: T, end: T) => boolean;
}

// Things of both pictures on the way, in the order of the later one; those that go come first and lie below.
function meet<T extends Drawn>(
  way: Way,
  [start, end]: readonly [readonly T[], readonly T[]],
  meeting: Meeting<T>
): T[] {
  const { t } = way;
  const known = new Map(start.map((item) => [item.id, item]));
  const coming = new Set(end.map((item) => item.id));
  const going = start.filter((item) => !coming.has(item.id)).map((item) => fade(meeting.blend(way, item, item), 1 - t));
  const staying = end.flatMap((item) => {
    const before = known.get(item.id);
    if (!before) return [fade(meeting.blend(way, item, item), t)];
    if (meeting.same?.(before, item) ?? true) return [meeting.blend(way, before, item)];
    return fadeOver(t, [
      meeting.blend(way, before, { ...before, ...placeOf(item) }),
      meeting.blend(way, { ...item, ...placeOf(before) }, item)
    ]);
  });
  return [...going, ...staying];
}

function fade<T extends Drawn>(item: T, opacity: number): T {
  return { ...item, opacity: item.opacity * opacity };
}

function fadeOver<T extends Drawn>(t: number, [before, after]: readonly [T, T]): T[] {
  if (t < 0.5) return [fade(before, 1 - 2 * t)];
  return [fade(after, 2 * t - 1)];
}

function placeOf(item: Drawn): Partial<Point> {
  return 'x' in item && 'y' in item ? { x: Number(item.x), y: Number(item.y) } : {};
}

function sameText(start: DrawnLabel, end: DrawnLabel): boolean {
  const words = (label: DrawnLabel) => label.lines.map((runs) => runs.map((run) => run.text).join('')).join(' ');
  return start.kind === end.kind && words(start) === words(end);
}

function sameFlag(start: DrawnFlag, end: DrawnFlag): boolean {
  return start.text === end.text && start.flies === end.flies;
}

// Kinds, states and tones change half way.
function nearer<T>({ t }: Way, start: T, end: T): T {
  return t < 0.5 ? start : end;
}

function blendPlace<T extends DrawnLabel | DrawnFlag>(way: Way, start: T, end: T): T {
  const size = (part: 'width' | 'height' | 'size') => blend(start[part], end[part], way.t);
  const place = blendPoint(way, start, end);
  return { ...nearer(way, start, end), ...place, width: size('width'), height: size('height'), size: size('size') };
}

function blendPose(way: Way, start: DrawnMarker, end: DrawnMarker): DrawnMarker {
  return {
    ...nearer(way, start, end),
    ...blendPoint(way, start, end),
    angle: blendAngle(way, start.angle, end.angle)
  };
}

// A shaft goes by its two ends, as the track does on which it lies.
function blendShaft(way: Way, start: DrawnShaft, end: DrawnShaft): DrawnShaft {
  const [left, right] = blendTrack(way, endsOf(start), endsOf(end)) as [Point, Point];
  const thickness = blend(start.thickness, end.thickness, way.t);
  const place = { ...mix(left, right, 0.5), angle: bearing(left, right), length: distance(left, right) };
  return { ...nearer(way, start, end), ...place, thickness };
}

function endsOf({ x, y, angle, length }: DrawnShaft): Point[] {
  const pose = { x, y, angle };
  return [placeFrom(pose, -length / 2, 0), placeFrom(pose, length / 2, 0)];
}

function blendPath<T extends DrawnCord | DrawnYarn | DrawnLine>(way: Way, start: T, end: T): T {
  return { ...nearer(way, start, end), points: blendLine(way, start.points, end.points) };
}

// The tracks on the way: those of the ring that turns, or of the picture that is nearer.
function ringOn(way: Way): Point[][] {
  const { from, to } = way;
  if (from.tracks.length !== to.tracks.length) return nearer(way, from, to).tracks.map((track) => [...track.points]);
  return from.tracks.map((track, index) => blendTrack(way, track.points, to.tracks[index]!.points));
}

function stitchBlender(tracks: readonly (readonly Point[])[]): Meeting<DrawnStitch>['blend'] {
  return (way, start, end) => ({
    ...nearer(way, start, end),
    ...stitchPlace(way, tracks, [start, end]),
    angle: blendAngle(way, start.angle, end.angle),
    size: blend(start.size, end.size, way.t),
    flip: blend(start.flip, end.flip, way.t)
  });
}

function stitchPlace(
  way: Way,
  tracks: readonly (readonly Point[])[],
  [start, end]: readonly [DrawnStitch, DrawnStitch]
): Point {
  const { from, to, t } = way;
  if (from.tracks.length === to.tracks.length) {
    const [first, last] = [start.track + start.along, end.track + end.along];
    return onRing(tracks, first + shorter(last - first, tracks.length) * t);
  }
  const [first, last] = [shareOf(from, start), shareOf(to, end)];
  const share = first + shorter(last - first, 1) * t;
  return mix(placeAt(from, share), placeAt(to, share), t);
}

// How far round the ring a stitch sits, from the needle nearest the reader: 0 to 1.
function shareOf(picture: Picture, stitch: DrawnStitch): number {
  const count = picture.tracks.length;
  if (count === 0) return 0;
  return (((((stitch.track - picture.front) % count) + count) % count) + stitch.along) / count;
}

function placeAt(picture: Picture, share: number): Point {
  if (picture.tracks.length === 0) return picture.centre;
  return onRing(
    picture.tracks.map((track) => track.points),
    picture.front + share * picture.tracks.length
  );
}

// The shorter of the two ways round.
function shorter(way: number, round: number): number {
  const turned = ((way % round) + round) % round;
  return turned > round / 2 ? turned - round : turned;
}
