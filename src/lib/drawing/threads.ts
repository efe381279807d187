/** The look of yarn in each place: on the needle, row by row below it, and on a needle at rest. */

import type { DrawnStitch } from '$lib/core/index.ts';
import { round } from './shapes.ts';
import { mixColours, type Palette, type Thread } from './palette.ts';

/** A thread with its widths, of the fill and of the fill with its outline. */
export interface Strand extends Thread {
  readonly width: number;
  readonly outer: number;
}

/** The tone that a number stands for. */
export function threadOf(palette: Palette, tone: number): Thread {
  return palette.threads[tone % palette.threads.length]!;
}

/** Yarn of a loop on the needle; thinner and paler when the needle rests. */
export function loopStrand(palette: Palette, stitch: DrawnStitch): Strand {
  const thread = threadOf(palette, stitch.tone);
  const thin = stitch.loop === 'double' ? 0.8 : 1;
  if (!stitch.quiet) return { ...thread, width: round(4.9 * thin), outer: round(6.9 * thin) };
  if (palette.ink === '#000000') return { ...thread, width: 1.8, outer: 3, core: null };
  return { ...paler(palette, thread, 0.45), width: 2.6, outer: 4 };
}

/** Yarn of a row of fabric: it fades towards the paper, or, where there is only black, gets thinner. */
export function rowStrand(palette: Palette, stitch: DrawnStitch, row: number): Strand {
  const thread = threadOf(palette, stitch.tone);
  const share = (row + 1) / (stitch.rows + 1);
  if (palette.ink === '#000000') return printRow(thread, share, stitch.quiet);
  const quiet = stitch.quiet ? 0.3 : 0;
  const base = mixColours(thread.fill, thread.edge, palette.paper === '#1d1b18' ? 0 : 0.22);
  const fill = mixColours(base, palette.paper, Math.min(share * 0.98 - 0.02 + quiet, 0.92));
  return { edge: fill, fill, core: null, width: 0, outer: 5 };
}

function printRow(thread: Thread, share: number, quiet: boolean): Strand {
  const line = quiet ? 0.4 : 1.1 - share * 0.8;
  const dark = thread.fill === '#000000';
  if (dark)
    return {
      edge: thread.fill,
      fill: thread.fill,
      core: null,
      width: 0,
      outer: round((quiet ? 1 : 4.2) * (1.05 - share))
    };
  return { ...thread, core: null, width: round(4.2 - line), outer: round(4.2 + line) };
}

function paler(palette: Palette, thread: Thread, share: number): Thread {
  return {
    edge: mixColours(thread.edge, palette.paper, share),
    fill: mixColours(thread.fill, palette.paper, share),
    core: thread.core === null ? null : mixColours(thread.core, palette.paper, share)
  };
}
