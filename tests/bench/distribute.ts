/** The distribution against plain enumeration, and how its time grows with the ring. */

import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { bestLayouts } from '$lib/core/solve/best-layouts.ts';
import { questionOf } from '$lib/core/solve/distribute.ts';
import { judgeOf } from '$lib/core/solve/judge.ts';
import { enumerate } from '../support/enumerate.ts';
import { stageOf } from '../support/stages.ts';
import { median, type Ratio } from './measure.ts';

/** A rib on four long needles; every call asks anew, so that nothing priced for one run serves the next. */
function ribAsker(stitches: number) {
  const stage = stageOf({ rows: [[`(k2 p2)${stitches / 4}`, 20]] });
  const roomy = { ...DEFAULT_SETTINGS, lengthCm: { ...DEFAULT_SETTINGS.lengthCm, 'dpn-5': 200 } };
  const judge = judgeOf(stage, SETUPS['dpn-5'], roomy);
  return () => questionOf(judge, 4);
}

/** Ten best layouts of 72 stitches on four needles against enumerating all of them. */
export function againstEnumeration(): Ratio {
  const ask = ribAsker(72);
  const ours = median(() => bestLayouts(ask(), 10), 50);
  const plain = median(() => enumerate(ask()), 1);
  const name = `ten best of 72 on four needles (${ours.toFixed(2)} ms) against plain enumeration`;
  return { name, value: plain / ours, aim: 'at least 20' };
}

/** Exponent of the time from 64 to 400 stitches. */
export function growth(): Ratio {
  const [small, large] = [64, 400].map((stitches) => {
    const ask = ribAsker(stitches);
    return median(() => bestLayouts(ask(), 10), 30);
  }) as [number, number];
  const name = 'growth of the time from 64 to 400 stitches, exponent';
  return { name, value: Math.log(large / small) / Math.log(400 / 64), aim: 'at most 1.3' };
}
