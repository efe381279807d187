import { expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { bestLayouts } from '$lib/core/solve/best-layouts.ts';
import { questionOf } from '$lib/core/solve/distribute.ts';
import { judgeOf } from '$lib/core/solve/judge.ts';
import { leastPrices } from '../../support/milp.ts';
import { stageOf } from '../../support/stages.ts';

/** Medium rings of every kind of fabric; with two needles a program has so many ways round that the rings are smaller. */
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

const SMALLER = {
  'plain 17': [['k17', 4]],
  'k2 p2 rib of 20': [['(k2 p2)5', 6]],
  'repeat of five over 20': [['(k4 p1)4', 3]],
  'cable in 22': [
    ['k22', 3],
    ['k8 c8 k6', 1]
  ],
  'lace of 18': [
    ['(yo k2tog k4)3', 2],
    ['k18', 2]
  ],
  'thumb in 19': [
    ['k9 m1 k10', 1],
    ['k20', 2],
    ['k9 m1 k2 m1 k9', 1],
    ['k22', 2]
  ]
} as const satisfies Record<string, readonly (readonly [string, number])[]>;

const CASES = [
  ...Object.entries(RINGS).flatMap(([name, rows]) =>
    (['dpn-5', 'dpn-4'] as const).map((id) => [name, id, rows] as const)
  ),
  ...Object.entries(SMALLER).flatMap(([name, rows]) =>
    (['dpn-5', 'dpn-4', 'two-circulars'] as const).map((id) => [name, id, rows] as const)
  )
];

test.each(CASES)('bestLayouts() pays what HiGHS pays: %s on %s', { timeout: 30_000 }, async (_name, setup, rows) => {
  const judge = judgeOf(stageOf({ rows }), SETUPS[setup], DEFAULT_SETTINGS);
  const question = questionOf(judge, SETUPS[setup].holds);
  const best = bestLayouts(question, 1).map(({ price }) => price);
  expect(best).toEqual(await leastPrices(question, 1));
});

// Each layout that was found is forbidden before the next one is asked for.
test.each(['plain 17', 'k2 p2 rib of 20', 'cable in 22', 'thumb in 19'] as const)(
  'bestLayouts() gives the five least prices of HiGHS: %s on a set of four',
  { timeout: 30_000 },
  async (name) => {
    const judge = judgeOf(stageOf({ rows: SMALLER[name] }), SETUPS['dpn-4'], DEFAULT_SETTINGS);
    const question = questionOf(judge, 3);
    const five = bestLayouts(question, 5).map(({ price }) => price);
    expect(five).toEqual(await leastPrices(question, 5));
  }
);

test('bestLayouts() finds nothing where HiGHS finds nothing', async () => {
  const cut = stageOf({
    rows: [
      ['c8 c8', 1],
      ['k4 c8 k4', 1]
    ]
  });
  const question = questionOf(judgeOf(cut, SETUPS['two-circulars'], DEFAULT_SETTINGS), 2);
  expect(bestLayouts(question, 1)).toEqual([]);
  expect(await leastPrices(question, 1)).toEqual([]);
});
