import { describe, expect, test } from 'vitest';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { distribute } from '$lib/core/solve/distribute.ts';
import { best, bySize, solved } from '../../support/layouts.ts';
import { flatOf, stageOf } from '../../support/stages.ts';

describe('distribute() on the list that it offers', () => {
  const lists = {
    'plain 64 on a set of five': ['dpn-5', stageOf({ rows: [['k64', 10]] })],
    'rib of 44 on a set of four': ['dpn-4', stageOf({ rows: [['(k2 p2)11', 18]] })],
    'halves of 60 on two circulars': [
      'two-circulars',
      stageOf({
        rows: [['k60', 5]],
        sections: [
          { name: 'front', from: 0, to: 31 },
          { name: 'back', from: 31, to: 60 }
        ]
      })
    ]
  } as const;

  test.each(Object.entries(lists))('%s: ten that differ, none cheaper than the one before', (_name, [setup, stage]) => {
    const { best: list } = solved(stage, setup);
    const edges = stage.start.sections.flatMap((run) => [run.from, run.to % stage.start.stitches.length]);
    const ideas = list.map(({ loads, layout }) => [
      bySize(loads).join('/'),
      layout.breaks.filter((gap) => gap === 0 || edges.includes(gap)).join()
    ]);
    expect(list).toHaveLength(10);
    expect(new Set(ideas.map((idea) => idea.join(' at '))).size).toBe(10);
    const prices = list.map(({ price }) => price);
    expect([...prices].sort((left, right) => left - right)).toEqual(prices);
  });

  test('a rotation is offered once, a layout one stitch aside not at all', () => {
    const list = solved(lists['plain 64 on a set of five'][1], 'dpn-5').best.map(({ layout }) => layout.breaks);
    const fromBor = list.filter((breaks) => breaks[0] === 0);
    expect(list[0]).toEqual([0, 16, 32, 48]);
    for (const breaks of fromBor.slice(1)) {
      expect(Math.max(...breaks.map((gap, index) => Math.abs(gap - 16 * index)))).toBeGreaterThan(1);
    }
  });

  test('one stitch aside is another idea when it brings a break on to an edge', () => {
    const list = solved(lists['halves of 60 on two circulars'][1], 'two-circulars').best;
    expect(list.slice(0, 2).map(({ layout }) => layout.breaks)).toEqual([
      [0, 30],
      [0, 31]
    ]);
  });

  // Edges at 20 and 40: 30/30 from gap 10 ends on the one, from gap 20 on the other.
  test('equal loads that end on other edges are other ideas', () => {
    const thirds = stageOf({
      rows: [['k60', 5]],
      sections: ['back', 'side', 'front'].map((name, third) => ({ name, from: 20 * third, to: 20 * third + 20 }))
    });
    const list = solved(thirds, 'two-circulars').best.map(({ layout }) => layout.breaks);
    expect(list).toContainEqual([10, 40]);
    expect(list).toContainEqual([20, 50]);
  });

  test('of equal prices the one with more needles is taken', () => {
    const settings = { ...DEFAULT_SETTINGS, prices: { ...DEFAULT_SETTINGS.prices, underMinimum: 0 } };
    const found = distribute(stageOf({ rows: [['k14', 5]] }), SETUPS['dpn-5'], settings);
    expect(found.kind === 'solved' && found.best[0]!.loads).toEqual([4, 4, 3, 3]);
  });

  test('one holder has one layout, at no price', () => {
    const found = solved(stageOf({ rows: [['(k2 p2)11', 18]] }), 'short-circular').best;
    expect(found.map(({ loads, price }) => [loads, price])).toEqual([[[44], 0]]);
  });
});

describe('distribute() on flat stages and crowns', () => {
  // The usual heel: its stitches on one needle, the instep over the others.
  test('a heel of 32 of 64 lies on one needle', () => {
    const heel = flatOf({ around: 64, run: [32, 64], rows: [['RS k32', 12]] });
    expect(best(heel, 'dpn-4').loads).toEqual([16, 16, 32]);
    expect(bySize(best(heel, 'dpn-5').loads)).toEqual([32, 11, 11, 10]);
    expect(best(heel, 'two-circulars').loads).toEqual([32, 32]);
  });

  test('an opening over the whole ring lies on all needles, evenly', () => {
    const opening = flatOf({ around: 44, run: [0, 44], rows: [['RS k44', 6]] });
    expect(best(opening, 'dpn-5').loads).toEqual([11, 11, 11, 11]);
  });

  // Seven sectors sit better on three holders (3/2/2) than on four (2/2/2/1): whole sectors, no needle with one stitch.
  test('a crown of seven sectors lies on three needles of a set of five', () => {
    const crown = stageOf({
      rows: [10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0].map((plain): [string, number] => [
        plain > 0 ? `(k${plain} k2tog)7` : '(k2tog)7',
        1
      ])
    });
    const found = best(crown, 'dpn-5');
    expect(bySize(found.loads)).toEqual([36, 24, 24]);
    expect(found.reasons.some((reason) => reason.severity === 'blocker')).toBe(false);
  });
});

describe('distribute() where it cannot', () => {
  test('says that nothing is on the needles', () => {
    const empty = { ...stageOf({ rows: [['k8', 1]] }), rows: [] };
    const none = { ...empty, start: { stitches: [], markers: [], sections: [] } };
    expect(distribute(none, SETUPS['dpn-5'], DEFAULT_SETTINGS)).toMatchObject({
      kind: 'impossible',
      because: { code: 'no-stitches' }
    });
  });

  test('says that every gap is cut', () => {
    const all = stageOf({
      rows: [
        ['c16 c16', 1],
        ['k8 c16 k8', 1]
      ]
    });
    expect(distribute(all, SETUPS['two-circulars'], DEFAULT_SETTINGS)).toMatchObject({
      kind: 'impossible',
      because: { code: 'no-free-gap' }
    });
  });

  test('says that three stitches are too few for needles in the round', () => {
    expect(distribute(stageOf({ rows: [['k3', 1]] }), SETUPS['dpn-5'], DEFAULT_SETTINGS)).toMatchObject({
      kind: 'impossible',
      because: { code: 'too-few-stitches', detail: { stitches: 3 } }
    });
  });

  test('says that too many stitches are asked of the set', () => {
    expect(distribute(stageOf({ rows: [['k400', 1]] }), SETUPS['dpn-5'], DEFAULT_SETTINGS)).toMatchObject({
      kind: 'impossible',
      because: { code: 'too-many-for-set', detail: { stitches: 400, holds: 4 } }
    });
  });
});
