import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS, type SetupId } from '$lib/core/model/setup.ts';
import { bestLayouts, type Priced, type Question } from '$lib/core/solve/best-layouts.ts';
import { questionOf } from '$lib/core/solve/distribute.ts';
import { judgeOf, judgeWith } from '$lib/core/solve/judge.ts';
import { loadPrice } from '$lib/core/solve/needle-findings.ts';
import { enumerate, enumerateBest } from '../../support/enumerate.ts';
import { withLength } from '../../support/layouts.ts';
import { stageOf } from '../../support/stages.ts';

const plain = ({ layout, price }: Priced) => ({ breaks: layout.breaks, price });

/** A question with made-up prices: gaps that cost, help or forbid, and needles that pay for their length. */
const questions: fc.Arbitrary<Question> = fc
  .record({
    stitches: fc.integer({ min: 4, max: 14 }),
    needles: fc.integer({ min: 2, max: 4 }),
    weight: fc.integer({ min: 0, max: 5 }),
    gaps: fc.array(fc.oneof(fc.integer({ min: -20, max: 30 }), fc.constant(0), fc.constant(Infinity)), {
      minLength: 14,
      maxLength: 14
    }),
    edges: fc.array(fc.boolean(), { minLength: 14, maxLength: 14 })
  })
  .map(({ stitches, needles, weight, gaps, edges }) => ({
    stitches,
    needles,
    gaps: gaps.slice(0, stitches),
    base: 7,
    needle: (from: number, to: number) => weight * loadPrice(to - from, stitches, needles),
    leastForLoad: (load: number) => weight * loadPrice(load, stitches, needles),
    mostLoad: stitches,
    isEdge: (gap: number) => edges[gap] === true
  }));

describe('bestLayouts() against enumeration of every layout', () => {
  test.each([1, 10])('gives the same %i best, ties in the same order', (count) => {
    fc.assert(
      fc.property(questions, (question) => {
        const found = bestLayouts(question, count).map(plain);
        expect(found).toEqual(enumerate(question).slice(0, count));
      }),
      { seed: 4711, numRuns: 400 }
    );
  });

  // Few gaps are free, so that loads must lie far from an even share and the window of lengths has to grow.
  const tight = fc
    .record({
      stitches: fc.integer({ min: 30, max: 48 }),
      needles: fc.integer({ min: 2, max: 3 }),
      free: fc.uniqueArray(fc.nat(47), { minLength: 3, maxLength: 9 }),
      prices: fc.array(fc.integer({ min: -40, max: 400 }), { minLength: 48, maxLength: 48 })
    })
    .map(({ stitches, needles, free, prices }): Question => ({
      stitches,
      needles,
      gaps: prices.slice(0, stitches).map((price, gap) => (free.includes(gap) ? price : Infinity)),
      base: 3,
      needle: (from, to) => loadPrice(to - from, stitches, needles),
      leastForLoad: (load) => loadPrice(load, stitches, needles),
      mostLoad: stitches,
      isEdge: (gap) => gap % 5 === 0
    }));

  test('gives the same list where needles must be uneven', () => {
    fc.assert(
      fc.property(tight, fc.integer({ min: 1, max: 12 }), (question, count) => {
        expect(bestLayouts(question, count).map(plain)).toEqual(enumerateBest(question, count));
      }),
      { seed: 64, numRuns: 400 }
    );
  });

  // Real stages: ribs, lace with yarn-overs, a growing thumb, cables; every holder count.
  const stages = {
    rib: stageOf({ rows: [['(k2 p2)6', 9]] }),
    lace: stageOf({
      rows: [
        ['(yo k2tog k4)4', 3],
        ['k24', 3]
      ]
    }),
    cable: stageOf({
      rows: [
        ['k20', 4],
        ['k6 c6 k8', 1]
      ]
    }),
    thumb: stageOf({
      rows: [
        ['k10 m1 k10', 1],
        ['k21', 2],
        ['k10 m1 k1 m1 k10', 1],
        ['k23', 1]
      ]
    }),
    crown: stageOf({
      rows: [
        ['(k4 k2tog)4', 1],
        ['k20', 1],
        ['(k3 k2tog)4', 1],
        ['k16', 1]
      ]
    })
  };

  test.each(
    Object.entries(stages).flatMap(([name, stage]) =>
      (['dpn-5', 'dpn-4', 'two-circulars'] as const).map((setup) => [name, setup, stage] as const)
    )
  )('%s on %s', (_name, setup: SetupId, stage) => {
    const question = questionOf(judgeOf(stage, SETUPS[setup], DEFAULT_SETTINGS), SETUPS[setup].holds);
    const found = bestLayouts(question, 10).map(plain);
    expect(found).toEqual(enumerate(question).slice(0, 10));
  });
});

// Rings too large to knit every layout: plain enumeration that gives up what is dearer than the ten best so far.
describe('bestLayouts() against pruned enumeration on larger rings', () => {
  const growing = [0, 1, 2, 3, 4].flatMap((step): [string, number][] => [
    [`k30 m1 k${2 * step + 1} m1 k29`, 1],
    [`k${62 + 2 * step}`, 2]
  ]);
  const stages = {
    'k2 p2 rib of 72': stageOf({ rows: [['(k2 p2)18', 9]] }),
    'plain 70': stageOf({ rows: [['k70', 3]] }),
    'cables in 64': stageOf({
      rows: [
        ['k64', 6],
        ['k10 c12 k8 c12 k22', 1]
      ]
    }),
    'lace of 60': stageOf({
      rows: [
        ['(yo k3 cdd k3 yo k1)6', 2],
        ['k60', 2]
      ]
    }),
    'thumb in 60': stageOf({ rows: growing }),
    'crown of 56': stageOf({
      rows: [
        ['(k6 k2tog)7', 1],
        ['(k5 k2tog)7', 1],
        ['(k4 k2tog)7', 1]
      ]
    }),
    'one long growth in 48': stageOf({
      rows: [
        ['k3 m1 k45', 1],
        ...Array.from({ length: 30 }, (_, step): [string, number] => [`k3 m1 k${step + 1} m1 k${45 + step}`, 1])
      ]
    })
  };

  test.each(
    Object.entries(stages).flatMap(([name, stage]) =>
      (['dpn-5', 'dpn-4', 'two-circulars'] as const).map((setup) => [name, setup, stage] as const)
    )
  )('%s on %s', (_name, setup: SetupId, stage) => {
    const question = questionOf(judgeOf(stage, SETUPS[setup], withLength(30)), SETUPS[setup].holds);
    const found = bestLayouts(question, 10).map(plain);
    expect(found.length).toBe(10);
    expect(found).toEqual(enumerateBest(question, 10));
  });

  test.each(Object.entries(stages))('leastForLoad() is never more than a needle pays: %s', (_name, stage) => {
    const question = questionOf(judgeOf(stage, SETUPS['dpn-4'], withLength(30)), 3);
    const { stitches } = question;
    const cheapest = Array.from({ length: question.mostLoad + 1 }, (_, load) =>
      Math.min(...Array.from({ length: stitches }, (__, from) => question.needle(from, from + load)))
    );
    for (let load = 2; load <= question.mostLoad; load += 1) {
      const beyond = load * 3 > stitches ? cheapest.slice(load) : cheapest.slice(2, load + 1);
      expect(question.leastForLoad(load), `${load}`).toBeLessThanOrEqual(Math.min(...beyond));
    }
  });
});

describe('judgeWith()', () => {
  // What a layout pays by its reasons is what the solver minimised.
  test('names reasons whose prices add up to the price of the question', () => {
    const stage = stageOf({
      rows: [
        ['(k2 p2)6', 9],
        ['k24', 4]
      ]
    });
    const judge = judgeOf(stage, SETUPS['dpn-4'], DEFAULT_SETTINGS);
    for (const { layout, price } of bestLayouts(questionOf(judge, 3), 40)) {
      expect(judgeWith(judge, layout).price, layout.breaks.join()).toBe(price);
    }
  });
});
