/** The working yarn: from the stitch worked last towards the working tip, and away. */

import type { Point } from '../model/picture.ts';
import type { SetupId } from '../model/setup.ts';
import { bezier, direction, distance, from, type Pose } from './geometry.ts';
import { poseOf, type Seat, type Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { atWork, workPose, type Tools } from './work.ts';

/** Thickness of yarn in widths of a stitch. */
const THICK = 0.26;

/** The yarn has one tone, whatever section it comes from: those only tell sections apart. */
const YARN_TONE = 0;

/** Draws the yarn, clear of flags and labels: they are placed after it and keep away. */
export function putYarn(sheet: Sheet, table: Table, tools: Tools): void {
  const { yarn } = table.moment;
  const seat = table.seats.find((candidate) => candidate.index === yarn?.needle);
  const at = seat && yarn ? seat.beads.stitches[yarn.stitch] : undefined;
  if (!seat || !yarn || at === undefined) return;
  const points = routeOf(table, tools, { seat, pose: poseOf(seat, at), place: yarn.stitch });
  const width = Math.max(2.4, table.scale.pitch * THICK);
  sheet.yarns.push({ id: 'yarn', opacity: 1, points, width, tone: YARN_TONE });
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

// Along the needle before and round its tip, on the outside.
function cornerRoute(table: Table, tools: Tools, { seat, pose }: Leaving): Point[] {
  const { hand, scale } = table;
  const aside = scale.thick / 2 + 7;
  const start = from(pose, -hand * scale.pitch * 0.3, scale.pitch * 0.25);
  const corner = from(seat.track.at(hand === 1 ? seat.track.length : 0), hand * scale.end * 0.3, aside);
  const turn = { ...corner, angle: pose.angle };
  const { touch, meet, rest, above } = tail(table, tools);
  const [near, far] = [distance(start, corner), distance(corner, meet)];
  const down = bezier([start, from(pose, -hand * near * 0.35, aside), from(turn, hand * near * 0.35, 0), corner], 6);
  const round = bezier([corner, from(turn, -hand * far * 0.45, 0), above(far * 0.4), meet], 6);
  return [...down, ...round.slice(1), touch, ...rest];
}

// How the yarn leaves a back needle: across and down, in shares of its way. The tips of a circular hang in its way.
function leavingOf(setup: SetupId): readonly [number, number] {
  if (setup === 'magic-loop') return [0.4, 0.2];
  return setup === 'two-circulars' ? [0.1, 0.5] : [0.1, 0.3];
}

// Down from the back needle, inside of its tips.
function sideRoute(table: Table, tools: Tools, { pose }: Leaving): Point[] {
  const { hand, scale, moment } = table;
  const flexible = moment.setup.form === 'flexible';
  const start = from(pose, -hand * scale.pitch * 0.3, -scale.pitch * 0.2);
  const { touch, meet, rest } = tail(table, tools);
  const way = distance(start, meet);
  const [across, depth] = leavingOf(moment.setup.id);
  const down = from(pose, -hand * way * across, -way * depth);
  const over = { x: meet.x + hand * scale.type * (flexible ? 0.6 : 2.8), y: meet.y - way * 0.36 };
  return [...bezier([start, down, over, meet], 10), touch, ...rest];
}

// Past the stitches that wait on the front needle, inside the ring.
function insideRoute(table: Table, tools: Tools, { seat, pose }: Leaving): Point[] {
  const { hand, scale } = table;
  const start = from(pose, -hand * scale.pitch * 0.3, -scale.pitch * 0.3);
  const up = from(pose, -hand * scale.pitch * 0.4, -scale.pitch * 1.5);
  const ways = seat === table.front ? [atWork(table, 0, -scale.pitch * 1.7)] : [table.centre];
  const { touch, meet, rest } = tail(table, tools);
  return [start, up, ...ways, atWork(table, scale.end + scale.type * 0.9, -scale.pitch * 0.9), meet, touch, ...rest];
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
function betweenTips({ front, hand, scale }: Table, { pose }: Leaving): Point[] {
  const { type, pitch } = scale;
  const { x, y } = front!.track.at(hand === 1 ? front!.track.length : 0);
  const fall = (along: number, down: number) => ({ x: x + hand * type * along, y: y + type * down });
  const start = from(pose, -hand * pitch * 0.3, pitch * 0.3);
  const low = fall(0.6, 3.6);
  const drop = bezier([start, from(pose, -hand * type * 1.4, type * 0.5), fall(0.2, 1.8), low], 8);
  return [...drop, ...bezier([low, fall(0.9, 5), fall(1.6, 5.8), fall(3.6, 5.7)], 6).slice(1)];
}

// With no needle at work the yarn just hangs off the end: into the ring from a back needle, else to the side of the fabric.
function looseEnd({ hand, scale, seats, front }: Table, { seat, pose }: Leaving): Point[] {
  const side = seats.length === 2 && seat !== front ? -1 : 1;
  const place = (along: number, out: number) => from(pose, -hand * along, side * out);
  const { pitch, type } = scale;
  const low = place(type * 1.5, type * 2.6);
  const fall = bezier([place(pitch * 0.3, pitch * 0.2), place(type * 1.5, 0), place(type * 1.6, type * 1.4), low], 6);
  return [
    ...fall,
    ...bezier([low, place(type * 1.4, type * 3.6), place(type * 1.8, type * 4), place(type * 3.2, type * 4)], 6).slice(
      1
    )
  ];
}

/** The last part of the yarn. */
interface Tail {
  /** Where it comes near the working needle, and where it touches it behind its tip. */
  readonly meet: Point;
  readonly touch: Point;
  /** A point over `meet`, from where it comes down. */
  readonly above: (height: number) => Point;
  /** Where it lies from there on, above the needle. */
  readonly rest: readonly Point[];
}

function tail({ hand, scale, moment }: Table, { working }: Tools): Tail {
  const { tip, angle } = working!;
  const { type, end, thick, pitch } = scale;
  const [way, up] = [direction(angle), direction(angle - 90 * hand)];
  const place = (along: number, above: number) => ({
    x: tip.x + way.x * along + up.x * above,
    y: tip.y + way.y * along + up.y * above
  });
  const start = end + type * (moment.setup.form === 'flexible' ? 0.9 : 1.2);
  const near = thick * 0.5 + pitch * THICK * 0.5 + 1.4;
  const rise = moment.setup.form === 'flexible' ? 0 : 1;
  const rest = bezier(
    [
      place(start + type * 0.35, near + 0.4),
      place(start + type * 1.8, near + 1),
      place(start + type * 2.6, type * (0.9 + rise)),
      place(start + type * 4.6, type * (0.8 + 1.1 * rise))
    ],
    7
  );
  const above = (height: number) => place(start + type * 0.1, near + type * 0.5 + height);
  return { meet: above(0), touch: place(start, near), above, rest };
}
