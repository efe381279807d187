/** Free needles that do not work now: they lie beside the ring. */

import type { NeedleMoment } from '../model/moment.ts';
import type { Point } from '../model/picture.ts';
import { direction, walk } from './geometry.ts';
import { putBent } from './flexible.ts';
import { findPlace, steps } from './place.ts';
import type { Table } from './seats.ts';
import { putShaft } from './shafts.ts';
import type { Sheet } from './sheet.ts';
import { plain, putText, sizeOf, strong, type Text } from './text.ts';
import { makeTrack } from './track.ts';

/** How a needle lies that was put down: nearly upright. */
const LEAN = 84;

/** Lays every free needle beside the ring, away from the work. */
export function putAside(sheet: Sheet, table: Table): void {
  const { moment } = table;
  const busy = moment.feeding === null ? null : moment.working;
  moment.needles.forEach((needle, index) => {
    if (needle.number === null && index !== busy) putFree(sheet, table, needle);
  });
}

function putFree(sheet: Sheet, table: Table, needle: NeedleMoment): void {
  const { scale, hand, front } = table;
  const length = Math.min(front?.track.length ?? Infinity, scale.type * 13);
  const [start, end] = freePlace(sheet, { length, hand, thick: scale.thick });
  if (table.moment.setup.form === 'straight') {
    putShaft(sheet, { id: `needle:${needle.letter}`, start, end, state: 'free', thickness: scale.thick });
  } else {
    const track = makeTrack(end, LEAN + 180, [
      { length: length * 0.33, turn: 0 },
      { length: length * 0.34, turn: 0 },
      { length: length * 0.33, turn: 0 }
    ]);
    putBent(sheet, { letter: needle.letter, state: 'free', track, tip: length * 0.33, thick: scale.thick });
  }
  const text: Text = { lines: [[strong(`${needle.letter}  `), plain('free')]], size: scale.type };
  const size = sizeOf(text);
  const under = steps(scale.type * 1.1, 4, 8).map((down) => ({ x: end.x, y: end.y + down }));
  putText(
    sheet,
    { id: `label:${needle.letter}`, kind: 'needle', ...text },
    findPlace(sheet.room, { ...size, places: under, margin: 3 })
  );
}

// Step by step outwards from the middle until nothing is in the way; on the side of the work, where the yarn widens the picture.
function freePlace(sheet: Sheet, free: { length: number; hand: 1 | -1; thick: number }): readonly [Point, Point] {
  const way = direction(LEAN);
  const across = { x: (way.x * free.length) / 2, y: (way.y * free.length) / 2 };
  for (let out = 40; out < 4000; out += 6) {
    for (const up of [30, 0, 60]) {
      const middle = { x: free.hand * out, y: -up };
      const ends = [
        { x: middle.x - across.x, y: middle.y - across.y },
        { x: middle.x + across.x, y: middle.y + across.y }
      ] as const;
      if (out > 60 && isOutside(sheet, middle, free.hand) && sheet.room.isClear(walk(...ends, 8), free.thick + 10))
        return ends;
    }
  }
  return [across, across];
}

function isOutside(sheet: Sheet, middle: Point, hand: 1 | -1): boolean {
  return sheet.stitches.every((stitch) => stitch.x * hand < middle.x * hand);
}
