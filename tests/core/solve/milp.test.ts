import { expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { bestLayouts } from '$lib/core/solve/best-layouts.ts';
import { questionOf } from '$lib/core/solve/distribute.ts';
import { judgeOf } from '$lib/core/solve/judge.ts';
import { leastPrice } from '../../support/milp.ts';
import { stageOf } from '../../support/stages.ts';

/** Medium rings of every kind of fabric. */
const RINGS = {
  'plain 30': [['k30', 4]],
  'k2 p2 rib of 36': [['(k2 p2)9', 6]],
  'k3 p1 rib of 32': [['(k3 p1)8', 6]],
  'repeat of five over 35': [['(k4 p1)7', 3]],
  'cable in 32': [
    ['k32', 3],
    ['k12 c12 k8', 1]
  ],
  'two cables in 40': [
    ['k40', 5],
    ['k4 c6 k6 c8 k16', 1]
  ],
  'lace of 36': [
    ['(yo k2tog k4)6', 2],
    ['k36', 2]
  ],
  'thumb in 31': [
    ['k15 m1 k16', 1],
    ['k32', 2],
    ['k15 m1 k2 m1 k15', 1],
    ['k34', 2]
  ]
} as const satisfies Record<string, readonly (readonly [string, number])[]>;

const CASES = Object.entries(RINGS).flatMap(([name, rows]) =>
  (['dpn-5', 'dpn-4', 'two-circulars'] as const).map((setup) => [name, setup, rows] as const)
);

test.each(CASES)('bestLayouts() pays what HiGHS pays: %s on %s', { timeout: 30_000 }, async (_name, setup, rows) => {
  const judge = judgeOf(stageOf({ rows }), SETUPS[setup], DEFAULT_SETTINGS);
  const question = questionOf(judge, SETUPS[setup].holds);
  expect(bestLayouts(question, 1)[0]?.price ?? null).toBe(await leastPrice(question));
});
