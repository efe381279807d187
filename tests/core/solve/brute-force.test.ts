import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stage } from '$lib/core/model/fabric.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { bestLayouts, type Priced } from '$lib/core/solve/best-layouts.ts';
import { distribute, questionOf } from '$lib/core/solve/distribute.ts';
import { judgeLayout, judgeOf } from '$lib/core/solve/judge.ts';
import { tryAll } from '../../support/brute-force.ts';
import { withLength } from '../../support/layouts.ts';
import { stageOf } from '../../support/stages.ts';

const plain = ({ layout, price }: Priced) => ({ breaks: layout.breaks, price });

/** One row over so many stitches, from numbers that choose its operations: half of the rows are ribs where they fit. */
function rowText(stitches: number, choice: readonly number[]): { readonly text: string; readonly makes: number } {
  const [kind = 0, ...numbers] = choice;
  if (kind === 0 && stitches % 4 === 0) return { text: `(k2 p2)${stitches / 4}`, makes: stitches };
  if (kind === 1 && stitches % 3 === 0) return { text: `(k1 yo k2tog)${stitches / 3}`, makes: stitches };
  if (kind === 2 && stitches % 2 === 0) return { text: `k1 (p1 k1)${stitches / 2 - 1} p1`, makes: stitches };
  const words: string[] = [];
  let [taken, makes] = [0, 0];
  for (let index = 0; taken < stitches; index += 1) {
    const [word, takes, made] = WORDS[numbers[index % numbers.length]!]!;
    const fits = taken + takes <= stitches && stitches - taken - takes + makes + made >= 4 && makes + made <= 14;
    const [used, usedTakes, usedMakes] = fits && index < 20 ? [word, takes, made] : (['k1', 1, 1] as const);
    words.push(used);
    [taken, makes] = [taken + usedTakes, makes + usedMakes];
  }
  return { text: words.join(' '), makes };
}

const WORDS = [
  ...(['k1', 'k1', 'k1', 'p1'] as const).map((word) => [word, 1, 1] as const),
  ['k2tog', 2, 1],
  ['ssk', 2, 1],
  ['k2tog k1 ssk', 5, 3],
  ['yo k2tog', 2, 2],
  ['m1 k1', 1, 2],
  ['k1 m1', 1, 2],
  ['kfb', 1, 2],
  ['c4', 4, 4],
  ['t2', 2, 2],
  ['cdd', 3, 1]
] as const;

/** Random stages of one to four rows over 4 to 14 stitches, each row worked once to three times where its count stays. */
const randomStages: fc.Arbitrary<Stage> = fc
  .record({
    stitches: fc.integer({ min: 4, max: 14 }),
    rows: fc.array(
      fc.record({
        choice: fc.tuple(fc.nat(5), ...Array.from({ length: 6 }, () => fc.nat(WORDS.length - 1))),
        times: fc.integer({ min: 1, max: 3 })
      }),
      { minLength: 1, maxLength: 4 }
    )
  })
  .map(({ stitches, rows }) => {
    let now = stitches;
    const told = rows.map(({ choice, times }): [string, number] => {
      const { text, makes } = rowText(now, choice);
      const often = makes === now ? times : 1;
      now = makes;
      return [text, often];
    });
    return stageOf({ rows: told });
  });

/** Gauge 30 to 10 cm and 4 cm of points: needles of 6 and 15 cm take 6 and 33 stitches at ease. */
const lengths = fc.constantFrom([6, 6] as const, [15, 33] as const);

describe('every layout of small random rings, knitted and priced by hand', () => {
  const judged = fc.tuple(randomStages, fc.integer({ min: 2, max: 4 }), lengths);

  test('bestLayouts() gives the same twelve best in the same order', () => {
    fc.assert(
      fc.property(judged, ([stage, needles, [cm, usable]]) => {
        const judge = judgeOf(stage, SETUPS['dpn-5'], withLength(cm));
        const found = bestLayouts(questionOf(judge, needles), 12).map(plain);
        const all = tryAll(stage, { count: needles, usable }).filter(({ price }) => price < Infinity);
        expect(found).toEqual(all.slice(0, 12));
      }),
      { seed: 1905, numRuns: 400 }
    );
  });

  test('judgeLayout() asks the same price of every layout, and blocks those that cannot be', () => {
    fc.assert(
      fc.property(judged, ([stage, needles, [cm, usable]]) => {
        for (const { breaks, price } of tryAll(stage, { count: needles, usable })) {
          const found = judgeLayout(stage, { breaks }, { setup: SETUPS['dpn-5'], settings: withLength(cm) });
          const isBlocked = found.reasons.some((reason) => reason.severity === 'blocker');
          expect(isBlocked, breaks.join()).toBe(price >= 1000);
          if (!isBlocked) expect(found.price, breaks.join()).toBe(price);
        }
      }),
      { seed: 2011, numRuns: 150 }
    );
  });

  test('distribute() offers the best one first, at the number of needles that pays least', () => {
    fc.assert(
      fc.property(judged, ([stage, , [cm, usable]]) => {
        const found = distribute(stage, SETUPS['dpn-4'], withLength(cm));
        const tries = [3, 2].map((count) => tryAll(stage, { count, usable })[0]);
        const [three, two] = tries.map((tried) => tried?.price ?? Infinity) as [number, number];
        if (found.kind === 'impossible') expect([three, two]).toEqual([Infinity, Infinity]);
        else {
          const { breaks } = found.best[0]!.layout;
          const expected = tries.find((tried) => tried?.breaks.length === breaks.length)!;
          expect(breaks).toEqual(expected.breaks);
          if (three < Infinity && breaks.length === 2) expect(two).toBeLessThan(three);
        }
      }),
      { seed: 77, numRuns: 300 }
    );
  });
});
