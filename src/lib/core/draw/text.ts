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

/** Longest name of a marker that is written out, in letters. */
const LONGEST = 18;

/** The name of a marker and the room that its frame takes. */
export function markerName(name: string, type: number): { readonly text: Text; readonly size: Size } {
  const letters = [...name];
  const short = letters.length > LONGEST ? `${letters.slice(0, LONGEST - 1).join('')}…` : name;
  const text: Text = { lines: [[strong(short)]], size: type * 0.82 };
  const { width, height } = sizeOf(text, { x: text.size * 0.5, y: text.size * 0.12 });
  return { text, size: { width: Math.max(width, height * 1.25), height } };
}
