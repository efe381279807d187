/** Short flexible needles, and the small circular: two stiff tips with a cord between them, bent round the ring. */

import type { NeedleState } from '../model/moment.ts';
import type { Letter } from '../model/setup.ts';
import { nearFlag } from './circular.ts';
import { onTrack, type Seat, type Table } from './seats.ts';
import { putCord, putShaft } from './shafts.ts';
import type { Sheet } from './sheet.ts';
import { farFlag, workingFlag } from './sticks.ts';
import { alongTrack, makeTrack, type Track } from './track.ts';
import { entry, workingLetter, type Tools } from './work.ts';

/** Share of a flexible needle that is stiff, at either end. */
const STIFF = 0.2;

/** How far the working one hangs down, in degrees. */
const DROOP = 48;

/** Draws a trio of flexible needles: those with stitches and the working one. */
export function putFlexible(sheet: Sheet, table: Table): Tools {
  const { front, moment, seats, scale } = table;
  for (const { needle, track } of seats) {
    putBent(sheet, {
      letter: needle.letter,
      state: needle.state,
      track,
      tip: track.length * STIFF,
      thick: scale.thick
    });
  }
  if (!front || moment.feeding === null) return { flags: [], working: null };
  const feeding = farFlag(table, front);
  const letter = workingLetter(table);
  if (letter === null) return { flags: [feeding], working: null };
  const { tip, angle } = entry(table);
  const [stiff, cord] = [scale.type * 4.6, scale.type * 4.6];
  const track = makeTrack(tip, angle, [
    { length: stiff, turn: 0 },
    { length: cord, turn: table.hand * DROOP },
    { length: stiff, turn: 0 }
  ]);
  putBent(sheet, { letter, state: 'working', track, tip: stiff, thick: scale.thick });
  const at = track.at(stiff + cord * 1.2);
  const flag = workingFlag({ text: `working needle · ${letter}`, at, first: table.hand });
  return { flags: [feeding, flag], working: { tip, angle, length: stiff } };
}

interface Bent {
  readonly letter: Letter;
  readonly state: NeedleState;
  readonly track: Track;
  /** Length of each stiff tip. */
  readonly tip: number;
  readonly thick: number;
}

/** Draws a flexible needle along a track: a tip, the cord, a tip. */
export function putBent(sheet: Sheet, { letter, state, track, tip, thick }: Bent): void {
  const points = alongTrack(track, { from: tip, to: track.length - tip, step: 14 }, 0);
  putCord(sheet, { id: `cord:${letter}`, points, state, thickness: thick });
  const [first, last] = [track.at(0), track.at(track.length)];
  const plan = { state, thickness: thick };
  putShaft(sheet, { ...plan, id: `needle:${letter}:1`, start: points[0]!, end: first, left: 'joint' });
  putShaft(sheet, { ...plan, id: `needle:${letter}:2`, start: last, end: points.at(-1)!, right: 'joint' });
}

/** Draws a small circular: one needle all round the ring, its tips crossed where the work is. */
export function putSmallCircular(sheet: Sheet, table: Table): Tools {
  const { front, moment, scale, hand } = table;
  if (!front) return { flags: [], working: null };
  const { track, needle } = front;
  const worked = moment.feeding !== null;
  const over = scale.end * 0.45;
  const joint = track.length * 0.105;
  const points = alongTrack(track, { from: joint, to: track.length - joint, step: 12 }, 0);
  putCord(sheet, {
    id: `cord:${needle.letter}`,
    points,
    state: worked ? 'holding' : needle.state,
    thickness: scale.thick
  });
  const states: NeedleState[] = worked ? ['feeding', 'working'] : [needle.state, needle.state];
  const [first, second] = hand === 1 ? states : states.toReversed();
  const start = { start: points[0]!, end: track.at(-over), left: 'joint' as const };
  const end = { start: track.at(track.length + over), end: points.at(-1)!, right: 'joint' as const };
  const tips = [
    { ...start, id: `needle:${needle.letter}:1`, state: first!, thickness: scale.thick },
    { ...end, id: `needle:${needle.letter}:2`, state: second!, thickness: scale.thick }
  ];
  for (const tip of tips) putShaft(sheet, tip);
  return worked ? flagsOfTips(table, front) : { flags: [], working: null };
}

// Both flags stand inside the ring, each over its own tip.
function flagsOfTips(table: Table, seat: Seat): Tools {
  const { hand, scale } = table;
  const { track, beads } = seat;
  const away = scale.end * 0.55;
  const ends = [onTrack(seat, 0) - away, onTrack(seat, beads.room) + away].map((along) => track.at(along));
  const [fed, free] = hand === 1 ? ends : ends.toReversed();
  const tip = track.at(hand === 1 ? track.length : 0);
  const feeding = nearFlag(table, seat);
  const working = {
    ...workingFlag({ text: 'working tip', at: free!, first: hand }),
    ways: [{ rise: 1, flies: hand }] as const
  };
  return { flags: [{ ...feeding, at: fed! }, working], working: { tip, angle: free!.angle, length: scale.end } };
}
