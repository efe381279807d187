/** Stiff pieces and cords on the sheet. */

import type { NeedleState } from '../model/moment.ts';
import type { DrawnShaft, Point } from '../model/picture.ts';
import { bearing, distance, mix, walk } from './geometry.ts';
import type { Sheet } from './sheet.ts';

/** What a shaft needs to be drawn: from its left end to its right end. */
export interface ShaftPlan {
  readonly id: string;
  readonly start: Point;
  readonly end: Point;
  readonly state: NeedleState;
  readonly thickness: number;
  /** Both are points unless told otherwise. */
  readonly left?: DrawnShaft['left'];
  readonly right?: DrawnShaft['right'];
}

/** Draws a shaft between two points and keeps its room. */
export function putShaft(sheet: Sheet, plan: ShaftPlan): void {
  const { id, start, end, state, thickness, left = 'point', right = 'point' } = plan;
  const middle = mix(start, end, 0.5);
  const length = distance(start, end);
  sheet.shafts.push({ id, opacity: 1, ...middle, angle: bearing(start, end), length, thickness, left, right, state });
  sheet.room.takePoints(walk(start, end, thickness / 2), thickness * 0.75);
}

/** What a cord needs to be drawn. */
export interface CordPlan {
  readonly id: string;
  readonly points: readonly Point[];
  readonly state: NeedleState;
  /** Thickness of the needle it belongs to. */
  readonly thickness: number;
}

/** Draws a cord and keeps its room. */
export function putCord(sheet: Sheet, { id, points, state, thickness }: CordPlan): void {
  const width = Math.max(1.8, thickness * 0.36);
  sheet.cords.push({ id, opacity: 1, points, width, state });
  sheet.room.takeLine(points, width + 1);
}
