import { describe, expect, test } from 'vitest';
import { layoutFromLoads } from '$lib/core/model/layout.ts';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS, type SetupId } from '$lib/core/model/setup.ts';
import { gapPrices, judgeLayout } from '$lib/core/solve/judge.ts';
import { find, once, reasons } from '../../support/layouts.ts';
import { flatOf, stageOf } from '../../support/stages.ts';

describe('judgeLayout() on needles', () => {
  const plain = (stitches: number) => stageOf({ rows: [[`k${stitches}`, 2]] });
  const on = (stitches: number, setup: SetupId, loads: readonly number[]) =>
    reasons(plain(stitches), layoutFromLoads(loads).breaks, setup);

  // (L - f)(L - f - 1) with f = 16: 17 and 15 of 64 on four pay 0 and 2.
  test('17/16/16/15 of 64 pays 2 a round, 22/21/21 nothing', () => {
    const judged = (setup: SetupId, loads: readonly number[]) =>
      judgeLayout(plain(64), layoutFromLoads(loads), { setup: SETUPS[setup], settings: DEFAULT_SETTINGS }).price;
    expect(judged('dpn-5', [17, 16, 16, 15])).toBe(2 * 2);
    expect(judged('dpn-4', [22, 21, 21])).toBe(0);
  });

  test.each([
    [[24, 16], undefined],
    [[25, 15], 1],
    [[28, 12], 4]
  ] as const)('%j of 40: exactly 60 %% is no finding, each stitch above pays 1 a round', (loads, beyond) => {
    const above = on(40, 'two-circulars', loads).find((reason) => reason.code === 'share-above-limit');
    expect(above?.price).toBe(beyond && beyond * 2);
  });

  test('exactly 15 % is no finding, one stitch less is', () => {
    const below = (loads: readonly number[]) =>
      on(40, 'dpn-5', loads).filter((reason) => reason.code === 'share-below-limit').length;
    expect(below([12, 11, 11, 6])).toBe(0);
    expect(below([12, 12, 11, 5])).toBe(1);
  });

  // 15 cm less 4 cm of points at 30 to 10 cm: 33 at ease; 1.5 times that is 49.5.
  test.each([
    [33, undefined],
    [34, 'crowded'],
    [49, 'crowded'],
    [50, 'needle-too-full']
  ] as const)('%i stitches on a needle of 15 cm: %s', (load, code) => {
    const codes = on(load + 30, 'dpn-5', [load, 10, 10, 10])
      .filter((reason) => reason.needle === 0)
      .map((reason) => reason.code);
    expect(codes.filter((found) => found === 'crowded' || found === 'needle-too-full')).toEqual(code ? [code] : []);
  });

  test('a needle that is too full before the first row is a blocker though the row empties it', () => {
    const gathered = once('(k2tog)26 k30');
    const found = reasons(gathered, [0, 52, 62, 72], 'dpn-5').find((reason) => reason.code === 'needle-too-full');
    expect(found).toMatchObject({ needle: 0, detail: { stitches: 52, limit: 49 } });
  });

  test('under the minimum pays for each stitch, under two is a blocker', () => {
    const codes = (loads: readonly number[]) => on(20, 'dpn-4', loads).map((reason) => [reason.code, reason.price]);
    expect(codes([9, 8, 3])).toContainEqual(['under-minimum', 2 * 4]);
    expect(codes([10, 9, 1])).toContainEqual(['too-few-to-hold', 0]);
  });

  test('more needles than the set holds is a blocker', () => {
    const [first] = on(40, 'dpn-4', [10, 10, 10, 10]);
    expect(first).toMatchObject({ code: 'too-many-needles', severity: 'blocker', detail: { needles: 4, holds: 3 } });
  });

  test('binding everything off leaves no needle with too few', () => {
    const edge = { ...plain(16).rows[0]!, after: { stitches: [], markers: [], sections: [] } };
    const codes = reasons({ ...plain(16), rows: [edge] }, [0, 8]).map((reason) => reason.code);
    expect(codes).not.toContain('too-few-to-hold');
    expect(codes).not.toContain('under-minimum');
  });

  test('three stitches at the end of a crown are drawn together: no needle is blocked, four are told', () => {
    const codes = (rows: string, breaks: readonly number[]) => reasons(once(rows), breaks).map((reason) => reason.code);
    expect(codes('k2tog k2tog k2tog', [0, 2])).not.toContain('too-few-to-hold');
    expect(codes('k2tog k2tog k2tog k2tog', [0, 2])).toContain('too-few-to-hold');
  });

  test('with one holder nothing pays', () => {
    const gaps = gapPrices(stageOf({ rows: [['(k2 p2)4', 1]] }), SETUPS['short-circular'], DEFAULT_SETTINGS);
    expect(gaps.every(({ price, reasons: found }) => price === 0 && found.length === 0)).toBe(true);
  });
});

describe('judgeLayout() on flat stages', () => {
  const heel = flatOf({
    around: 64,
    run: [32, 64],
    rows: [
      ['RS k32', 3],
      ['WS p32', 3]
    ]
  });

  test('a break inside the run of a heel is a blocker in every row', () => {
    const found = find(heel, [0, 48], 'section-broken');
    expect(found).toMatchObject({ severity: 'blocker', break: 48, rows: [0, 1, 2, 3, 4, 5] });
  });

  // 44 of 64 are 68.75 %.
  test('shares are not compared while the rest waits', () => {
    const flap = flatOf({ around: 64, run: [20, 64], rows: [['RS k44', 6]] });
    const codes = reasons(flap, [0, 10, 20], 'dpn-4').map((reason) => reason.code);
    expect(codes).not.toContain('share-above-limit');
    expect(codes).not.toContain('section-broken');
  });

  test('an end of the run inside a needle pays 41 in every row', () => {
    expect(find(heel, [0, 30], 'edge-off-break')).toMatchObject({ price: 6 * 41, detail: { gap: 32 } });
  });

  test('a run that no single needle takes, or all of the ring, may be broken, though not inside a cable', () => {
    const slit = flatOf({
      around: 44,
      run: [0, 44],
      rows: [
        ['RS k20 c4 k20', 1],
        ['WS p44', 1]
      ]
    });
    expect(find(slit, [0, 20], 'section-broken')).toBeUndefined();
    expect(find(slit, [0, 22], 'cuts-cable')).toMatchObject({ detail: { left: 2, right: 2 } });
    const wide = flatOf({ around: 64, run: [0, 56], rows: [['RS k56', 1]] });
    const codes = (setup: SetupId) => reasons(wide, [0, 28, 56], setup).map((reason) => reason.code);
    expect(codes('dpn-5')).not.toContain('section-broken');
    expect(codes('two-circulars')).toContain('section-broken');
  });
});
