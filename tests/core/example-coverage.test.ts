import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knitText, planJson, planWorkpiece, SETUP_IDS, type SetupId, type Workpiece } from '$lib/core/index.ts';
import { countsOf, expectedOf, readCounts } from '../support/counts.ts';

/** Where each construction that must work is used: the example, and words of one of its lines. */
const USED: Readonly<Record<string, readonly [example: string, phrase: string]>> = {
  g001: ['harbour-steps-sock', 'CO 56 (64, 72) sts'],
  g002: ['pillow-hill-bed-sock', 'CO 44 (50, 53) ('],
  g004: ['ember-bridge-mitten', '[K6[7, 8], m1] six times'],
  g005: ['lamplighter-half-fingers', 'Knit 10 (12, -), knit 2 together. 11 (13, -) stitches'],
  g006: ['ember-bridge-mitten', '[K0[1, 2], k2tog] 6 times'],
  g007: ['ember-bridge-mitten', 'Sizes Woman and Man only: Rnd 12'],
  g010: ['tide-ladder-sock', 'Rep rnds 1 and 2 nine (10, 11) more times'],
  g013: ['harbour-steps-sock', 'p2, k6, p1, k6, p2'],
  g014: ['pillow-hill-bed-sock', 'Sl-1, k to end'],
  g015: ['pillow-hill-bed-sock', '*P, k2, p; rep from * to end'],
  g016: ['ferry-lane-hat', 'Rnd 21: [K2tog] around'],
  g017: ['quarry-gate-sock', 'K. to end of needle 3; on needle 4: K. 1'],
  g019: ['quarry-gate-sock', 'sl. 1, K. 1, p.s.s.o.'],
  g020: ['lamplighter-half-fingers', 'knit the next three stitches together'],
  g021: ['lamplighter-half-fingers', '(knit 1, purl 1, knit 1) into next stitch'],
  g022: ['pillow-hill-bed-sock', '(K2, yo, k2tog) x 9 (10, 11) (12, 13)'],
  g023: ['ember-bridge-mitten', '[p1, k1] twice'],
  g028: ['winter-crossing-mitten', '*K2, p2; repeat from * to end of round'],
  g029: ['ferry-lane-hat', '[K4, p2] around'],
  g030: ['tide-ladder-sock', '*k2, p2; rep from * to last st, k1'],
  g031: ['pillow-hill-bed-sock', '*K2, p1; rep from *, end k2'],
  g032: ['ember-bridge-mitten', '[K to 2 sts before m, k2tog, sm] 6 times'],
  g033: ['ember-bridge-mitten', '*K4[5, 6], k2tog; rep from * 5 more times'],
  g034: ['ember-bridge-mitten', '*K3[4, 5], k2tog; rep from * 6 times in total'],
  g035: ['ember-bridge-mitten', '*K2[3, 4], k2tog; rep from * 5 times. 18[24, 30] sts'],
  g036: ['ember-bridge-mitten', '*K1[2, 3], k2tog* 6 times'],
  g038: ['tide-ladder-sock', '[(Yo, k2tog) 3 times, k2] 7 (8, 9) times'],
  g039: ['ember-bridge-mitten', '*K2, [p1, k1] twice; rep from * to end'],
  g040: ['lamplighter-half-fingers', '*Knit 2, purl 2; repeat from * to marker'],
  g044: ['harbour-steps-sock', 'sm, k to end'],
  g045: ['winter-crossing-mitten', 'k to last 3 sts, k2tog, k1'],
  g046: ['harbour-steps-sock', 'k to 3 sts before m, k2tog'],
  g047: ['lamplighter-half-fingers', 'Knit to marker, slip marker, make 1 right'],
  g048: ['quarry-gate-sock', 'K. to end of needle 3'],
  g049: ['quarry-gate-sock', 'K. to last 3 sts. on needle 1'],
  g051: ['tide-ladder-sock', 'Patt to last 3 sts, p2, k1'],
  g054: ['harbour-steps-sock', 'Rnd 5: K to m'],
  g055: ['tide-ladder-sock', 'Rnds 1–3: K1, p2'],
  g056: ['harbour-steps-sock', 'Rnds 2, 4, 6 and 8'],
  g057: ['ferry-lane-hat', 'All even rnds: K.'],
  g058: ['lamplighter-half-fingers', 'Repeat increase round every 3rd round'],
  g059: ['harbour-steps-sock', 'Row 2 (WS): Sl 1, p to end'],
  g060: ['pillow-hill-bed-sock', 'Dec rnd: K'],
  g061: ['winter-crossing-mitten', 'Next round: K to marker'],
  g064: ['harbour-steps-sock', 'Rep rnds 1-8 four (5, 6) more times'],
  g065: ['ferry-lane-hat', 'Work rnds 1-4 a total of 5 (6, 7) times'],
  g066: ['pillow-hill-bed-sock', 'two times. 38 (44, 47) (50, 56) sts.'],
  g067: ['tide-ladder-sock', 'Rep rnds 2 and 3 until there are 56 (64, 72) sts'],
  g068: ['pillow-hill-bed-sock', 'Rows 3-6: as rows 1 and 2'],
  g074: ['ferry-lane-hat', '[K9, k2tog] around. 70 (80, 90) sts.'],
  g075: ['tide-ladder-sock', '(4 sts inc’d)'],
  g076: ['tide-ladder-sock', '28 (32, 36) sts on each needle'],
  g077: ['tide-ladder-sock', '28 (32, 36) instep sts, 30 (34, 38) sole sts'],
  g078: ['lamplighter-half-fingers', 'for a total of 32 (36, 40) stitches'],
  g080: ['quarry-gate-sock', 'Divide the sts. evenly over 4 needles'],
  g081: ['quarry-gate-sock', 'N1: 22 [25, 28] sts., N2: 14 [16, 18] sts., N3'],
  g082: ['quarry-gate-sock', 'N1: K. N2: K. N3: K. N4: K.'],
  g083: ['quarry-gate-sock', 'Needles 1 and 3: K. to last 3 sts.'],
  g084: ['winter-crossing-mitten', 'Back: k1, ssk, k to last 3 sts, k2tog, k1. Palm: k1'],
  g085: ['quarry-gate-sock', 'The round begins at the centre of the heel'],
  g086: ['quarry-gate-sock', 'K. 14 [16, 18] sts. from 1st needle onto 4th needle'],
  g087: ['quarry-gate-sock', 'with the same needle K. the first 8 [9, 10] heel sts.'],
  g089: ['ferry-lane-hat', 'Change to dpns when sts no longer fit comfortably'],
  g091: ['tide-ladder-sock', 'First needle: k1, m1R, k to last st, m1L, k1. Second needle'],
  g093: ['quarry-gate-sock', 'the sts. of the 2nd and 3rd needles are held for the instep'],
  g094: ['harbour-steps-sock', 'K6 (8, 10), pm, p2'],
  g095: ['winter-crossing-mitten', 'K to marker, slip marker, m1R'],
  g096: ['ember-bridge-mitten', 'K, removing markers'],
  g097: ['ember-bridge-mitten', '[K7[8, 9], pm] 6 times'],
  g101: ['harbour-steps-sock', 'Join to work in the rnd, being careful not to twist; pm for BOR'],
  g102: ['ember-bridge-mitten', 'Rm, k2, pm for new BOR'],
  g103: ['harbour-steps-sock', 'ssk, k1, turn'],
  g104: ['harbour-steps-sock', 'Sl 1, p to end'],
  g105: ['quarry-gate-sock', '* Sl. 1, K. 1; rep. from * to end'],
  g106: ['quarry-gate-sock', 'Sl. 1, P. to 1 st. before gap, P. 2 tog., P. 1, turn'],
  g107: ['tide-ladder-sock', 'K37 (42, 47), w&t'],
  g109: ['harbour-steps-sock', 'pick up and k 14 (15, 16) sts along edge of heel flap'],
  g112: ['pillow-hill-bed-sock', 'K, inc 3 (1, 2)'],
  g113: ['ember-bridge-mitten', '[K6[7, 8], m1] six times. 42[48, 54] sts.'],
  g114: ['pillow-hill-bed-sock', 'K, dec 1 st at each end'],
  g115: ['pillow-hill-bed-sock', 'K, dec 1 st each side of both markers'],
  g116: ['ferry-lane-hat', '[K6, k2tog] around'],
  g117: ['ember-bridge-mitten', 'Rnd 10: [K0[1, 2], k2tog] 6 times'],
  g118: ['quarry-gate-sock', 'until 14 [16, 18] sts. remain on needles 1 and 4'],
  g122: ['quarry-gate-sock', 'Work straight for 50 [56, 60] rounds'],
  g123: ['tide-ladder-sock', 'until piece measures 5½ (6, 6½)” from CO'],
  g124: ['pillow-hill-bed-sock', 'ending with a WS row'],
  g128: ['lamplighter-half-fingers', '9 (11, 11) thumb stitches on waste yarn'],
  g129: ['lamplighter-half-fingers', 'cast on 1 stitch over gap, knit to end'],
  g130: ['pillow-hill-bed-sock', 'BO 5 sts, k to end'],
  g131: ['winter-crossing-mitten', 'Return 13 (15, 17) held sts to needles, pick up and k 3 sts'],
  g133: ['tide-ladder-sock', 'Work even in rib as est until'],
  g138: ['tide-ladder-sock', 'leg measures 3½” (9 cm)'],
  g139: ['tide-ladder-sock', 'Rnds 1–12: *K1, p1'],
  g142: ['pillow-hill-bed-sock', 'Gauge: 22 sts and 30 rnds = 4 in (10 cm) in St st']
};

const file = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');

const EXAMPLES = (JSON.parse(file('../../static/examples/index.json')) as { readonly file: string }[]).map((entry) =>
  entry.file.replace(/\.txt$/u, '')
);
const { must } = JSON.parse(file('../examples/must.json')) as { readonly must: readonly string[] };
const texts = new Map(EXAMPLES.map((name) => [name, file(`../../static/examples/${name}.txt`)]));

describe('the examples', () => {
  test('use every construction that must work, and the table names no other', () => {
    expect(Object.keys(USED).sort()).toEqual([...must].sort());
  });

  test('leave no construction without samples of its own', () => {
    const folders = readdirSync(new URL('../constructions/', import.meta.url)).map((name) => name.slice(0, 4));
    expect(must.filter((id) => !folders.includes(id))).toEqual([]);
  });

  test.each(Object.entries(USED))('show %s', (_, [example, phrase]) => {
    const lines = (texts.get(example) ?? '').split('\n');
    expect(lines.filter((line) => line.includes(phrase))).not.toEqual([]);
  });

  test('are each used in the table', () => {
    const used = new Set(Object.values(USED).map(([example]) => example));
    expect(EXAMPLES.filter((name) => !used.has(name))).toEqual([]);
  });
});

describe.each(EXAMPLES)('knitText() on static/examples/%s', (name) => {
  const workpiece = knitText(texts.get(name)!);
  const expected = readCounts(`examples/${name}.counts.json`);
  const sizes = expected.sizes.map((size, index) => [size, index] as const);

  test('knows the title and the sizes', () => {
    const title = texts.get(name)!.split('\n')[0];
    expect(workpiece.pattern).toMatchObject({ title, sizes: expected.sizes });
  });

  // A note that a printed count has decided between two readings is no complaint.
  test('finds nothing to complain about in any size', () => {
    const found = workpiece.diagnostics.filter(({ code }) => code !== 'repeats-decided');
    expect(found.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });

  test.each(sizes)('gives the counts of size %s', (_, size) => {
    expect(countsOf(workpiece.fabrics[size]!, expected)).toEqual(expectedOf(expected, size));
  });

  test.each(SETUP_IDS)('lies on %s without a blocker in every size', (setup) => {
    expect(sizes.flatMap(([, size]) => hindrances(workpiece, setup, size))).toEqual([]);
  });
});

/** What hinders a size on a set-up: blockers, and stages with stitches that find no place on the needles. */
function hindrances(workpiece: Workpiece, setup: SetupId, size: number): string[] {
  const plan = planWorkpiece(workpiece, { setup, size });
  const homeless = plan.stages
    .filter(({ stage, chosen }) => !chosen && stage.start.stitches.length > 0)
    .map(({ stage }) => `${stage.name}: no layout`);
  const blockers = planJson(workpiece, plan)
    .stages.flatMap((stage) => stage.checks)
    .filter(({ severity }) => severity === 'blocker')
    .map(({ stage, message }) => `${stage}: ${message}`);
  return [...homeless, ...blockers].map((words) => `size ${size}, ${words}`);
}
