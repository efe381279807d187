/** Names of markers and needles inside the ring, the arrow of work, and the words for cord loops. */

import type { NeedleMoment } from '../model/moment.ts';
import type { Point } from '../model/picture.ts';
import { from, outward, type Box, type Pose } from './geometry.ts';
import { beside, findPlace, nearestOf, steps, type Size } from './place.ts';
import { putLeader } from './sections.ts';
import { putArrow } from './arrow.ts';
import { poseOfMarker, type Seat, type Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { markerId } from './stitches.ts';
import { markerName, plain, putText, sizeOf, strong, type Text } from './text.ts';

/** Puts the name of every marker beside it, inside the ring. */
export function putMarkerNames(sheet: Sheet, table: Table): void {
  const hung = table.seats.flatMap((seat) =>
    seat.beads.markers.map((marker) => ({ ...marker, pose: poseOfMarker(seat, marker) }))
  );
  const order = [...hung.filter((marker) => marker.hung.bor), ...hung.filter((marker) => !marker.hung.bor)];
  for (const { hung: marker, pose } of order) {
    putMarkerName(sheet, table, { name: marker.name, id: markerId(marker.name), bor: marker.bor, pose });
  }
}

interface Named {
  readonly name: string;
  readonly id: string;
  readonly bor: boolean;
  readonly pose: Pose;
}

function putMarkerName(sheet: Sheet, { scale }: Table, { name, id, bor, pose }: Named): void {
  const { text, size } = markerName(name, scale.type);
  const top = from(pose, 0, -scale.pitch * 0.85);
  const out = outward(pose);
  const inside = { x: -out.x, y: -out.y };
  const near = beside({ anchor: top, side: inside }, size, steps(4, 3, 26));
  const shifts = [0, ...steps(0.25, 0.25, 7).flatMap((share) => [share, -share])].map((share) => share * size.width);
  const places = near.flatMap((place, level) =>
    shifts.map((shift) => ({
      place: from({ ...place, angle: pose.angle }, shift, 0),
      cost: level * 3 + Math.abs(shift) * 0.8
    }))
  );
  const sorted = places.toSorted((one, other) => one.cost - other.cost).map(({ place }) => place);
  const suits = (box: Box) => sheet.room.isOpen(top, nearestOf(box, top));
  const box = findPlace(sheet.room, { ...size, places: sorted, margin: 2, suits });
  putText(sheet, { id: `label:${id}`, kind: bor ? 'bor' : 'marker', ...text }, box);
  putLeader(sheet, `leader:${id}`, [top, nearestOf(box, top)]);
}

/** Puts number, letter and count of every needle inside the ring, beside its stitches. */
export function putNeedleNames(sheet: Sheet, table: Table): void {
  const { front } = table;
  const order = front ? [front, ...table.seats.filter((seat) => seat !== front)] : [];
  for (const seat of order) {
    const box = putNeedleName(sheet, table, seat);
    if (seat === front && table.moment.feeding !== null) putArrow(sheet, table, box);
  }
}

function putNeedleName(sheet: Sheet, table: Table, seat: Seat): Box {
  const { scale } = table;
  const pose = seat.track.at(seat.track.length / 2);
  const out = outward(pose);
  const text = needleText(seat.needle, { size: scale.type, narrow: Math.abs(out.x) > 0.6 });
  const size = sizeOf(text);
  const places = [
    ...middlePlaces(table),
    ...insidePlaces(table, { seat, size }),
    ...outsidePlaces(table, { seat, size })
  ];
  const box = findPlace(sheet.room, { ...size, places, margin: 5 });
  putText(sheet, { id: `label:N${seat.needle.number}`, kind: 'needle', ...text }, box);
  return box;
}

// In a ring of one needle its name stands in the middle, or a little higher.
function middlePlaces({ moment, centre, scale }: Table): Point[] {
  if (moment.setup.id !== 'short-circular') return [];
  return steps(0, 0.3, 8).map((up) => ({ x: centre.x, y: centre.y - up * scale.type }));
}

// From the middle of the needle inwards and sideways, as far as a third of the ring.
function insidePlaces({ scale, seats, centre }: Table, { seat, size }: { seat: Seat; size: Size }): Point[] {
  const { length } = seat.track;
  const shifts = [0, ...steps(0.06, 0.06, 6).flatMap((share) => [share, -share])].map((share) => share * length);
  const gaps = steps(scale.pitch * 0.7 + 7, 5, seats.length === 1 ? 16 : 12);
  const places = shifts.flatMap((shift) => {
    const pose = seat.track.at(length / 2 + shift);
    const out = outward(pose);
    const inside = beside({ anchor: pose, side: { x: -out.x, y: -out.y } }, size, gaps);
    return inside.map((place, level) => ({ place, cost: level * 5 + Math.abs(shift) * 0.6 }));
  });
  const own = places.filter(({ place }) => seats.length === 1 || isOwnSide(place, { seat, centre, size }));
  return own.toSorted((one, other) => one.cost - other.cost).map(({ place }) => place);
}

// True on the side of the ring where the needle itself lies: a name beyond it would seem to be another's.
function isOwnSide(place: Point, of: { seat: Seat; centre: Point; size: Size }): boolean {
  const out = outward(of.seat.track.at(of.seat.track.length / 2));
  const reach = (place.x - of.centre.x) * out.x + (place.y - of.centre.y) * out.y;
  return reach >= (Math.abs(out.x) * of.size.width + Math.abs(out.y) * of.size.height) * 0.25;
}

// Beyond the fabric, where the ring has no room.
function outsidePlaces({ scale }: Table, { seat, size }: { seat: Seat; size: Size }): Point[] {
  const pose = seat.track.at(seat.track.length / 2);
  const gaps = steps(scale.depth + scale.type * 2, 6, 24);
  return beside({ anchor: pose, side: outward(pose) }, size, gaps);
}

function needleText(needle: NeedleMoment, place: { size: number; narrow: boolean }): Text {
  const group = needle.group === null ? '' : ` ${needle.group}`;
  const name = `N${needle.number} · ${needle.letter}${group}`;
  const count = `${needle.stitches.length} ${needle.stitches.length === 1 ? 'st' : 'sts'}`;
  const state = needle.state === 'resting' ? ', resting' : '';
  if (!place.narrow) return { lines: [[strong(`${name}  `), plain(`${count}${state}`)]], size: place.size };
  const rest = state === '' ? [] : [[plain('resting')]];
  return { lines: [[strong(name)], [plain(count)], ...rest], size: place.size };
}

/** Says "cord loop" beside each of the loops of a magic loop. */
export function putCordNames(sheet: Sheet, { moment, scale, hand }: Table): void {
  if (moment.setup.id !== 'magic-loop') return;
  const loops = sheet.cords.filter((cord) => /:[12]$/u.test(cord.id));
  for (const [index, loop] of loops.entries()) {
    const side = index === 0 ? -hand : hand;
    const far = loop.points.reduce((best, point) => (point.x * side > best.x * side ? point : best));
    const text: Text = { lines: [[plain('cord loop')]], size: scale.type * 0.88 };
    const size = sizeOf(text);
    const places = beside({ anchor: far, side: { x: side, y: 0 } }, size, steps(6, 4, 6));
    const box = findPlace(sheet.room, { ...size, places, margin: 2 });
    putText(sheet, { id: `label:${loop.id}`, kind: 'note', ...text }, box);
  }
}
