/** Shapes of stitches, needles, markers and lines as SVG paths. A stitch is drawn 20 wide; its size scales it. */

import type { DrawnFlag, DrawnShaft, DrawnStitch, Point } from '$lib/core/index.ts';

/** Width in which the shapes of stitches and markers are drawn. */
export const UNIT = 20;

/** Part of a loop behind the needle and in front of it, and what lies across it. */
export interface LoopShape {
  readonly behind: readonly string[];
  readonly before: readonly string[];
  readonly across: string | null;
}

// The leg nearer the tip leads and lies in front; the other comes up behind the needle.
const LOOP: LoopShape = {
  behind: ['M-3.2 18C-6.6 10-8-8.2 0-8.2C1.6-8.2 2.8-7.8 3.8-6.8'],
  before: ['M0-8.2C8-8.2 6.6 10 3.2 18'],
  across: null
};
const LONG: LoopShape = {
  behind: ['M-2.4 29C-5.2 18-8.4-8.2 0-8.2C1.6-8.2 2.8-7.8 3.8-6.8'],
  before: ['M0-8.2C8.4-8.2 5.2 18 2.4 29'],
  across: null
};
const DOUBLE: LoopShape = {
  behind: ['M-6.4 17C-9 9-9.6-8.2-4.4-8.2C-3-8.2-2-7.6-1.4-6.4', 'M-1 17C-3 9-2.4-8.2 2.6-8.2C4-8.2 5-7.6 5.6-6.4'],
  before: ['M-4.4-8.2C.6-8.2 .2 9-1.6 17', 'M2.6-8.2C9.4-8.2 8.4 9 5.2 17'],
  across: null
};
const BUMP = 'M-8.4 16.4C-6.6 9.4 6.6 9.4 8.4 16.4';
const WRAP = 'M-8.6 8.6C-5 13.6 5 13.6 8.6 8.6';

/** The loop of a stitch. */
export function loopShape({ loop, face }: DrawnStitch): LoopShape {
  if (loop === 'slipped') return LONG;
  if (loop === 'double') return DOUBLE;
  if (loop === 'wrapped') return { ...LOOP, across: WRAP };
  return face === 'purl' ? { ...LOOP, across: BUMP } : LOOP;
}

/** One row of the fabric below a loop, the first right under it. */
export function rowShape({ face, crossed }: DrawnStitch, row: number): string {
  const y = 15 + row * 11;
  if (crossed) return `M-7.4 ${y - 1}C-3.4 ${y + 1} 2.6 ${y + 5.4} 7 ${y + 10}`;
  if (face === 'purl') return `M-8.2 ${y + 8}C-6.4 ${y + 1} 6.4 ${y + 1} 8.2 ${y + 8}`;
  return `M-7 ${y}C-5.6 ${y + 5}-3 ${y + 8.2} 0 ${y + 10}C3 ${y + 8.2} 5.6 ${y + 5} 7 ${y}`;
}

/** A ring on the needle, seen a little from the side: behind it and in front of it. */
export const RING = { behind: 'M0-15C-5.4-15-5.4 15 0 15', before: 'M0-15C5.4-15 5.4 15 0 15' };

/** A pin that hangs from a stitch. */
export const PIN = 'M-2.4 5C-4.6 14-4.6 24-1.4 29A3.2 3.2 0 1 0 2.8 29C4.6 24 4.6 14 2.4 5Z';

/** The outline of a shaft lying straight, its middle at 0 0. */
export function shaftShape({ length, thickness, left, right }: DrawnShaft): string {
  const [half, thick] = [length / 2, thickness / 2];
  const taper = Math.min(thick * 5.2, half);
  const end = (side: 1 | -1, kind: DrawnShaft['left']) => {
    if (kind === 'joint') return { before: half - thick, path: jointShape(side, half, thick) };
    return { before: half - taper, path: pointShape(side, half, { taper, thick }) };
  };
  const [tip, other] = [end(1, right), end(-1, left)];
  return `M${round(-other.before)} ${round(-thick)}H${round(tip.before)}${tip.path}H${round(-other.before)}${other.path}Z`;
}

// Round the tip: from the upper edge to the lower one on the right, and back on the left.
function pointShape(side: 1 | -1, half: number, { taper, thick }: { taper: number; thick: number }): string {
  const [edge, nose] = [side * (half - taper * 0.42), side * (half - thick * 0.3)];
  const to = (x: number, y: number) => `${round(x)} ${round(side * y)}`;
  const [base, middle] = [side * (half - taper * 0.72), thick * 0.62];
  return (
    `C${to(base, -thick)} ${to(edge, -middle)} ${to(nose, -thick * 0.26)}` +
    `C${to(side * half, -thick * 0.16)} ${to(side * half, thick * 0.16)} ${to(nose, thick * 0.26)}` +
    `C${to(edge, middle)} ${to(base, thick)} ${to(side * (half - taper), thick)}`
  );
}

function jointShape(side: 1 | -1, half: number, thick: number): string {
  const to = (x: number, y: number) => `${round(side * x)} ${round(side * y)}`;
  return `L${to(half, -thick * 0.55)}L${to(half, thick * 0.55)}L${to(half - thick, thick)}`;
}

/** The cloth of a flag, its middle at 0 0, with a notch on the side away from the pole. */
export function clothShape({ width, height, flies, size }: DrawnFlag): string {
  const [x, y] = [(width / 2) * flies, height / 2];
  const notch = size * 0.5 * flies;
  const [pole, fly, top] = [round(-x), round(x), round(y)];
  return `M${pole} ${-top}H${fly}L${round(x - notch)} 0L${fly} ${top}H${pole}Z`;
}

/** The head of an arrow that ends at the last of its points. */
export function arrowHead(points: readonly Point[], size: number): string {
  const [start, end] = [points[0]!, points.at(-1)!];
  const length = Math.hypot(end.x - start.x, end.y - start.y) || 1;
  const [x, y] = [((end.x - start.x) / length) * size, ((end.y - start.y) / length) * size];
  const wing = (side: 1 | -1) => `${round(end.x - x - side * y * 0.55)} ${round(end.y - y + side * x * 0.55)}`;
  return `M${wing(1)}L${round(end.x)} ${round(end.y)}L${wing(-1)}`;
}

/** A line with corners. */
export function cornered(points: readonly Point[]): string {
  return points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
}

/** A smooth line through all points. */
export function smooth(points: readonly Point[]): string {
  const at = (index: number) => points[Math.min(Math.max(index, 0), points.length - 1)]!;
  const curves = points.slice(1).map((point, index) => {
    const [before, start, after] = [at(index - 1), at(index), at(index + 2)];
    const one = handle(start, { x: point.x - before.x, y: point.y - before.y }, 1);
    const two = handle(point, { x: after.x - start.x, y: after.y - start.y }, -1);
    return `C${one} ${two} ${round(point.x)} ${round(point.y)}`;
  });
  return `M${round(at(0).x)} ${round(at(0).y)}${curves.join('')}`;
}

function handle(point: Point, along: Point, side: 1 | -1): string {
  return `${round(point.x + (side * along.x) / 6)} ${round(point.y + (side * along.y) / 6)}`;
}

/** Two decimals are finer than any printer. */
export function round(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** Moves, turns and, where it is given, scales. */
export function transform(place: Point & { readonly angle?: number }, scale?: readonly [number, number]): string {
  const turn = place.angle ? ` rotate(${round(place.angle)})` : '';
  const size = scale ? ` scale(${scale.map((part) => Math.round(part * 1000) / 1000 + 0).join(' ')})` : '';
  return `translate(${round(place.x)} ${round(place.y)})${turn}${size}`;
}
