/** Two circular needles, or one long one as a magic loop: a front pair of tips, and a cord through the back. */

import type { Point } from '../model/picture.ts';
import { bezier, direction, from, type Pose } from './geometry.ts';
import { onTrack, poseOf, type Seat, type Table } from './seats.ts';
import { putCord, putShaft } from './shafts.ts';
import type { Sheet } from './sheet.ts';
import { workingFlag } from './sticks.ts';
import { alongTrack } from './track.ts';
import { entry, nearEnd, otherWay, type FlagPlace, type Tools } from './work.ts';

/** Stitches that find room on a stiff tip; the others sit on the cord. */
const ON_TIP = 36;

/** Least length of the tip nearest the reader, in font sizes. */
const LEAST = 15;

/** Length of a tip without stitches, in font sizes, and how steeply one at rest hangs, in degrees. */
const TIP = 6.4;
const HANG = 58;

/** Draws the tips and the cords that run through stitches; `hangCords` draws the loops once the text below is known. */
export function putCircular(sheet: Sheet, table: Table): Tools {
  const { front, seats } = table;
  if (!front) return { flags: [], working: null };
  putFront(sheet, table, front);
  for (const seat of seats.filter((candidate) => candidate !== front)) putBack(sheet, table, seat);
  return putWorkingTip(sheet, table);
}

/** Room below the front needle for a cord: its fabric and all text lie above `below`, and reach `aside` of its far end. */
interface Underside {
  readonly below: number;
  readonly aside: number;
}

/** The cord loops: below the work from one tip of a needle to the other, or through both groups of a magic loop. */
export function hangCords(sheet: Sheet, table: Table): void {
  const { front, moment, seats, scale } = table;
  if (!front) return;
  const [start, end] = [jointOf(table, front), workingJoint(table)];
  const back = seats.find((seat) => seat !== front);
  const [id, state] = [`cord:${front.needle.letter}`, front.needle.state];
  const plan = { state, thickness: scale.thick };
  if (moment.setup.id === 'magic-loop' && back) {
    const [near, far] = [endPose(table, back, otherWay(table.hand)), endPose(table, back, table.hand)];
    putCord(sheet, { ...plan, id: `${id}:1`, points: sideLoop(table, start, near) });
    putCord(sheet, { ...plan, id: `${id}:2`, points: openLoop(table, far, end) });
  } else {
    putCord(sheet, { ...plan, id, points: hangingLoop(table, { start, end, under: underside(sheet, table, start) }) });
  }
}

function putFront(sheet: Sheet, table: Table, seat: Seat): void {
  const { scale, hand } = table;
  const point = seat.track.at(nearEnd(table, seat));
  const joint = jointOf(table, seat);
  const [id, state] = [`needle:${seat.needle.letter}:1`, seat.needle.state];
  const ends = { start: hand === 1 ? joint : point, end: hand === 1 ? point : joint };
  const sides = hand === 1 ? ({ left: 'joint' } as const) : ({ right: 'joint' } as const);
  const beyond = stitchesEnd(table, seat);
  const from = jointAlong(table, seat);
  if ((beyond - from) * hand > 0) {
    const points = alongTrack(seat.track, { from, to: beyond, step: 12 }, 0);
    putCord(sheet, { id: `cord:${seat.needle.letter}:front`, points, state, thickness: scale.thick });
  }
  putShaft(sheet, { id, ...ends, ...sides, state, thickness: scale.thick });
}

// The stiff part reaches past the last stitch, unless there are too many of them.
function jointAlong(table: Table, seat: Seat): number {
  const { scale, hand } = table;
  const near = nearEnd(table, seat);
  const whole = Math.max(scale.end + seat.beads.room + scale.pitch, scale.type * LEAST);
  return near + hand * Math.min(whole, Math.max(scale.end + ON_TIP * scale.pitch, scale.type * LEAST));
}

function stitchesEnd({ hand, scale }: Table, seat: Seat): number {
  return hand === 1 ? onTrack(seat, seat.beads.room) + scale.pitch : onTrack(seat, 0) - scale.pitch;
}

// Where the free cord begins: at the joint, or where it leaves the last stitch.
function jointOf(table: Table, seat: Seat): Pose {
  const [joint, last] = [jointAlong(table, seat), stitchesEnd(table, seat)];
  return seat.track.at(table.hand === 1 ? Math.max(joint, last) : Math.min(joint, last));
}

function putBack(sheet: Sheet, table: Table, seat: Seat): void {
  const { scale, moment } = table;
  const { letter, state } = seat.needle;
  const [start, end] = [onTrack(seat, 0) - scale.pitch * 0.6, onTrack(seat, seat.beads.room) + scale.pitch * 0.6];
  const through = alongTrack(seat.track, { from: start, to: end, step: 16 }, 0);
  const magic = moment.setup.id === 'magic-loop';
  if (magic) return putCord(sheet, { id: `cord:${letter}:0`, points: through, state, thickness: scale.thick });
  const [first, last] = [hangTip(table, seat, -1), hangTip(table, seat, 1)];
  const points = [...first.bend.toReversed(), ...through, ...last.bend];
  putCord(sheet, { id: `cord:${letter}`, points, state, thickness: scale.thick });
  for (const [index, tip] of [first, last].entries()) {
    const plan = { start: tip.joint, end: tip.point, state, thickness: scale.thick, left: 'joint' as const };
    putShaft(sheet, { id: `needle:${letter}:${index + 1}`, ...plan });
  }
}

/** The pose where the cord leaves the stitches of a needle: `side` -1 before the first, 1 after the last. */
function endPose({ scale }: Table, seat: Seat, side: 1 | -1): Pose {
  const { room } = seat.beads;
  return poseOf(seat, side === 1 ? room + scale.pitch * 0.6 : -scale.pitch * 0.6);
}

// A tip at rest hangs into the ring, away from the stitches.
function hangTip(table: Table, seat: Seat, side: 1 | -1): { bend: Point[]; joint: Point; point: Point } {
  const { type } = table.scale;
  const pose = endPose(table, seat, side);
  const place = (along: number, inside: number) => from(pose, -side * along, -inside);
  const lean = direction(HANG);
  const [out, down] = [type * 2.5, type * 1.9];
  const joint = place(out, down);
  const bend = bezier([pose, place(out * 0.6, 0), place(out - lean.x * type, down - lean.y * type), joint], 6);
  const length = type * TIP * 0.72;
  return { bend: bend.slice(1), joint, point: place(out + lean.x * length, down + lean.y * length) };
}

function putWorkingTip(sheet: Sheet, table: Table): Tools {
  const { front, moment, scale, hand } = table;
  if (!front) return { flags: [], working: null };
  const worked = moment.feeding !== null;
  const { tip, angle } = entry(table);
  const [length, end] = [scale.type * TIP, workingJoint(table)];
  const state = worked ? 'working' : front.needle.state;
  const id = `needle:${front.needle.letter}:2`;
  putShaft(sheet, { id, start: tip, end, state, thickness: scale.thick, right: 'joint' });
  if (!worked) return { flags: [], working: null };
  const way = direction(angle);
  const at = { x: tip.x + way.x * length * 0.72, y: tip.y + way.y * length * 0.72 };
  return {
    flags: [nearFlag(table, front), workingFlag({ text: 'working tip', at, first: otherWay(hand) })],
    working: { tip, angle, length }
  };
}

/** The joint of the working tip, from where its cord goes on. */
function workingJoint(table: Table): Point {
  const { tip, way } = entry(table);
  const length = table.scale.type * TIP;
  return { x: tip.x + way.x * length, y: tip.y + way.y * length };
}

/** The flag of a feeding tip, above it. */
export function nearFlag(table: Table, seat: Seat): FlagPlace {
  const { hand, scale } = table;
  const at = from(seat.track.at(nearEnd(table, seat) + hand * scale.end * 0.5), 0, -scale.thick / 2);
  const back = otherWay(hand);
  return {
    id: 'flag:feeding',
    text: 'feeding tip',
    solid: true,
    at,
    ways: [{ rise: 1, flies: back }]
  };
}

// What hangs below the front needle already: names of its sections, and the flag of the working tip.
function underside(sheet: Sheet, { front, scale, hand }: Table, start: Point): Underside {
  const { y } = front!.track.at(0);
  const text = [...sheet.labels, ...sheet.flags].filter((box) => box.y > y);
  const low = text.map((box) => box.y + box.height / 2);
  const far = text.map((box) => (start.x - box.x) * hand + box.width / 2 + scale.type);
  return { below: Math.max(y + scale.depth + scale.type, ...low) + scale.type * 0.9, aside: Math.max(0, ...far) };
}

// From the far end of the stitches down, below everything, and up to the working tip.
function hangingLoop(table: Table, loop: { start: Point; end: Point; under: Underside }): Point[] {
  const { hand, scale } = table;
  const { start, end } = loop;
  const { below, aside } = loop.under;
  const { way } = entry(table);
  const reach = scale.type * 5.4 * hand;
  const beside = (point: Point, x: number) => ({ x: point.x + x, y: point.y });
  const [low, high] = [
    { x: start.x + reach * 0.6, y: below },
    { x: end.x - reach * 1.2, y: below + scale.type * 0.5 }
  ];
  const third = (high.x - low.x) / 3;
  const tail = scale.type * 5;
  const wide = Math.max(Math.abs(reach), aside * 2) * hand;
  const away = bezier([start, beside(start, -wide), { x: start.x - wide * 1.1, y: below }, low], 12);
  const across = bezier([low, beside(low, third), beside(high, -third), high], 6);
  const back = bezier([high, beside(high, reach * 2.3), { x: end.x + way.x * tail, y: end.y + way.y * tail }, end], 12);
  return [...away, ...across.slice(1), ...back.slice(1)];
}

// Between the two groups of a magic loop, on the side away from the work.
function sideLoop({ hand, scale }: Table, start: Point, end: Point): Point[] {
  const reach = scale.type * 7.5;
  return bezier([start, { x: start.x - hand * reach, y: start.y }, { x: end.x - hand * reach, y: end.y }, end], 18);
}

// From the back group to the working tip, wide enough for the yarn to lie inside.
function openLoop(table: Table, start: Point, end: Point): Point[] {
  const { hand, scale } = table;
  const { way } = entry(table);
  const [reach, tail] = [scale.type * 14, scale.type * 8];
  return bezier(
    [start, { x: start.x + hand * reach, y: start.y }, { x: end.x + way.x * tail, y: end.y + way.y * tail }, end],
    22
  );
}
