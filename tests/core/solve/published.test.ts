import { describe, expect, test } from 'vitest';
import type { Stage } from '$lib/core/model/fabric.ts';
import type { Judged } from '$lib/core/model/plan.ts';
import { breaksByRow, loadsBetween } from '$lib/core/solve/passes.ts';
import { best, bySize, stated } from '../../support/layouts.ts';
import { stageOf } from '../../support/stages.ts';

describe('distribute() on published splits', () => {
  const plain64 = stageOf({ rows: [['k64', 10]] });
  const rib68 = stageOf({ rows: [['(k2 p2)17', 12]] });
  const rib44 = stageOf({ rows: [['(k2 p2)11', 18]] });
  const five45 = stageOf({ rows: [['(k4 p1)9', 10]] });
  const three60 = stageOf({ rows: [['(k2 p1)20', 10]] });

  // Arithmetic: 64 = 4 × 16 = 22 + 21 + 21 = 2 × 32.
  test.each([
    ['dpn-5', [16, 16, 16, 16]],
    ['dpn-4', [22, 21, 21]],
    ['two-circulars', [32, 32]],
    ['magic-loop', [32, 32]],
    ['flexible-3', [32, 32]]
  ] as const)('64 plain on %s', (setup, loads) => {
    expect(best(plain64, setup).loads).toEqual(loads);
  });

  // 68 in 2 × 2 rib as 16/16/16/20: lupinworks.com, basic sock pattern; no 17 × 4: Modern Daily Knitting, joining in the round.
  test('68 in k2 p2 on a set of five', () => {
    expect(bySize(best(rib68, 'dpn-5').loads)).toEqual([20, 16, 16, 16]);
  });

  // Whole ribs on every needle: L. Parry, dpns; 16-16-12 begins every needle with the first knit.
  test.each([
    ['dpn-4', [16, 16, 12]],
    ['dpn-5', [12, 12, 12, 8]],
    ['two-circulars', [24, 20]]
  ] as const)('44 in k2 p2 on %s', (setup, loads) => {
    const found = best(rib44, setup);
    expect(bySize(found.loads)).toEqual(loads);
    expect(found.layout.breaks.map((gap) => gap % 4)).toEqual(loads.map(() => 0));
  });

  // 45 in a repeat of five on two needles only works as 20/25: jikiknits.blogspot.com 2007.
  test('45 in a repeat of five on two circulars', () => {
    expect(bySize(best(five45, 'two-circulars').loads)).toEqual([25, 20]);
  });

  // 21-21-18: followed in print (rules-of-thumb: whole repeats).
  test('60 in a repeat of three on a set of four', () => {
    expect(bySize(best(three60, 'dpn-4').loads)).toEqual([21, 21, 18]);
  });

  // Five stitches are the fair share of 18 on four; 14 would leave needles of three (default minimum: common practice, no source).
  test('18 and 14 plain on a set of five', () => {
    expect(bySize(best(stageOf({ rows: [['k18', 5]] }), 'dpn-5').loads)).toEqual([5, 5, 4, 4]);
    expect(bySize(best(stageOf({ rows: [['k14', 5]] }), 'dpn-5').loads)).toEqual([5, 5, 4]);
  });
});

// KnittingHelp forum 64077: a 12-stitch cable on two circulars, split 16/16, is cut; the answer given there is 12/20.
describe('a 12-stitch cable over stitches 13 to 24 of 32', () => {
  const cable = stageOf({
    rows: [
      ['k32', 5],
      ['k12 c12 k8', 1]
    ]
  });

  test('distribute() puts 12 and 20 on two circulars', () => {
    expect(best(cable, 'two-circulars').loads).toEqual([12, 20]);
  });

  test('judgeLayout() refuses 16/16 and tells 4 + 8', () => {
    const [worst] = stated(cable, 'two-circulars', { loads: [16, 16] }).reasons;
    expect(worst).toMatchObject({ code: 'cuts-cable', severity: 'blocker', break: 16, detail: { left: 4, right: 8 } });
    expect(worst!.rows).toEqual([5]);
  });
});

const FLAGS = new Set([
  'splits-rib',
  'purl-first',
  'splits-repeat',
  'increase-first',
  'increase-last',
  'share-above-limit'
]);

function flags(judged: Judged): string[] {
  return judged.reasons
    .filter((reason) => FLAGS.has(reason.code))
    .map((reason) => `${reason.code} ${reason.break ?? `N${reason.needle! + 1}`}`)
    .sort();
}

// The teacher's scenario: an invented 44-stitch mitten with flags worked out by hand.
describe('judgeLayout() on the naive splits of the 44-stitch mitten', () => {
  const rib = stageOf({ rows: [['(k2 p2)11', 18]] });

  test('A, 15/15/14: break 15 splits a purl pair, N2 and N3 start with a purl', () => {
    const found = flags(stated(rib, 'dpn-4', { loads: [15, 15, 14] }));
    expect(found).toEqual(['purl-first 15', 'purl-first 30', 'splits-rib 15']);
  });

  test('B, 11/11/11/11: splits at 11 and 33, N2 and N3 start with a purl', () => {
    const found = flags(stated(rib, 'dpn-5', { loads: [11, 11, 11, 11] }));
    expect(found).toEqual(['purl-first 11', 'purl-first 22', 'splits-rib 11', 'splits-rib 33']);
  });

  test('C, 22/22: no split, the second needle starts with a purl', () => {
    const found = stated(rib, 'two-circulars', { loads: [22, 22] });
    expect(flags(found)).toEqual(['purl-first 22']);
    expect(found.reasons.some((reason) => reason.severity === 'blocker')).toBe(false);
  });

  // Set-up k22, m1, k22, then every third round k22, m1, k thumb, m1, k22, seven times.
  const thumb = stageOf({
    rows: [
      ['k22 m1 k22', 1],
      ...[1, 3, 5, 7, 9, 11, 13].flatMap((width): [string, number][] => [
        [`k${44 + width}`, 2],
        [`k22 m1 k${width} m1 k22`, 1]
      ])
    ]
  });

  test('D, gaps 0 and 22: the make-one is first on N2 in the set-up and all seven increase rounds', () => {
    const found = stated(thumb, 'magic-loop', { loads: [22, 22] });
    const first = found.reasons.filter((reason) => reason.code === 'increase-first');
    expect(first.map((reason) => [reason.break, reason.rows])).toEqual([[22, [0, 3, 6, 9, 12, 15, 18, 21]]]);
  });

  test('D: the share of N2 is told from increase round 6 on, 60.0 % exactly is not', () => {
    const found = stated(thumb, 'magic-loop', { loads: [22, 22] });
    const above = found.reasons.find((reason) => reason.code === 'share-above-limit');
    expect(above).toMatchObject({ needle: 1, detail: { stitches: 37, of: 59 } });
    expect(above!.rows[0]).toBe(18);
  });

  // Gaps after 11 and 31 of the 45 stitches after the set-up: 20/25, at the end 34/25.
  test('C, D, F with gaps after 11 and 31: no increase at a gap, no share above 60 %', () => {
    const found = stated(thumb, 'magic-loop', { loads: [19, 25], first: 11 });
    expect(flags(found)).toEqual([]);
    expect(loadsByRow(thumb, found)[0]).toEqual([20, 25]);
    expect(loadsByRow(thumb, found).at(-1)).toEqual([34, 25]);
  });

  test('D: N2 grows 23, 25 … 37 of 45, 47 … 59', () => {
    const increases = [0, 3, 6, 9, 12, 15, 18, 21];
    const loads = loadsByRow(thumb, stated(thumb, 'magic-loop', { loads: [22, 22] }));
    expect(increases.map((row) => loads[row]![1])).toEqual([23, 25, 27, 29, 31, 33, 35, 37]);
    expect(increases.map((row) => thumb.rows[row]!.after.stitches.length)).toEqual([45, 47, 49, 51, 53, 55, 57, 59]);
  });
});

function loadsByRow(stage: Stage, { layout }: Judged): number[][] {
  return breaksByRow(stage, layout)
    .slice(1)
    .map((breaks, row) => loadsBetween(breaks, stage.rows[row]!.after.stitches.length));
}

describe('judgeLayout() on the layouts of the students in the mitten class', () => {
  const rib = stageOf({ rows: [['(k2 p2)11', 18]] });
  const thumb = stageOf({
    rows: [
      ['k22 m1 k22', 1],
      ...[1, 3, 5, 7, 9, 11, 13].map((width): [string, number] => [`k22 m1 k${width} m1 k22`, 1])
    ]
  });
  const top = stageOf({
    rows: [22, 20, 18, 16, 14, 12, 10, 8].map((half): [string, number] => {
      const side = `k1 ssk k${half - 6} k2tog k1`;
      return [`${side} ${side}`, 1];
    }),
    sections: [
      { name: 'back', from: 0, to: 22 },
      { name: 'palm', from: 22, to: 44 }
    ]
  });
  const small = stageOf({ rows: [['k18', 10]] });

  test.each([
    ['A', 'rib', rib, 'dpn-4', [16, 16, 12], [16, 16, 12]],
    ['B', 'rib', rib, 'dpn-5', [12, 12, 12, 8], [12, 12, 12, 8]],
    ['C, D, E, F', 'rib', rib, 'flexible-3', [24, 20], [24, 20]],
    ['A', 'thumb set-up', thumb, 'dpn-4', [15, 14, 15], [15, 29, 15]],
    ['B', 'thumb set-up', thumb, 'dpn-5', [13, 11, 10, 10], [13, 26, 10, 10]],
    ['A', 'top', top, 'dpn-4', [22, 11, 11], [6, 3, 3]],
    ['B', 'top', top, 'dpn-5', [11, 11, 11, 11], [3, 3, 3, 3]],
    ['C, D, E, F', 'top', top, 'two-circulars', [22, 22], [6, 6]],
    ['A', 'thumb', small, 'dpn-4', [6, 6, 6], [6, 6, 6]],
    ['B', 'thumb, one needle spare', small, 'dpn-5', [6, 6, 6], [6, 6, 6]],
    ['C, D, E, F', 'thumb', small, 'magic-loop', [9, 9], [9, 9]]
  ] as const)('%s, %s: no flag at any break', (_student, _stage, stage, setup, loads, atEnd) => {
    const found = stated(stage, setup, { loads });
    expect(flags(found)).toEqual([]);
    expect(found.reasons.filter((reason) => reason.severity === 'blocker')).toEqual([]);
    expect(loadsByRow(stage, found).at(-1)).toEqual(atEnd);
  });
});
