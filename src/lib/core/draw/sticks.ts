/** Double-pointed needles: each holds its side of the ring, and a free one works. */

import { from, mix } from './geometry.ts';
import type { Seat, Table } from './seats.ts';
import { putShaft } from './shafts.ts';
import type { Sheet } from './sheet.ts';
import { entry, otherWay, workingLetter, type FlagPlace, type Tools } from './work.ts';

/** Draws the sticks with stitches and the working one. */
export function putSticks(sheet: Sheet, table: Table): Tools {
  for (const seat of table.seats) putStick(sheet, table, seat);
  const { front, moment } = table;
  if (!front || moment.feeding === null) return { flags: [], working: null };
  const feeding = farFlag(table, front);
  const letter = workingLetter(table);
  if (letter === null) return { flags: [feeding], working: null };
  const { tip, angle, way } = entry(table);
  const length = Math.min(front.track.length, table.scale.type * 12);
  const end = { x: tip.x + way.x * length, y: tip.y + way.y * length };
  putShaft(sheet, { id: `needle:${letter}`, start: tip, end, state: 'working', thickness: table.scale.thick });
  return {
    flags: [
      feeding,
      workingFlag({ text: `working needle · ${letter}`, at: mix(tip, end, 0.86), first: otherWay(table.hand) })
    ],
    working: { tip, angle, length }
  };
}

function putStick(sheet: Sheet, { scale }: Table, { track, needle }: Seat): void {
  const [start, end] = [track.at(track.length), track.at(0)];
  putShaft(sheet, { id: `needle:${needle.letter}`, start, end, state: needle.state, thickness: scale.thick });
}

/** The flag of the feeding needle at its far end, out of the way of the hands. */
export function farFlag({ hand, scale }: Table, seat: Seat): FlagPlace {
  const away = scale.end * 0.5;
  const pose = seat.track.at(hand === 1 ? seat.track.length - away : away);
  const out = otherWay(hand);
  return {
    id: 'flag:feeding',
    text: 'feeding needle',
    solid: true,
    at: from(pose, 0, scale.thick / 2),
    ways: [
      { rise: -1, flies: out },
      { rise: 1, flies: out },
      { rise: -1, flies: hand }
    ]
  };
}

/** The flag of the working needle or tip, hanging from it; `first` is the side it flies to where there is room. */
export function workingFlag(place: { text: string; at: FlagPlace['at']; first: 1 | -1 }): FlagPlace {
  const { text, at, first } = place;
  return {
    id: 'flag:working',
    text,
    solid: false,
    at,
    ways: [
      { rise: -1, flies: first },
      { rise: -1, flies: otherWay(first) },
      { rise: 1, flies: first }
    ]
  };
}
