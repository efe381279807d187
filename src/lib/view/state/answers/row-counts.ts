/** The stitches of a knitted row, as they are counted beside the text. */

import type { Row } from '$lib/core/index.ts';

/** Stitches before and after a row: of the stretch in work in a flat row, of the whole ring in a round. */
export function countsOf({ run, before, after }: Row): { readonly before: number; readonly after: number } {
  const worked = run.to - run.from;
  return { before: worked, after: worked + after.stitches.length - before.stitches.length };
}
