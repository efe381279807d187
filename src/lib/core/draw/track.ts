/** The line on which stitches sit: straight for a stick, bent for a flexible needle, an oval for a small circular. */

import type { Point } from '../model/picture.ts';
import { direction, from, type Pose } from './geometry.ts';

/** A stretch of a track that goes straight on (`turn` 0) or bends evenly; clockwise bends are positive. */
export interface Stretch {
  readonly length: number;
  /** In degrees. */
  readonly turn: number;
}

/** A line walked in the direction of the round: clockwise, from the place of the first stitch on. */
export interface Track {
  readonly length: number;
  /** The pose at a distance from the start. Before the start and after the end it goes straight on. */
  readonly at: (along: number) => Pose;
}

interface Leg extends Stretch {
  readonly start: Point;
  readonly heading: number;
  readonly begins: number;
}

/**
 * Makes a track of stretches that follow one another without a corner.
 *
 * @param heading - Direction of the way at the start: 180 for a track that begins at the right and goes to the left.
 */
export function makeTrack(start: Point, heading: number, stretches: readonly Stretch[]): Track {
  const legs: Leg[] = [];
  let here: Leg = { length: 0, turn: 0, start, heading, begins: 0 };
  for (const stretch of stretches) {
    here = { ...stretch, ...endOf(here) };
    legs.push(here);
  }
  const length = here.begins + here.length;
  return { length, at: (along) => poseOn(legs, along, length) };
}

/** A straight track with this middle; `angle` 0 has the fabric below and begins at the right. */
export function straightTrack(middle: Pose, length: number): Track {
  return makeTrack(from(middle, length / 2, 0), middle.angle + 180, [{ length, turn: 0 }]);
}

/** The same track somewhere else. */
export function moveTrack({ length, at }: Track, by: Point): Track {
  return {
    length,
    at: (along) => {
      const { x, y, angle } = at(along);
      return { x: x + by.x, y: y + by.y, angle };
    }
  };
}

/** Points along a part of a track, moved to the side of the fabric by `out`, at most `step` apart. */
export function alongTrack(track: Track, part: { from: number; to: number; step: number }, out: number): Point[] {
  const count = Math.max(1, Math.ceil(Math.abs(part.to - part.from) / part.step));
  return Array.from({ length: count + 1 }, (_, index) => {
    const pose = track.at(part.from + ((part.to - part.from) * index) / count);
    return from(pose, 0, out);
  });
}

function endOf(leg: Leg): Pick<Leg, 'start' | 'heading' | 'begins'> {
  return { ...goOn(leg, leg.length), begins: leg.begins + leg.length };
}

function goOn(leg: Leg, way: number): { start: Point; heading: number } {
  if (leg.turn === 0) {
    const ahead = direction(leg.heading);
    return { start: { x: leg.start.x + ahead.x * way, y: leg.start.y + ahead.y * way }, heading: leg.heading };
  }
  const radius = (leg.length * 180) / (leg.turn * Math.PI);
  const turned = leg.heading + (leg.turn * way) / leg.length;
  const [before, after] = [direction(leg.heading + 90), direction(turned + 90)];
  const x = leg.start.x + (before.x - after.x) * radius;
  return { start: { x, y: leg.start.y + (before.y - after.y) * radius }, heading: turned };
}

function poseOn(legs: readonly Leg[], along: number, length: number): Pose {
  const leg = legs.findLast((candidate) => candidate.begins <= along) ?? legs[0]!;
  const over = along < 0 ? along : Math.max(0, along - length);
  const { start, heading } = goOn(leg, along - leg.begins - over);
  const ahead = direction(heading);
  return { x: start.x + ahead.x * over, y: start.y + ahead.y * over, angle: heading - 180 };
}
