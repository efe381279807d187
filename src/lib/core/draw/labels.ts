/** Names of markers and needles inside the ring, the arrow of work, and the words for cord loops. */

import type { NeedleMoment } from '../model/moment.ts';
import type { Point } from '../model/picture.ts';
import { from, outward, type Box, type Pose } from './geometry.ts';
import { wrapText } from './metrics.ts';
import { beside, findPlace, nearestOf, steps } from './place.ts';
import { putLeader } from './sections.ts';
import { poseOf, type Seat, type Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { markerId } from './stitches.ts';
import { plain, putText, sizeOf, strong, type Text } from './text.ts';

/** Puts the name of every marker beside it, inside the ring. */
export function putMarkerNames(sheet: Sheet, table: Table): void {
  const hung = table.seats.flatMap((seat) =>
    seat.beads.markers.map((marker) => ({ ...marker, pose: poseOf(seat, marker.at) }))
  );
  const order = [...hung.filter((marker) => marker.hung.bor), ...hung.filter((marker) => !marker.hung.bor)];
  for (const { hung: marker, pose } of order) {
    const [name] = wrapText(marker.name, 16);
    putMarkerName(sheet, table, { name: name!, id: markerId(marker.name), bor: marker.bor, pose });
  }
}

interface Named {
  readonly name: string;
  readonly id: string;
  readonly bor: boolean;
  readonly pose: Pose;
}

function putMarkerName(sheet: Sheet, { scale }: Table, { name, id, bor, pose }: Named): void {
  const text: Text = { lines: [[strong(name)]], size: scale.type * 0.82 };
  const padded = sizeOf(text, { x: text.size * 0.5, y: text.size * 0.12 });
  const size = { ...padded, width: Math.max(padded.width, padded.height * 1.25) };
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
  const places = insidePlaces(table, { seat, size });
  const box = findPlace(sheet.room, { ...size, places, margin: 5 });
  putText(sheet, { id: `label:N${seat.needle.number}`, kind: 'needle', ...text }, box);
  return box;
}

// From the middle of the needle inwards and sideways, as far as a third of the ring.
function insidePlaces(
  { scale, seats }: Table,
  { seat, size }: { seat: Seat; size: { width: number; height: number } }
): Point[] {
  const { length } = seat.track;
  const shifts = [0, ...steps(0.06, 0.06, 6).flatMap((share) => [share, -share])].map((share) => share * length);
  const gaps = steps(scale.pitch * 0.7 + 7, 5, seats.length === 1 ? 16 : 12);
  const places = shifts.flatMap((shift) => {
    const pose = seat.track.at(length / 2 + shift);
    const out = outward(pose);
    const inside = beside({ anchor: pose, side: { x: -out.x, y: -out.y } }, size, gaps);
    return inside.map((place, level) => ({ place, cost: level * 5 + Math.abs(shift) * 0.6 }));
  });
  return places.toSorted((one, other) => one.cost - other.cost).map(({ place }) => place);
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

// Which way the work goes, beside the name of the front needle.
function putArrow(sheet: Sheet, { scale, hand }: Table, name: Box): void {
  const [length, height] = [scale.type * 4.2, scale.type * 0.7];
  const above = name.y - name.height / 2 - height / 2 - scale.type * 0.35;
  const [left, right] = [-1, 1].map((side) => ({
    x: name.x + side * (name.width / 2 + length / 2 + scale.type),
    y: name.y
  }));
  const places = [...steps(0, 5, 5).map((up) => ({ x: name.x, y: above - up })), left!, right!];
  const box = findPlace(sheet.room, { width: length, height, places, margin: 2 });
  const ends = [box.x + (hand * length) / 2, box.x - (hand * length) / 2];
  sheet.lines.push({ id: 'arrow', opacity: 1, kind: 'arrow', points: ends.map((x) => ({ x, y: box.y })) });
  sheet.room.takeBox(box);
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
