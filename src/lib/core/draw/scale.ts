/** Sizes that the whole drawing shares: they follow from how full the fullest needle is. */

import type { Moment } from '../model/moment.ts';
import { clamp } from './geometry.ts';

/** Sizes in units of the picture. */
export interface Scale {
  /** Width of a stitch. */
  readonly pitch: number;
  /** Thickness of a needle. */
  readonly thick: number;
  /** Rows of fabric below each loop, and how far they reach from the middle of the needle. */
  readonly rows: number;
  readonly depth: number;
  /** Font size of the needles' names; other text is a little smaller. */
  readonly type: number;
  /** From the last stitch to the tip. */
  readonly end: number;
}

/** Distance of a row of fabric from the next one, and of the first loop's lower end, in widths of a stitch. */
const ROW = 0.55;
const FIRST_ROW = 1.4;

/** The sizes for a moment. */
export function scaleOf(moment: Moment): Scale {
  const loads = moment.needles.map((needle) => needle.stitches.length);
  const fullest = Math.max(1, ...loads);
  // An oval shows its stitches all round: it is as wide as a third of them.
  const count = moment.setup.id === 'short-circular' ? fullest / 2.6 : fullest;
  const pitch = clamp(16 * (14 / count) ** 0.42, 7.5, 16);
  const rows = Math.round(clamp(44 / pitch, 3, 5));
  const type = 14 * clamp(Math.sqrt((count * pitch) / 330), 1, 1.6);
  return {
    pitch,
    thick: clamp(pitch * 0.48, 4.5, 7.4),
    rows,
    depth: pitch * (FIRST_ROW + ROW * (rows - 1)),
    type,
    end: 30 + pitch * 0.4
  };
}
