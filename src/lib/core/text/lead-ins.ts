/** What stands before the work of a sentence and changes no stitch: "With larger needles and RS facing, beginning at the seam, …". */

import type { Cursor } from './cursor.ts';

/** Most words of such a lead-in. */
const MOST_WORDS = 24;

const STARTS = ['with', 'using', 'beginning', 'starting', 'from', 'rs', 'ws'];
const PICK_UPS = ['pick up', 'pu and k', 'pu & k', 'knit up', 'k up'];

/** Words that tell how the work is held, and words about the needle that takes the stitches: those count. */
const OF_WORK = new Set(['facing', 'seam', 'larger', 'smaller', 'beginning', 'starting']);
const OF_NEEDLES = new Set(['needle', 'same', 'empty', 'free', 'new', 'another', 'spare', 'dpn']);

/** Skips the words before "pick up and knit", where nothing but words stands before it. */
export function skipToPickUp(at: Cursor): boolean {
  return (
    at.attempt(() => {
      if (!STARTS.includes(at.text())) return null;
      let tells = false;
      for (let words = 0; words < MOST_WORDS; words += 1) {
        if (at.looksLike((inner) => inner.phrase(...PICK_UPS))) return tells || null;
        const token = at.peek();
        if ((token?.kind !== 'word' && token?.text !== ',') || OF_NEEDLES.has(token.text)) return null;
        tells ||= OF_WORK.has(token.text);
        at.at += 1;
      }
      return null;
    }) === true
  );
}
