/** Finds room for text: tries the places that are wished for, then looks round the first of them. */

import type { Point } from '../model/picture.ts';
import { clamp, direction, type Box, type Vector } from './geometry.ts';
import type { Room } from './sheet.ts';

/** How large a box is. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A box that looks for a place. */
export interface Wish extends Size {
  /** Middles to try, best first; at least one. */
  readonly places: readonly Point[];
  /** Distance to keep from everything. */
  readonly margin: number;
  /** Further conditions on a box. */
  readonly suits?: (box: Box) => boolean;
}

/** The first place that is free. Everything has an end somewhere, so looking farther and farther round finds one. */
export function findPlace(room: Room, wish: Wish): Box {
  const boxes = wish.places.map((place) => ({ x: place.x, y: place.y, width: wish.width, height: wish.height }));
  const suits = wish.suits ?? (() => true);
  const wished = boxes.find((box) => room.isFree(box, wish.margin) && suits(box));
  return wished ?? lookRound(room, boxes[0]!, wish.margin);
}

const AROUND = 24;
const FARTHEST = 400;

function lookRound(room: Room, box: Box, margin: number): Box {
  for (let ring = 1; ring <= FARTHEST; ring += 1) {
    for (let part = 0; part < AROUND; part += 1) {
      const way = direction((360 / AROUND) * part);
      const moved = { ...box, x: box.x + way.x * ring * 6, y: box.y + way.y * ring * 6 };
      if (room.isFree(moved, margin)) return moved;
    }
  }
  return box;
}

/** Middles of a box that lies beside an anchor on one side, from near to far. */
export function beside(from: { anchor: Point; side: Vector }, box: Size, gaps: readonly number[]): Point[] {
  const { anchor, side } = from;
  // A slanting side lets the box slip past its corner, a straight one centres it.
  const lean = (part: number) => clamp(part * 1.7, -1, 1) / 2;
  return gaps.map((gap) => ({
    x: anchor.x + side.x * gap + lean(side.x) * box.width,
    y: anchor.y + side.y * gap + lean(side.y) * box.height
  }));
}

/** The point of a box that is nearest to another point. */
export function nearestOf(box: Box, point: Point): Point {
  return {
    x: clamp(point.x, box.x - box.width / 2, box.x + box.width / 2),
    y: clamp(point.y, box.y - box.height / 2, box.y + box.height / 2)
  };
}

/** Numbers from `first` in steps, `count` of them. */
export function steps(first: number, step: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => first + step * index);
}
