/** Trims the sheet to what is on it, turns it round for a left-handed knitter, and says what is to be seen. */

import type { Moment, NeedleMoment, NeedleState } from '../model/moment.ts';
import type { DrawnShaft, Drawn, Picture, Point, Theme } from '../model/picture.ts';
import { from } from './geometry.ts';
import type { Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { alongTrack } from './track.ts';

/** Paper round the drawing, in units of the picture. */
const MARGIN = 14;

/** Points of a track in a picture. */
const TRACK_POINTS = 33;

/** What is done last: the picture of a sheet. */
export function finish(sheet: Sheet, table: Table, options: { mirrored: boolean; theme: Theme }): Picture {
  const bounds = boundsOf(pointsOf(sheet, table.scale.depth));
  const width = bounds.right - bounds.left + 2 * MARGIN;
  const height = bounds.bottom - bounds.top + 2 * MARGIN;
  const move = placer({ left: bounds.left - MARGIN, top: bounds.top - MARGIN, width, mirrored: options.mirrored });
  const angled = <T extends { angle: number }>(item: T) => ({
    ...item,
    angle: round(options.mirrored ? -item.angle : item.angle)
  });
  const turn = options.mirrored ? -1 : 1;
  const withPoints = <T extends { points: readonly Point[] }>(item: T) => ({ ...item, points: item.points.map(place) });
  function place(point: Point): Point {
    const { x, y } = move(point);
    return { x, y };
  }
  return {
    theme: options.theme,
    mirrored: options.mirrored,
    width: round(width),
    height: round(height),
    title: titleOf(table.moment),
    description: describe(table.moment),
    centre: place(table.centre),
    tracks: table.seats.map(({ track }) => ({
      points: alongTrack(track, { from: 0, to: track.length, step: track.length / (TRACK_POINTS - 1) }, 0).map(place)
    })),
    front: Math.max(
      0,
      table.seats.findIndex((seat) => seat === table.front)
    ),
    shafts: unique(byState(sheet.shafts)).map((shaft) => turned(angled(move(shaft)), options.mirrored)),
    cords: unique(sheet.cords).map(withPoints),
    stitches: unique(sheet.stitches).map((stitch) => ({
      ...angled(move(stitch)),
      along: round(stitch.along, 4),
      flip: turn
    })),
    markers: unique(sheet.markers).map((marker) => angled(move(marker))),
    yarns: sheet.yarns.map(withPoints),
    lines: unique(sheet.lines).map(withPoints),
    labels: unique(sheet.labels).map(move),
    flags: sheet.flags.map((flag) => ({ ...move(flag), flies: flag.flies * turn }))
  };
}

// A reflected shaft lies at the opposite angle with its ends changed over.
function turned(shaft: DrawnShaft, mirrored: boolean): DrawnShaft {
  return mirrored ? { ...shaft, left: shaft.right, right: shaft.left } : shaft;
}

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly mirrored: boolean;
}

function placer({ left, top, width, mirrored }: Frame): <T extends Point>(item: T) => T {
  return (item) => {
    const x = item.x - left;
    return { ...item, x: round(mirrored ? width - x : x), y: round(item.y - top) };
  };
}

function round(value: number, digits = 2): number {
  const unit = 10 ** digits;
  return Math.round(value * unit) / unit + 0;
}

/** What lies under what. */
const ORDER: readonly NeedleState[] = ['free', 'resting', 'holding', 'working', 'feeding'];

function byState(shafts: readonly DrawnShaft[]): DrawnShaft[] {
  return shafts.toSorted((one, other) => ORDER.indexOf(one.state) - ORDER.indexOf(other.state));
}

// Two markers of one name get ids of their own.
function unique<T extends Drawn>(items: readonly T[]): T[] {
  const seen = new Map<string, number>();
  return items.map((item) => {
    const count = (seen.get(item.id) ?? 0) + 1;
    seen.set(item.id, count);
    return count === 1 ? item : { ...item, id: `${item.id}~${count}` };
  });
}

function pointsOf(sheet: Sheet, depth: number): Point[] {
  const boxes = [...sheet.labels, ...sheet.flags].flatMap(({ x, y, width, height }) => [
    { x: x - width / 2, y: y - height / 2 },
    { x: x + width / 2, y: y + height / 2 }
  ]);
  const stitches = sheet.stitches.flatMap((stitch) => [from(stitch, 0, -stitch.size), from(stitch, 0, depth)]);
  const shafts = sheet.shafts.flatMap((shaft) => [from(shaft, shaft.length / 2, 0), from(shaft, -shaft.length / 2, 0)]);
  const lines = [...sheet.cords, ...sheet.yarns, ...sheet.lines].flatMap((line) => line.points);
  return [...boxes, ...stitches, ...shafts, ...lines];
}

function boundsOf(points: readonly Point[]): { left: number; right: number; top: number; bottom: number } {
  if (points.length === 0) return { left: 0, right: 160, top: 0, bottom: 120 };
  const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function titleOf(moment: Moment): string {
  const place = [moment.stage, moment.row].filter((part) => part !== '').join(', ');
  return place === '' ? moment.setup.name : `${place}: ${moment.setup.name}`;
}

function describe(moment: Moment): string {
  return moment.needles.map((needle) => `${nameOf(needle)}, ${needle.state}${loadOf(needle)}.`).join(' ');
}

function nameOf(needle: NeedleMoment): string {
  const group = needle.group === null ? '' : ` ${needle.group}`;
  return needle.number === null ? `Needle ${needle.letter}` : `N${needle.number}, needle ${needle.letter}${group}`;
}

function loadOf({ stitches, number }: NeedleMoment): string {
  if (number === null) return '';
  return `, ${stitches.length} ${stitches.length === 1 ? 'stitch' : 'stitches'}`;
}
