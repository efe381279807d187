/** How many stitches lie at ease on a needle. */

import type { Settings } from '../model/settings.ts';
import type { Setup } from '../model/setup.ts';

/** Both points of a straight needle are kept free: 2 cm each (ours). */
const POINTS_CM = 4;

/** Tips and joins of a circular: the cord is 8 to 10 in shorter than the needle (Woolpack Yarn, length of circulars). */
const TIPS_CM = 23;

/** A cord holds 1.75 to 3 times its length in knitting (same source); the lower number is at ease. */
const CORD_HOLDS = 1.75;

/** Short flexible needles have points of about 6 cm in all and a cord that bunches little (from memory). */
const FLEXIBLE_POINTS_CM = 6;

/** Above this many times the usable length nothing more goes on (ours; sources disagree). */
const MOST_TIMES = 1.5;

/** Stitches that lie at ease on one needle (of a magic loop: in one group); at least 2. */
export function usable(setup: Setup, settings: Settings): number {
  return Math.max(2, Math.floor((usableCm(setup, settings) * settings.stitchesPer10cm) / 10));
}

/** The most stitches that one needle can hold. */
export function mostOn(setup: Setup, settings: Settings): number {
  return Math.ceil(usable(setup, settings) * MOST_TIMES) - 1;
}

function usableCm(setup: Setup, settings: Settings): number {
  const length = settings.lengthCm[setup.id];
  if (setup.form === 'straight') return Math.max(length - POINTS_CM, 1);
  if (setup.form === 'flexible') return Math.max(length - FLEXIBLE_POINTS_CM, 1) * CORD_HOLDS;
  if (setup.holds === 1) return length * CORD_HOLDS;
  const cord = Math.max(length - TIPS_CM, 1) * CORD_HOLDS;
  return setup.works === 'back-tip' ? cord / 2 : cord;
}
