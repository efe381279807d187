/** The sheet that is being drawn on: what stands on it so far, and where there is still room. */

import type {
  DrawnCord,
  DrawnFlag,
  DrawnLabel,
  DrawnLine,
  DrawnMarker,
  DrawnShaft,
  DrawnStitch,
  DrawnYarn,
  Point
} from '../model/picture.ts';
import { walk, walkAll, type Box } from './geometry.ts';

/** A round spot that text keeps clear of. */
interface Spot extends Point {
  readonly radius: number;
}

/** Side of the squares by which spots are found, in units of the picture. */
const CELL = 48;

/** Taken room: round spots, and boxes with text in them. */
export class Room {
  readonly #spots = new Map<string, Spot[]>();
  readonly #boxes: Box[] = [];
  readonly #leaders: Point[] = [];

  /** Marks points as taken, with a margin round each. */
  takePoints(points: readonly Point[], radius: number): void {
    for (const point of points) {
      const spot = { x: point.x, y: point.y, radius };
      for (const key of cellsOf({ ...spot, width: radius * 2, height: radius * 2 })) {
        const known = this.#spots.get(key);
        if (known) known.push(spot);
        else this.#spots.set(key, [spot]);
      }
    }
  }

  /** Marks a line as taken. */
  takeLine(points: readonly Point[], radius: number): void {
    this.takePoints(walkAll(points, Math.max(radius, 2)), radius);
  }

  /** Marks a thin line that text keeps clear of, though other lines may cross it. */
  takeLeader(points: readonly Point[]): void {
    this.#leaders.push(...walkAll(points, 4));
  }

  takeBox(box: Box): void {
    this.#boxes.push(box);
  }

  /** True when nothing lies in the box or within `margin` of it. */
  isFree(box: Box, margin: number): boolean {
    const grown = { ...box, width: box.width + 2 * margin, height: box.height + 2 * margin };
    if (this.#boxes.some((other) => overlap(grown, other))) return false;
    if (this.#leaders.some((point) => within(point, grown, 1))) return false;
    for (const key of cellsOf(grown)) {
      if (this.#spots.get(key)?.some((spot) => within(spot, grown, spot.radius))) return false;
    }
    return true;
  }

  /** True when the straight way between two points touches no text. */
  isOpen(start: Point, end: Point): boolean {
    const points = walk(start, end, 4);
    return !this.#boxes.some((box) => points.some((point) => within(point, box, 3.5)));
  }

  /** True when no spot lies within `radius` of any of the points. */
  isClear(points: readonly Point[], radius: number): boolean {
    return points.every((point) => this.isFree({ ...point, width: 0, height: 0 }, radius));
  }
}

/** A drawing in the making. */
export class Sheet {
  readonly room = new Room();
  readonly shafts: DrawnShaft[] = [];
  readonly cords: DrawnCord[] = [];
  readonly stitches: DrawnStitch[] = [];
  readonly markers: DrawnMarker[] = [];
  readonly yarns: DrawnYarn[] = [];
  readonly lines: DrawnLine[] = [];
  readonly labels: DrawnLabel[] = [];
  readonly flags: DrawnFlag[] = [];
}

/** True when two boxes share more than an edge. */
function overlap(one: Box, other: Box): boolean {
  return (
    Math.abs(one.x - other.x) * 2 < one.width + other.width && Math.abs(one.y - other.y) * 2 < one.height + other.height
  );
}

function within(point: Point, box: Box, radius: number): boolean {
  const x = Math.max(Math.abs(point.x - box.x) - box.width / 2, 0);
  const y = Math.max(Math.abs(point.y - box.y) - box.height / 2, 0);
  return x * x + y * y < radius * radius || (x === 0 && y === 0);
}

function cellsOf(box: Box): string[] {
  const keys: string[] = [];
  const [left, right] = [box.x - box.width / 2, box.x + box.width / 2].map((x) => Math.floor(x / CELL)) as [
    number,
    number
  ];
  const [top, bottom] = [box.y - box.height / 2, box.y + box.height / 2].map((y) => Math.floor(y / CELL)) as [
    number,
    number
  ];
  for (let x = left; x <= right; x += 1) for (let y = top; y <= bottom; y += 1) keys.push(`${x},${y}`);
  return keys;
}
