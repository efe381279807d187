/** The working yarn: from the stitch worked last towards the working tip, and away. */

import type { Point } from '../model/picture.ts';
import { direction, from, type Pose } from './geometry.ts';
import { poseOf, type Seat, type Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { atWork, workPose, type Tools } from './work.ts';

/** Thickness of yarn in widths of a stitch. */
const THICK = 0.25;

/** Draws the yarn, clear of flags and labels: they are placed after it and keep away. */
export function putYarn(sheet: Sheet, table: Table, tools: Tools): void {
  const { yarn } = table.moment;
  const seat = table.seats.find((candidate) => candidate.index === yarn?.needle);
  const at = seat && yarn ? seat.beads.stitches[yarn.stitch] : undefined;
  if (!seat || !yarn || at === undefined) return;
  const points = routeOf(table, tools, { seat, pose: poseOf(seat, at), place: yarn.stitch });
  const id = seat.needle.stitches[yarn.stitch]!.id;
  const tone = sheet.stitches.find((stitch) => stitch.id === `stitch:${id}`)?.tone ?? 0;
  const width = Math.max(2.4, table.scale.pitch * THICK);
  sheet.yarns.push({ id: 'yarn', opacity: 1, points, width, tone });
  sheet.room.takeLine(points, width);
}

interface Leaving {
  readonly seat: Seat;
  readonly pose: Pose;
  /** Index of the stitch on its needle. */
  readonly place: number;
}

function routeOf(table: Table, tools: Tools, leaving: Leaving): Point[] {
  const { front, hand, moment } = table;
  if (!workPose(table) || !tools.working || !front) return looseEnd(table, leaving);
  const { seat, place } = leaving;
  const last = hand === 1 ? seat.beads.stitches.length - 1 : 0;
  const first = hand === 1 ? 0 : seat.beads.stitches.length - 1;
  if (moment.setup.id === 'short-circular')
    return place === last ? betweenTips(table, leaving) : insideRoute(table, tools, leaving);
  if (seat === front) return place === first ? edgeRoute(table) : insideRoute(table, tools, leaving);
  if (!isBefore(table, seat)) return insideRoute(table, tools, leaving);
  return table.seats.length > 2 ? cornerRoute(table, tools, leaving) : sideRoute(table, tools, leaving);
}

// True for the needle that is worked just before the front one.
function isBefore({ seats, front, hand }: Table, seat: Seat): boolean {
  const place = seats.indexOf(front!);
  return seats[(place - hand + seats.length) % seats.length] === seat;
}

// Round the tip of the needle before, on the outside.
function cornerRoute(table: Table, tools: Tools, { seat, pose }: Leaving): Point[] {
  const { hand, scale } = table;
  const along = hand === 1 ? seat.track.length : 0;
  const corner = from(seat.track.at(along), -hand * 3, scale.thick + 5);
  const beside = from(seat.track.at(along - hand * scale.end * 0.5), 0, scale.thick + 3);
  return [...leave(table, pose, 0.4), beside, corner, ...tail(table, tools)];
}

// Down from the back needle, inside of its tips.
function sideRoute(table: Table, tools: Tools, { pose }: Leaving): Point[] {
  const { end, type } = table.scale;
  const flexible = table.moment.setup.form === 'flexible';
  const ways = flexible
    ? [atWork(table, end + type * 0.6, -type * 2.2)]
    : [atWork(table, end + type * 1.1, -type * 4.4), atWork(table, end + type * 1.4, -type * 1.4)];
  return [...leave(table, pose, -0.5), ...ways, ...tail(table, tools)];
}

// Past the stitches that wait on the front needle, inside the ring.
function insideRoute(table: Table, tools: Tools, { seat, pose }: Leaving): Point[] {
  const { hand, scale } = table;
  const up = from(pose, -hand * scale.pitch * 0.3, -scale.pitch * 1.3);
  const start = from(pose, -hand * scale.pitch * 0.4, -scale.pitch * 0.2);
  const ways = seat === table.front ? [atWork(table, 0, -scale.pitch * 1.7)] : [table.centre];
  return [start, up, ...ways, atWork(table, scale.end + scale.type * 0.9, -scale.pitch * 0.9), ...tail(table, tools)];
}

// At an edge the yarn hangs from the stitch that is worked next.
function edgeRoute(table: Table): Point[] {
  const { pitch, type, depth } = table.scale;
  return [
    atWork(table, pitch * 0.35, pitch * 0.7),
    atWork(table, pitch * 0.75, pitch * 1.3),
    atWork(table, pitch * 0.85, depth),
    atWork(table, pitch * 0.9 + type * 0.6, depth + type * 1.4),
    atWork(table, type * 3.6, depth + type * 2.1),
    atWork(table, type * 5.4, depth + type * 1.9)
  ];
}

// The two tips of a small circular meet: the yarn falls between them.
function betweenTips(table: Table, { pose }: Leaving): Point[] {
  const { hand, scale } = table;
  const fall = (along: number, out: number) =>
    from(table.front!.track.at(hand === 1 ? table.front!.track.length : 0), hand * along, out);
  return [
    from(pose, -hand * scale.pitch * 0.4, scale.pitch * 0.3),
    from(pose, -hand * scale.pitch * 0.9, scale.pitch * 0.7),
    fall(scale.type * 0.5, scale.type * 2.2),
    fall(scale.type * 0.4, scale.type * 4.2),
    fall(scale.type * 1.6, scale.type * 5.6),
    fall(scale.type * 3.6, scale.type * 5.9)
  ];
}

// With no needle at work the yarn just hangs off the end.
function looseEnd(table: Table, { pose }: Leaving): Point[] {
  const { hand, scale } = table;
  const place = (along: number, out: number) => from(pose, -hand * along, out);
  const { pitch, type } = scale;
  return [
    place(pitch * 0.4, pitch * 0.3),
    place(pitch, pitch * 0.8),
    place(type * 1.7, type * 2),
    place(type * 1.8, type * 3.6),
    place(type * 3.2, type * 4.4)
  ];
}

// Out of the loop on the side of the next stitch, then to the side of the fabric (or, negative, into the ring).
function leave({ hand, scale }: Table, pose: Pose, side: number): Point[] {
  return [
    from(pose, -hand * scale.pitch * 0.35, scale.pitch * side * 0.6),
    from(pose, -hand * scale.pitch * 0.85, scale.pitch * side * 1.4)
  ];
}

// Touches the working needle behind its tip, then lies off to the side above it.
function tail({ hand, scale }: Table, { working }: Tools): Point[] {
  const { tip, angle } = working!;
  const [way, up] = [direction(angle), direction(angle - 90 * hand)];
  const place = (along: number, above: number) => ({
    x: tip.x + way.x * along + up.x * above,
    y: tip.y + way.y * along + up.y * above
  });
  const start = scale.end + scale.type * 1.1;
  const { type } = scale;
  const touch = scale.thick * 0.5 + scale.pitch * THICK * 0.5 + 1.2;
  return [
    place(start, touch),
    place(start + type * 1.6, touch + type * 0.35),
    place(start + type * 4.2, type * 2),
    place(start + type * 6.4, type * 2.5)
  ];
}
