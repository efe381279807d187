/** The distribution against other exact ways to the same answer, and how its time grows with the ring. */

import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { bestLayouts } from '$lib/core/solve/best-layouts.ts';
import { questionOf } from '$lib/core/solve/distribute.ts';
import { judgeOf } from '$lib/core/solve/judge.ts';
import { enumerateBest } from '../support/enumerate.ts';
import { leastPrices } from '../support/milp.ts';
import { stageOf } from '../support/stages.ts';
import { median, type Ratio } from './measure.ts';

/** Fabrics of any even size: a rib, and a thumb that grows in plain fabric. */
const FABRICS = {
  rib: (stitches: number) => stageOf({ rows: [[`(k2 p2)${stitches / 4}`, 20]] }),
  thumb: (stitches: number) =>
    stageOf({
      rows: [0, 1, 2, 3, 4, 5].flatMap((step): [string, number][] => [
        [`k${stitches / 2} m1 k${2 * step + 1} m1 k${stitches / 2 - 1}`, 1],
        [`k${stitches + 2 * step + 2}`, 2]
      ])
    })
} as const;

type Fabric = keyof typeof FABRICS;

/** Asks for four long needles; every call asks anew, so that nothing priced for one run serves the next. */
function asker(fabric: Fabric, stitches: number) {
  const roomy = { ...DEFAULT_SETTINGS, lengthCm: { ...DEFAULT_SETTINGS.lengthCm, 'dpn-5': 200 } };
  const judge = judgeOf(FABRICS[fabric](stitches), SETUPS['dpn-5'], roomy);
  return () => questionOf(judge, 4);
}

/** Ten best layouts of 72 stitches on four needles against an enumeration that gives up what is dearer than its ten best. */
export function againstEnumeration(): Ratio {
  const ask = asker('rib', 72);
  const ours = median(() => bestLayouts(ask(), 10), 200);
  const pruned = median(() => enumerateBest(ask(), 10), 5);
  const name = `ten best of 72 on four needles (${ours.toFixed(2)} ms) against pruned enumeration`;
  return { name, value: pruned / ours, aim: 'at least 20' };
}

/** The best layout of 40 stitches on four needles against HiGHS, reading the program included. */
export async function againstSolver(): Promise<Ratio> {
  const ask = asker('rib', 40);
  const ours = median(() => bestLayouts(ask(), 1), 200);
  await leastPrices(ask(), 1);
  const started = performance.now();
  await leastPrices(ask(), 1);
  const theirs = performance.now() - started;
  return { name: 'best of 40 on four needles against HiGHS', value: theirs / ours, aim: 'at least 100' };
}

/** Exponent of the time from 64 to 400 stitches, in a rib. */
export const growth = (): Ratio => exponent('rib');

/** The same where the ring grows from row to row. */
export const growthWhileGrowing = (): Ratio => exponent('thumb');

function exponent(fabric: Fabric): Ratio {
  const [small, large] = [64, 400].map((stitches) => {
    const ask = asker(fabric, stitches);
    return median(() => bestLayouts(ask(), 10), 100);
  }) as [number, number];
  const name = `growth of the time from 64 to 400 stitches in a ${fabric}, exponent`;
  return { name, value: Math.log(large / small) / Math.log(400 / 64), aim: 'at most 1.3' };
}
