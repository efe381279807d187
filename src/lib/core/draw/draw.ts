/** Draws one moment: a pure function from what lies on the needles to a picture. */

import type { Moment } from '../model/moment.ts';
import type { Picture, Theme } from '../model/picture.ts';
import { putAside } from './aside.ts';
import { hangCords } from './circular.ts';
import { finish } from './finish.ts';
import { putFlag } from './flags.ts';
import { putCordNames, putMarkerNames, putNeedleNames } from './labels.ts';
import { putNeedles } from './needles.ts';
import { layTable } from './seats.ts';
import { putSections } from './sections.ts';
import { Sheet } from './sheet.ts';
import { putStitches } from './stitches.ts';
import { putYarn } from './yarn.ts';

/** How to draw. */
export interface DrawOptions {
  /** True for a left-handed knitter: the round runs the other way. Text stays upright. */
  readonly mirrored: boolean;
  readonly theme: Theme;
}

/**
 * The picture of a moment. The needle being worked lies nearest the reader, the ring open and flat, and the right side of
 * the fabric faces outwards; rounds run clockwise.
 *
 * The order of drawing is the order of importance for room: stitches and needles stand where they must, the yarn and the
 * cords keep clear of them, and text looks for a place among all of it. Same input, same picture.
 */
export function drawMoment(moment: Moment, options: DrawOptions): Picture {
  const table = layTable(moment);
  const sheet = new Sheet();
  putStitches(sheet, table);
  const tools = putNeedles(sheet, table);
  putSections(sheet, table);
  putYarn(sheet, table, tools);
  const [hanging, standing] = [tools.flags.filter((flag) => !flag.solid), tools.flags.filter((flag) => flag.solid)];
  for (const flag of hanging) putFlag(sheet, table.scale, flag);
  if (moment.setup.form === 'circular' && moment.setup.holds > 1) hangCords(sheet, table);
  putMarkerNames(sheet, table);
  for (const flag of standing) putFlag(sheet, table.scale, flag);
  putNeedleNames(sheet, table);
  putCordNames(sheet, table);
  putAside(sheet, table);
  return finish(sheet, table, options);
}
