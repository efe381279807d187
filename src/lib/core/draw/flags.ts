/** The flags of the feeding and the working needle. */

import type { Point } from '../model/picture.ts';
import type { Box } from './geometry.ts';
import { textWidth } from './metrics.ts';
import { findPlace, steps, type Size } from './place.ts';
import type { Scale } from './scale.ts';
import type { Sheet } from './sheet.ts';
import type { FlagPlace } from './work.ts';

/** Text size in the needles' font size; the cloth is larger by these. */
const SIZE = 0.88;
const HEM = { x: 0.6, y: 0.3, tail: 0.45 };

/** Raises a flag beside its pole where there is room. */
export function putFlag(sheet: Sheet, scale: Scale, place: FlagPlace): void {
  const size = scale.type * SIZE;
  const cloth = {
    width: textWidth(place.text, true) * size + (2 * HEM.x + HEM.tail) * size,
    height: size * (1.25 + 2 * HEM.y)
  };
  const poles = (first: number, count: number) => steps(size * (0.7 + first * 0.4), size * 0.4, count);
  const tried = place.ways.flatMap((way) => poles(0, 12).map((pole) => ({ ...way, pole })));
  const longer = poles(12, 14).flatMap((pole) => place.ways.map((way) => ({ ...way, pole })));
  const middles = [...tried, ...longer].map((way) => clothAt(place.at, cloth, way));
  const box = findPlace(sheet.room, {
    ...cloth,
    places: middles,
    margin: 3,
    suits: (found) => poleIsOpen(sheet, place.at, found)
  });
  const flies = box.x >= place.at.x ? 1 : -1;
  const { x, y, width, height } = box;
  sheet.flags.push({
    id: place.id,
    opacity: 1,
    x,
    y,
    width,
    height,
    size,
    flies,
    solid: place.solid,
    text: place.text
  });
  const points = poleOf(place.at, box);
  sheet.lines.push({ id: `pole:${place.id}`, opacity: 1, kind: 'pole', points });
  sheet.room.takeBox(box);
  sheet.room.takeLeader(points);
}

function clothAt(at: Point, cloth: Size, way: { rise: 1 | -1; flies: 1 | -1; pole: number }): Point {
  return { x: at.x + (way.flies * cloth.width) / 2, y: at.y - way.rise * (way.pole + cloth.height / 2) };
}

// From the needle to the far corner of the cloth.
function poleOf(at: Point, box: Box): Point[] {
  const x = box.x + (box.x >= at.x ? -1 : 1) * (box.width / 2);
  const y = box.y + (box.y >= at.y ? 1 : -1) * (box.height / 2);
  return [
    { x: at.x, y: at.y },
    { x, y }
  ];
}

function poleIsOpen(sheet: Sheet, at: Point, box: Box): boolean {
  const [start, end] = poleOf(at, box);
  return sheet.room.isOpen(start!, end!);
}
