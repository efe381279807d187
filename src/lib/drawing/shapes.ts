/** Shapes of stitches, needles, markers and lines as SVG paths. A stitch is drawn 20 wide; its size scales it. */

import type { DrawnFlag, DrawnShaft, DrawnStitch, Point } from '$lib/core/index.ts';

/** Width in which the shapes of stitches and markers are drawn. */
export const UNIT = 20;

/** A leg in front of the needle: its outline and its body. */
export interface Leg {
  readonly edge: string;
  readonly body: string;
}

/** Part of a loop behind the needle and in front of it, and what lies across it. */
export interface LoopShape {
  readonly behind: readonly string[];
  readonly before: readonly Leg[];
  readonly across: string | null;
}

// From the top of the loop over the needle. The body begins a little earlier than the outline, so that no seam shows.
function leg(top: number, down: string): Leg {
  const shoulder = `M${round(top - 1.5)}-8.05C${round(top - 1)}-8.15 ${round(top - 0.5)}-8.2 ${top}-8.2`;
  return { edge: `M${top}-8.2C${down}`, body: `${shoulder}C${down}` };
}

// The leg nearer the tip leads and lies in front; the other comes up behind the needle.
const LOOP: LoopShape = {
  behind: ['M-4.7 16.6C-6.8 8-7.6-8.2 0-8.2'],
  before: [leg(0, '7.6-8.2 6.8 8 4.7 16.6')],
  across: null
};
const LONG: LoopShape = {
  behind: ['M-3.6 28C-7 10-8.4-8.2 0-8.2'],
  before: [leg(0, '8.4-8.2 7 10 3.6 28')],
  across: null
};
const DOUBLE: LoopShape = {
  behind: ['M-6.8 16.4C-9 8-9.8-8.2-4.6-8.2', 'M-.6 16.4C-2.6 8-2.2-8.2 2.8-8.2'],
  before: [leg(-4.6, '.4-8.2 0 8-1.6 16.4'), leg(2.8, '9.6-8.2 8.6 8 6 16.4')],
  across: null
};
const BUMP = 'M-7.8 15.6C-6 9.6 6 9.6 7.8 15.6';
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
  if (face === 'purl') return `M-7.6 ${y + 8}C-5.6 ${y + 2} 5.6 ${y + 2} 7.6 ${y + 8}`;
  return `M-7 ${y}L0 ${y + 10}L7 ${y}`;
}

/** A ring on the needle, seen a little from the side: behind it, in front of it, and the part of that which crosses it. */
export const RING = {
  behind: 'M0-15.5C-7-15.5-7 15.5 0 15.5',
  before: 'M0-15.5C7-15.5 7 15.5 0 15.5',
  crossing: 'M3.6-11.7C5.8-5.7 5.8 5.7 3.6 11.7'
};

/** A pin that hangs from a stitch. */
export const PIN = 'M0 3.4C-4.6 3.4-4.8 21-1.9 26.4A3.1 3.1 0 1 0 1.9 26.4C4.8 21 4.6 3.4 0 3.4Z';

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
  const [start, end] = [points.at(-3) ?? points[0]!, points.at(-1)!];
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
