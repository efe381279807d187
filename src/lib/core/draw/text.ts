/** Text on the sheet: sizes of boxes, and putting them down. */

import type { DrawnLabel, Run } from '../model/picture.ts';
import type { Box } from './geometry.ts';
import { linesWidth } from './metrics.ts';
import type { Size } from './place.ts';
import type { Sheet } from './sheet.ts';

/** Height of a line of text in font sizes. */
const LINE = 1.22;

/** Text with its font size. */
export interface Text {
  readonly lines: readonly (readonly Run[])[];
  readonly size: number;
}

/** Room that a text needs, with `around` added on every side. */
export function sizeOf({ lines, size }: Text, around = { x: 0, y: 0 }): Size {
  return { width: linesWidth(lines, size) + 2 * around.x, height: lines.length * size * LINE + 2 * around.y };
}

/** Puts text down in its box and keeps the room. */
export function putText(sheet: Sheet, label: Pick<DrawnLabel, 'id' | 'kind'> & Text, box: Box): void {
  const { id, kind, lines, size } = label;
  const { x, y, width, height } = box;
  sheet.labels.push({ id, opacity: 1, kind, x, y, width, height, size, lines });
  sheet.room.takeBox(box);
}

/** A run of plain text. */
export function plain(text: string): Run {
  return { text, strong: false };
}

/** A run of bold text. */
export function strong(text: string): Run {
  return { text, strong: true };
}
