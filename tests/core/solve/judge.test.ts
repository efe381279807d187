import { describe, expect, test } from 'vitest';
import type { Stage } from '$lib/core/model/fabric.ts';
import { followGaps } from '$lib/core/model/follow.ts';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { gapPrices } from '$lib/core/solve/judge.ts';
import { find, once, reasons } from '../../support/layouts.ts';
import { stageOf } from '../../support/stages.ts';

/** What is told about one gap, without the notes. */
function told(stage: Stage, gap: number): string[] {
  return reasons(
    stage,
    [0, gap].sort((left, right) => left - right)
  )
    .filter((reason) => reason.break === gap && reason.severity !== 'note')
    .map((reason) => reason.code)
    .sort();
}

describe('judgeLayout() on a break next to an operation', () => {
  // In pictures, | is the break: k8 | yo k2tog.
  test.each([
    ['a yarn-over in the gap belongs to the later needle', 'k8 yo k2tog k6', 8, ['yarn-over-first']],
    ['a yarn-over one stitch on is no finding', 'k9 yo k2tog k5', 8, []],
    ['a make-one in the gap belongs to the later needle', 'k8 m1 k8', 8, ['increase-first']],
    ['two stitches made in one end the earlier needle', 'k7 kfb k8', 8, ['increase-last']],
    ['two stitches made in one begin the later needle', 'k8 kfb k7', 8, ['increase-first']],
    ['a purl first after a knit', 'k8 p1 k7', 8, ['purl-first']],
    ['a purl first in a purled round is no finding', 'p16', 8, []]
  ] as const)('%s', (_title, row, gap, expected) => {
    expect(told(once(row), gap)).toEqual(expected);
  });

  test.each([
    ['k14 k2tog yo', 'yarn-over-last'],
    ['k16 m1', 'increase-last']
  ] as const)('what is made after the last stitch of the round stays on the last needle: %s', (row, code) => {
    expect(find(once(row), [0, 8], code)).toMatchObject({ break: 0, rows: [0], price: 4 });
    const { to } = followGaps(once(row).rows[0]!);
    expect(to[0]).toBe(0);
  });

  test.each([
    ['k6 c4 k6', 8, 'cuts-cable', { left: 2, right: 2 }],
    ['k7 t2 k7', 8, 'cuts-twist', { left: 1, right: 1 }],
    ['k6 cdd k7', 7, 'cuts-decrease', { left: 1, right: 2 }],
    ['k6 three k7', 8, 'cuts-increase', { left: 2, right: 1 }]
  ] as const)('a cut is a blocker and tells the stitches on either side: %s', (row, gap, code, detail) => {
    const found = find(once(`k16 / ${row}`), [0, gap], code);
    expect(found).toMatchObject({ severity: 'blocker', break: gap, rows: [1], detail });
    expect(gapPrices(once(row), SETUPS['dpn-5'], DEFAULT_SETTINGS)[gap]!.price).toBe(Infinity);
  });

  // k2tog, then its one stitch at the end of the earlier needle.
  test('a cut decrease stays on the earlier needle', () => {
    expect(followGaps(once('k7 k2tog k7').rows[0]!).to[8]).toBe(8);
  });
});

describe('judgeLayout() on patterns', () => {
  test.each([
    ['a rib on its first knit', '(k2 p2)4', 8, []],
    ['a rib before its purls', '(k2 p2)4', 10, ['purl-first']],
    ['between the two knits of a rib', '(k2 p2)4', 9, ['splits-rib']],
    ['between the two purls of a rib', '(k2 p2)4', 11, ['purl-first', 'splits-rib']],
    ['a rib of one and one', '(k1 p1)8', 9, ['purl-first']],
    ['on a repeat', '(k3 c2 k3)2', 8, []],
    ['off a repeat', '(k3 c2 k3)2', 10, ['splits-repeat']],
    ['off a repeat of nothing but knits', '(k4)4', 9, []]
  ] as const)('%s', (_title, row, gap, expected) => {
    expect(told(once(row), gap)).toEqual(expected);
  });

  // r² for a repeat of r, once for a split pair and a purl first together, in each of five rounds.
  test('pays the square of the repeat once per round', () => {
    const rib = stageOf({ rows: [['(k2 p2)4', 5]] });
    const prices = gapPrices(rib, SETUPS['two-circulars'], DEFAULT_SETTINGS).map(({ price }) => price);
    expect(prices.slice(0, 4)).toEqual([0, 5 * 16, 5 * 16, 5 * 16]);
  });

  test('tells one finding for all the rounds of a rib', () => {
    const rib = stageOf({ rows: [['(k2 p2)4', 5]] });
    const split = reasons(rib, [0, 9]).filter((reason) => reason.code === 'splits-rib');
    expect(split.map((reason) => reason.rows)).toEqual([[0, 1, 2, 3, 4]]);
  });
});

describe('judgeLayout() on shaping pairs', () => {
  const pair = 'k5 k2tog k1 ssk k6';

  test.each([7, 8])('k2tog, k1, ssk with the break in gap %i is split', (gap) => {
    expect(told(once(pair), gap)).toEqual(['splits-shaping-pair']);
  });

  test('three stitches between are too many for a pair', () => {
    expect(told(once('k4 k2tog k3 ssk k5'), 7)).toEqual([]);
  });

  test('a yarn-over between is no plain stitch', () => {
    expect(told(once('k4 k2tog yo k1 ssk k7'), 7)).toEqual([]);
  });

  test.each([
    ['a marker', { markers: { m1: 8 } }],
    ['a section edge', { sections: [{ name: 'back', from: 0, to: 8 }] }]
  ])('decreases that flank %s are no pair', (_name, more) => {
    expect(told(once(pair, more), 7)).not.toContain('splits-shaping-pair');
    expect(told(once(pair, more), 8)).not.toContain('splits-shaping-pair');
  });

  test('a section edge between flanking decreases is wanted on a break, 41 for each such round', () => {
    const toe = stageOf({
      rows: [
        [pair, 1],
        ['k14', 3]
      ],
      sections: [
        { name: 'instep', from: 0, to: 8 },
        { name: 'sole', from: 8, to: 16 }
      ]
    });
    expect(find(toe, [0, 6], 'edge-off-break')).toMatchObject({ price: 41, rows: [0], needle: 1, about: 'sole' });
    expect(find(toe, [0, 8], 'edge-off-break')).toBeUndefined();
  });
});

describe('judgeLayout() on section edges', () => {
  const sections = [
    { name: 'instep', from: 0, to: 8 },
    { name: 'sole', from: 8, to: 16 }
  ];

  test.each([
    ['k4 k2tog k2 k8', true],
    ['k3 k2tog k3 k8', false],
    ['k8 k2 ssk k4', true],
    ['k8 k3 ssk k3', false]
  ] as const)('a decrease at most two stitches from an edge flanks it: %s, %s', (row, expected) => {
    expect(find(once(row, { sections }), [0, 6], 'edge-off-break') !== undefined).toBe(expected);
  });
});

describe('judgeLayout() on the BOR, markers and plain fabric', () => {
  test('the BOR inside a needle pays 37 in every round', () => {
    const plain = stageOf({ rows: [['k16', 3]] });
    expect(find(plain, [3, 11], 'bor-inside-needle')).toMatchObject({ price: 3 * 37, needle: 1, rows: [0, 1, 2] });
  });

  test('a marker on a break is told in the rows before which it hangs there', () => {
    const shaped = once('k4 m1 k12 / k17', { markers: { A: 8 } });
    expect(find(shaped, [0, 8], 'marker-at-end')).toMatchObject({ break: 8, about: 'A', rows: [0, 1], price: 0 });
    expect(find(shaped, [0, 7], 'marker-at-end')).toBeUndefined();
  });

  test.each([
    [19, false],
    [20, true]
  ])('a break in %i plain rounds: ladder %s', (rounds, expected) => {
    const found = find(stageOf({ rows: [['k16', rounds]] }), [0, 8], 'ladder');
    expect(found !== undefined).toBe(expected);
  });

  test('a break off the section edges is a note', () => {
    const halves = once('k16', { sections: [{ name: 'front', from: 0, to: 8 }] });
    expect(find(halves, [0, 8], 'off-section')).toBeUndefined();
    expect(find(halves, [0, 9], 'off-section')).toMatchObject({ severity: 'note', break: 9 });
  });

  // 84 stitches in a repeat of 12 on 42/42 become 44/40, then 46/38, though there are always 84; 48/36 stays:
  // heartmadebydesign.blogspot.com 2012, adventures in pattern adapting.
  test('stitches that move over a break while the total stays are told', () => {
    const lace = once('(yo k1 yo k7 k2tog k2tog)7 / (yo k1 yo k7 k2tog k2tog)7');
    expect(find(lace, [0, 42], 'drift')).toMatchObject({ break: 42, rows: [0, 1], detail: { stitches: 4 }, price: 2 });
    expect(find(lace, [0, 48], 'drift')).toBeUndefined();
  });
});

describe('followGaps()', () => {
  // 13 stitches from waste yarn, three picked up after them, then the BOR: the last needle gets the three.
  test('leaves the BOR before a ring to whose end stitches are added', () => {
    const ring = stageOf({ rows: [['k13', 1]] }).start;
    const row = once('k13 m1 m1 m1').rows[0]!;
    const added = { ...row, before: ring, steps: row.steps.slice(13).map((step) => ({ ...step, from: 0 })) };
    const after = { ...row.after, stitches: [...ring.stitches, ...row.after.stitches.slice(13)] };
    expect(followGaps({ ...added, after }).to).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });
});
