/** The arrow that tells which way the work goes. */

import type { Point } from '../model/picture.ts';
import type { Box } from './geometry.ts';
import { findPlace, steps } from './place.ts';
import type { Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { alongTrack } from './track.ts';

/** Length of the arrow in font sizes. */
const LENGTH = 4.2;

/** Draws the arrow beside the name of the front needle, or along the ring where one needle goes all the way round. */
export function putArrow(sheet: Sheet, table: Table, name: Box): void {
  const points =
    table.moment.setup.id === 'short-circular' ? roundArrow(sheet, table) : straightArrow(sheet, table, name);
  sheet.lines.push({ id: 'arrow', opacity: 1, kind: 'arrow', points });
}

function straightArrow(sheet: Sheet, { scale, hand }: Table, name: Box): Point[] {
  const [length, height] = [scale.type * LENGTH, scale.type * 0.7];
  const above = name.y - name.height / 2 - height / 2 - scale.type * 0.35;
  const [left, right] = [-1, 1].map((side) => ({
    x: name.x + side * (name.width / 2 + length / 2 + scale.type),
    y: name.y
  }));
  const places = [...steps(0, 5, 5).map((up) => ({ x: name.x, y: above - up })), left!, right!];
  const box = findPlace(sheet.room, { width: length, height, places, margin: 2 });
  sheet.room.takeBox(box);
  return [box.x + (hand * length) / 2, box.x - (hand * length) / 2].map((x) => ({ x, y: box.y }));
}

// Inside the ring, soon after the work, where there is room for it.
function roundArrow(sheet: Sheet, { front, scale, hand }: Table): Point[] {
  const { track } = front!;
  const length = scale.type * LENGTH;
  const lines = steps(0.2, 0.01, 60).map((share) => {
    const start = hand === 1 ? track.length * share : track.length * (1 - share);
    return alongTrack(track, { from: start, to: start + hand * length, step: 4 }, -scale.pitch * 1.9);
  });
  const line = lines.find((points) => sheet.room.isClear(points, 6)) ?? lines[0]!;
  sheet.room.takeLine(line, 5);
  return line;
}
