/** Where the usual values of the settings come from, in a sentence each. */

import type { SetupId } from '$lib/core/index.ts';

const USUAL_LENGTHS: Readonly<Record<SetupId, string>> = {
  'dpn-5': 'Usually 15 cm: sock needles are sold as 12 to 18 cm (5 to 7 in).',
  'dpn-4': 'Usually 20 cm: in sets of four a needle often holds 30 stitches and more. Common practice.',
  'two-circulars': 'Usually 60 cm; anything a little over 40 cm (16 in) does.',
  'magic-loop': 'Usually 100 cm (40 in), the length most knitters prefer for this.',
  'flexible-3': 'About 20 cm: two short tips with a cord between them. Common practice.',
  'short-circular': 'Usually 23 cm (9 in), the small circular for socks. Common practice.'
};

/** Where each value comes from. */
export const SOURCES = {
  lengthCm: USUAL_LENGTHS,
  stitchesPer10cm: 'Usually 30, a common sock gauge (fine yarn gives 27 to 32).',
  minimum: 'Usually 4, common practice; fewer than 2 are never planned.',
  share: 'Usually 60 and 15, common practice; a stricter rule of editors is 50 and 25. One needle alone is exempt.'
} as const;
