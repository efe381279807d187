/** Draws the needles in the way of each set-up. */

import { putCircular } from './circular.ts';
import { putFlexible, putSmallCircular } from './flexible.ts';
import type { Table } from './seats.ts';
import type { Sheet } from './sheet.ts';
import { putSticks } from './sticks.ts';
import type { Tools } from './work.ts';

/** Draws every needle with stitches and the one that works. Free needles come later, where there is room. */
export function putNeedles(sheet: Sheet, table: Table): Tools {
  const { setup } = table.moment;
  if (setup.id === 'short-circular') return putSmallCircular(sheet, table);
  if (setup.form === 'flexible') return putFlexible(sheet, table);
  return setup.form === 'circular' ? putCircular(sheet, table) : putSticks(sheet, table);
}
