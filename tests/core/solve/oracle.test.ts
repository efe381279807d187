import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS, type SetupId } from '$lib/core/model/setup.ts';
import { bestLayouts, type Question } from '$lib/core/solve/best-layouts.ts';
import { questionOf } from '$lib/core/solve/distribute.ts';
import { judgeOf, judgeWith } from '$lib/core/solve/judge.ts';
import { loadPrice } from '$lib/core/solve/needle-findings.ts';
import { enumerate } from '../../support/enumerate.ts';
import { stageOf } from '../../support/stages.ts';

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
        const found = bestLayouts(question, count).map(({ layout, price }) => ({ breaks: layout.breaks, price }));
        expect(found).toEqual(enumerate(question).slice(0, count));
      }),
      { seed: 4711, numRuns: 400 }
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
    const found = bestLayouts(question, 10).map(({ layout, price }) => ({ breaks: layout.breaks, price }));
    expect(found).toEqual(enumerate(question).slice(0, 10));
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
