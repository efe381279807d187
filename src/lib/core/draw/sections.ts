/** Brackets along the fabric: which section lies where, and with how many stitches on this needle. */

import type { Piece } from '../model/moment.ts';
import type { Point } from '../model/picture.ts';
import { bearing, from, outward, type Pose } from './geometry.ts';
import { wrapText } from './metrics.ts';
import { beside, findPlace, nearestOf, steps } from './place.ts';
import { onTrack, type Seat, type Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { plain, putText, sizeOf, strong, type Text } from './text.ts';
import { alongTrack } from './track.ts';

/** A named piece with its bracket. */
interface Bracket {
  readonly id: string;
  readonly piece: Piece;
  readonly middle: Pose;
  readonly length: number;
}

const TICK = 5;
const GAP = 6;

/** Draws the brackets of all needles first, then their names where there is room. */
export function putSections(sheet: Sheet, table: Table): void {
  const brackets = table.seats.flatMap((seat) => putBrackets(sheet, table, seat));
  for (const bracket of brackets) putName(sheet, table, bracket);
}

function putBrackets(sheet: Sheet, table: Table, seat: Seat): Bracket[] {
  const brackets: Bracket[] = [];
  let done = 0;
  for (const piece of seat.needle.pieces) {
    const [first, last] = [seat.beads.stitches[done], seat.beads.stitches[done + piece.stitches - 1]];
    const id = `section:N${seat.needle.number}:${done}:${piece.name}`;
    done += piece.stitches;
    if (piece.name === '' || first === undefined || last === undefined) continue;
    brackets.push(putBracket(sheet, table, { seat, piece, id, first, last }));
  }
  return brackets;
}

interface Place {
  readonly seat: Seat;
  readonly piece: Piece;
  readonly id: string;
  /** Middles of the first and the last stitch. */
  readonly first: number;
  readonly last: number;
}

function putBracket(sheet: Sheet, { scale }: Table, { seat, piece, id, first, last }: Place): Bracket {
  const out = scale.depth + GAP;
  const half = scale.pitch * 0.4;
  const [start, end] = [onTrack(seat, first) - half, onTrack(seat, last) + half];
  const line = alongTrack(seat.track, { from: start, to: end, step: isBent(seat) ? 9 : Infinity }, out);
  const tick = (along: number) => from(seat.track.at(along), 0, out - TICK);
  const points = [tick(start), ...line, tick(end)];
  sheet.lines.push({ id: `line:${id}`, opacity: 1, kind: 'bracket', points });
  sheet.room.takeLine(points, 1.5);
  const pose = seat.track.at((start + end) / 2);
  return { id, piece, middle: { ...from(pose, 0, out), angle: pose.angle }, length: end - start };
}

function isBent({ track }: Seat): boolean {
  return (
    Math.abs(bearing(track.at(0), track.at(track.length)) - bearing(track.at(0), track.at(track.length / 2))) > 0.5
  );
}

function putName(sheet: Sheet, { scale }: Table, { id, piece, middle, length }: Bracket): void {
  const text = nameText(piece, { size: scale.type * 0.93, room: length, upright: Math.abs(outward(middle).x) > 0.6 });
  const size = sizeOf(text);
  const side = outward(middle);
  const near = beside({ anchor: middle, side }, size, steps(5, 4, 22));
  const shifts = [0, ...steps(0.35, 0.35, 4).flatMap((share) => [share, -share])].map((share) => share * size.width);
  const places = near.flatMap((place, level) =>
    shifts.map((shift) => ({ place: slide(place, middle, shift), cost: level * 4 + Math.abs(shift) * 0.55 }))
  );
  const sorted = places.toSorted((one, other) => one.cost - other.cost).map(({ place }) => place);
  const suits = (box: Point & typeof size) => sheet.room.isOpen(middle, nearestOf(box, middle));
  const box = findPlace(sheet.room, { ...size, places: sorted, margin: 2.5, suits });
  putText(sheet, { id: `label:${id}`, kind: 'section', ...text }, box);
  const end = nearestOf(box, middle);
  if (Math.hypot(end.x - middle.x, end.y - middle.y) > 9) putLeader(sheet, `leader:${id}`, [middle, end]);
}

function slide(place: Point, pose: Pose, shift: number): Point {
  return from({ ...place, angle: pose.angle }, shift, 0);
}

/** A thin line from a label to what it names. */
export function putLeader(sheet: Sheet, id: string, ends: readonly [Point, Point]): void {
  const points = ends.map(({ x, y }) => ({ x, y }));
  sheet.lines.push({ id, opacity: 1, kind: 'leader', points });
  sheet.room.takeLeader(points);
}

// "heel of the right foot 16" in as many lines as its bracket has room for.
function nameText(piece: Piece, place: { size: number; room: number; upright: boolean }): Text {
  const most = place.upright ? 14 : Math.max(14, Math.floor(place.room / (place.size * 0.52)));
  const lines = wrapText(piece.name, most).map((line) => [plain(line)]);
  const last = lines.pop() ?? [];
  const counted = [...last.map((run) => plain(`${run.text} `)), strong(String(piece.stitches))];
  return { lines: [...lines, counted], size: place.size };
}
