/** Where each needle with stitches lies: the ring, open and flat, with the needle being worked nearest the reader. */

import type { Moment, NeedleMoment } from '../model/moment.ts';
import type { Point } from '../model/picture.ts';
import { stringBeads, type Bead, type Beads } from './beads.ts';
import { clamp, direction, outward, type Pose } from './geometry.ts';
import { scaleOf, type Scale } from './scale.ts';
import { markerName } from './text.ts';
import { makeTrack, moveTrack, straightTrack, type Track } from './track.ts';

/** A needle in its place. */
export interface Seat {
  /** Index into the moment's needles, which is also its place in the ring, N1 first. */
  readonly index: number;
  readonly needle: NeedleMoment;
  readonly track: Track;
  readonly beads: Beads;
  /** Where on the track the first stitch begins. */
  readonly start: number;
  /** How far the beads are drawn apart; 1 when they lie close. */
  readonly stretch: number;
}

/** Everything that is known before a line is drawn. */
export interface Table {
  readonly moment: Moment;
  readonly scale: Scale;
  /** N1 first. */
  readonly seats: readonly Seat[];
  /** The seat nearest the reader; `null` when no needle has stitches. */
  readonly front: Seat | null;
  /** 1 when the front needle is worked from its right end, -1 from its left. */
  readonly hand: 1 | -1;
  readonly centre: Point;
}

/** Lays the needles with stitches round the middle of the table. */
export function layTable(moment: Moment): Table {
  const scale = scaleOf(moment);
  const holding = moment.needles.flatMap((needle, index) => (needle.number === null ? [] : [{ needle, index }]));
  const strung = holding.map((held) => ({ ...held, beads: stringBeads(moment, held.index, scale) }));
  const front = Math.max(
    0,
    strung.findIndex((held) => held.index === moment.feeding)
  );
  const inOrder = [...strung.slice(front), ...strung.slice(0, front)];
  const hand = moment.side === 'RS' ? 1 : -1;
  const tracks = tracksFor({ moment, scale, strung: inOrder, hand });
  const seats = inOrder.map((held, place) => {
    const track = drawnBack(tracks[place]!, held, scale);
    return seatOn(track, { ...held, hand, scale, moment, pair: inOrder.length === 2 });
  });
  const ordered = seats.toSorted((one, other) => one.index - other.index);
  return { moment, scale, seats: ordered, front: seats[0] ?? null, hand, centre: { x: 0, y: 0 } };
}

/** Distance along the track of a place along the beads. */
export function onTrack(seat: Seat, at: number): number {
  return seat.start + at * seat.stretch;
}

/** The pose of a marker: it stays beside the stitch before it, however far the beads are drawn apart. */
export function poseOfMarker(seat: Seat, { at, beside }: Bead): Pose {
  return seat.track.at(onTrack(seat, beside) + at - beside);
}

/** The pose of a place along the beads. */
export function poseOf(seat: Seat, at: number): Pose {
  return seat.track.at(onTrack(seat, at));
}

/** How far a resting needle is drawn back, in font sizes. */
const REST = 1.5;

interface Strung {
  readonly index: number;
  readonly needle: NeedleMoment;
  readonly beads: Beads;
}

interface Laying {
  readonly moment: Moment;
  readonly scale: Scale;
  /** From the needle nearest the reader on. */
  readonly strung: readonly Strung[];
  readonly hand: 1 | -1;
}

type Seating = Strung & Pick<Laying, 'hand' | 'scale' | 'moment'> & { readonly pair: boolean };

function seatOn(track: Track, held: Seating): Seat {
  const { index, needle, beads, scale, moment } = held;
  const round = moment.setup.id === 'short-circular';
  const stretch = round && beads.room > 0 ? Math.max(1, (track.length - 2 * scale.end) / beads.room) : 1;
  const start = round ? scale.end : startOf(track.length - beads.room, held);
  return { index, needle, beads, track, start, stretch };
}

// Stitches lie in the middle of their needle; near the work where the needle is worked, or is the other one of a pair.
function startOf(spare: number, { index, hand, scale, moment, pair }: Seating): number {
  if (moment.feeding === null) return spare / 2;
  const [first, last] = hand === 1 ? [scale.end, spare - scale.end] : [spare - scale.end, scale.end];
  if (index === moment.feeding) return first;
  return pair ? last : spare / 2;
}

// A needle at rest is drawn back from the ring.
function drawnBack(track: Track, { needle }: Strung, { type }: Scale): Track {
  if (needle.state !== 'resting') return track;
  const out = outward(track.at(track.length / 2));
  return moveTrack(track, { x: out.x * type * REST, y: out.y * type * REST });
}

function tracksFor(laying: Laying): Track[] {
  const { setup } = laying.moment;
  if (setup.id === 'short-circular') return laying.strung.map(() => oval(laying));
  if (laying.strung.length <= 2) return setup.form === 'flexible' ? bows(laying) : pair(laying);
  return laying.strung.length === 4 ? square(laying) : polygon(laying);
}

function lengthsOf({ strung, scale }: Laying): number[] {
  return strung.map(({ beads }) => beads.room + 2 * scale.end);
}

// Opposite needles are equally long, and the ring is never taller than wide.
function square(laying: Laying): Track[] {
  const { scale } = laying;
  const [bottom, left, top, right] = lengthsOf(laying) as [number, number, number, number];
  const across = Math.max(bottom, top, left, right, scale.type * 15);
  const upright = Math.max(left, right, scale.type * 12, Math.max(bottom, top) * 0.7);
  const corner = scale.thick + 7;
  const [x, y] = [across / 2 + corner, upright / 2 + corner];
  return [
    straightTrack({ x: 0, y, angle: 0 }, across),
    straightTrack({ x: -x, y: 0, angle: 90 }, upright),
    straightTrack({ x: 0, y: -y, angle: 180 }, across),
    straightTrack({ x, y: 0, angle: 270 }, upright)
  ];
}

// All needles equally long, as a set has them.
function polygon(laying: Laying): Track[] {
  const { scale } = laying;
  const count = laying.strung.length;
  const length = Math.max(...lengthsOf(laying), scale.type * 20);
  const half = 180 / count;
  const corner = (scale.thick + 7) / Math.sin((half * Math.PI) / 180);
  const reach = (length / 2 + corner) / Math.tan((half * Math.PI) / 180);
  return laying.strung.map((_, place) => {
    const angle = (360 / count) * place;
    const out = direction(angle + 90);
    return straightTrack({ x: out.x * reach, y: out.y * reach, angle }, length);
  });
}

/** Half the distance between the needles of a pair, in font sizes, and what each further level of marker names adds. */
const APART = 5.2;
const LEVEL = 1.3;

/** Names beside one another never fill their row: this much more room is taken for granted. */
const CROWDED = 1.35;

// Levels that the names of the markers need on the needle where they are most crowded, beyond the first one.
function furtherLevels({ strung, scale }: Laying): number {
  const levels = strung.map(({ beads }) => {
    const names = beads.markers.map(({ hung }) => markerName(hung.name, scale.type).size.width);
    const whole = names.reduce((sum, width) => sum + width, 0);
    return (CROWDED * whole) / (beads.room + scale.type * 2);
  });
  return Math.min(6, Math.max(0, Math.ceil(Math.max(0, ...levels) - 1)));
}

function pair(laying: Laying): Track[] {
  const { scale, strung } = laying;
  const length = Math.max(...lengthsOf(laying), scale.type * 20);
  const y = strung.length === 1 ? 0 : scale.type * (APART + LEVEL * furtherLevels(laying));
  return strung.map((_, place) =>
    place === 0 ? straightTrack({ x: 0, y, angle: 0 }, length) : straightTrack({ x: 0, y: -y, angle: 180 }, length)
  );
}

/** How far a flexible needle bends, in degrees, and how much of it at either end is stiff. */
const BEND = 64;
const STIFF = 0.2;

// Two needles, each bent round half of the ring.
function bows(laying: Laying): Track[] {
  const { scale, strung } = laying;
  const length = Math.max(...lengthsOf(laying), scale.type * 20);
  const bow = makeTrack({ x: 0, y: 0 }, 180 - BEND / 2, stretchesOf(length));
  const middle = bow.at(length / 2);
  const gap = clamp(scale.type * 1.9, 0, length / 4) + scale.type * LEVEL * furtherLevels(laying);
  return strung.map((_, place) => {
    const turned = place === 0 ? 0 : 180;
    const sign = place === 0 ? 1 : -1;
    return makeTrack({ x: -middle.x * sign, y: gap * sign }, 180 - BEND / 2 + turned, stretchesOf(length));
  });
}

function stretchesOf(length: number): { length: number; turn: number }[] {
  return [
    { length: length * STIFF, turn: 0 },
    { length: length * (1 - 2 * STIFF), turn: BEND },
    { length: length * STIFF, turn: 0 }
  ];
}

/** How steeply the two tips of a small circular rise towards each other, in degrees. */
const RISE = 14;

// Round once, from where the tips cross and back: two straight tips, two half circles, a straight back.
function oval(laying: Laying): Track {
  const { scale, strung } = laying;
  const around = Math.max((strung[0]?.beads.room ?? 0) + 2 * scale.end, scale.type * (58 + 8 * furtherLevels(laying)));
  const rise = direction(RISE);
  // around = 2 tips + 2 arcs + back, with tips of 1.25 radii and the back as wide as both tips.
  const [tip, arc] = [1.25, ((180 + RISE) / 180) * Math.PI];
  const back = 2 * (tip * rise.x + rise.y);
  const radius = around / (2 * tip + 2 * arc + back);
  const height = radius * (rise.x - tip * rise.y);
  return makeTrack({ x: 0, y: height }, 180 - RISE, [
    { length: tip * radius, turn: 0 },
    { length: arc * radius, turn: 180 + RISE },
    { length: back * radius, turn: 0 },
    { length: arc * radius, turn: 180 + RISE },
    { length: tip * radius, turn: 0 }
  ]);
}
