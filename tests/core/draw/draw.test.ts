import { describe, expect, test } from 'vitest';
import { drawMoment, SETUP_IDS, type DrawOptions, type Picture, type SetupId } from '$lib/core/index.ts';
import { momentOf, type MomentPlan } from '../../support/moments.ts';

const LIGHT: DrawOptions = { mirrored: false, theme: 'light' };

const LOADS: Readonly<Record<SetupId, readonly number[]>> = {
  'dpn-5': [17, 16, 16, 15],
  'dpn-4': [22, 21, 21],
  'two-circulars': [33, 31],
  'magic-loop': [33, 31],
  'flexible-3': [33, 31],
  'short-circular': [64]
};

function planOn(setup: SetupId, more: Partial<MomentPlan> = {}): MomentPlan {
  return { setup, loads: LOADS[setup], sections: 'edge 8, panel 17, edge 8, sole 31', markers: 'm1 8, m2 25', ...more };
}

function drawn(plan: MomentPlan, options: DrawOptions = LIGHT): Picture {
  return drawMoment(momentOf(plan), options);
}

function thingsIn(picture: Picture) {
  const { shafts, cords, stitches, markers, yarns, lines, labels, flags } = picture;
  return [...shafts, ...cords, ...stitches, ...markers, ...yarns, ...lines, ...labels, ...flags];
}

function stitch(picture: Picture, id: number) {
  return picture.stitches.find((candidate) => candidate.id === `stitch:${id}`)!;
}

describe.each(SETUP_IDS)('drawMoment() on %s', (setup) => {
  test('draws every stitch once, in the order of the ring', () => {
    const ids = Array.from({ length: 64 }, (_, index) => `stitch:${index + 1}`);
    expect(drawn(planOn(setup)).stitches.map(({ id }) => id)).toEqual(ids);
  });

  test('gives everything an id of its own', () => {
    const ids = thingsIn(drawn(planOn(setup, { markers: 'm1 8, m1 8, m1 25' }))).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('draws the same picture from the same moment', () => {
    expect(drawn(planOn(setup))).toEqual(drawn(planOn(setup)));
  });

  test('names what feeds and what works, and says how many stitches lie on each needle', () => {
    const { flags, labels } = drawn(planOn(setup));
    expect(flags.map(({ text, solid }) => `${text.split(' ')[0]} ${solid ? 'solid' : 'outlined'}`).sort()).toEqual([
      'feeding solid',
      'working outlined'
    ]);
    const words = labels.map(({ lines }) => lines.flatMap((runs) => runs.map(({ text }) => text)).join(' '));
    for (const [index, load] of LOADS[setup].entries()) {
      expect(words.some((text) => text.startsWith(`N${index + 1} · `) && text.includes(`${load} sts`))).toBe(true);
    }
  });

  test('shows the beginning of round one stitch in', () => {
    const picture = drawn(planOn(setup));
    const bor = picture.markers.find((marker) => marker.bor)!;
    const [first, second] = [stitch(picture, 1), stitch(picture, 2)];
    const way = (from: { x: number; y: number }) => Math.hypot(from.x - bor.x, from.y - bor.y);
    const apart = Math.hypot(first.x - second.x, first.y - second.y);
    expect(way(first) + way(second)).toBeLessThan(apart * 1.1);
  });

  test('works the round clockwise, from the right end of the needle nearest the reader', () => {
    const picture = drawn(planOn(setup));
    const { centre } = picture;
    const turns = picture.stitches.slice(1).map((here, index) => {
      const before = picture.stitches[index]!;
      return (before.x - centre.x) * (here.y - centre.y) - (before.y - centre.y) * (here.x - centre.x);
    });
    expect(turns.every((turn) => turn > 0)).toBe(true);
    expect(stitch(picture, 1).y).toBeGreaterThan(centre.y);
    expect(stitch(picture, 1).x).toBeGreaterThan(stitch(picture, 2).x);
  });

  test('mirrors every place and no text', () => {
    const [plain, mirrored] = [drawn(planOn(setup)), drawn(planOn(setup), { ...LIGHT, mirrored: true })];
    expect(mirrored.width).toBe(plain.width);
    for (const [index, label] of plain.labels.entries()) {
      expect(mirrored.labels[index]!.lines).toEqual(label.lines);
      expect(mirrored.labels[index]!.x).toBeCloseTo(plain.width - label.x, 1);
    }
    expect(mirrored.stitches.every(({ flip }) => flip === -1)).toBe(true);
  });

  test('draws what hardly is there', () => {
    const few: MomentPlan[] = [
      { setup, loads: [] },
      { setup, loads: [1] },
      { setup, loads: [1], feeding: null },
      { setup, loads: LOADS[setup].map(() => 0), feeding: null }
    ];
    for (const picture of few.map((plan) => drawn(plan))) {
      const numbers = thingsIn(picture).flatMap((thing) =>
        Object.values(thing).filter((value) => typeof value === 'number')
      );
      expect([picture.width, picture.height, ...numbers].every(Number.isFinite)).toBe(true);
    }
  });
});

test('drawMoment() grows with the stitches and never stands upright', () => {
  for (const setup of SETUP_IDS) {
    const widths = [8, 64, 200].map((stitches) => {
      const loads = LOADS[setup].map((_, index, all) => Math.floor((stitches + index) / all.length));
      const { width, height } = drawn({ setup, loads });
      expect(width / height).toBeGreaterThan(1);
      return width;
    });
    expect(widths).toEqual(widths.toSorted((one, other) => one - other));
  }
});

test('drawMoment() keeps a needle at rest away from the ring, and its stitches thin', () => {
  const plan: MomentPlan = { setup: 'two-circulars', loads: [32, 32] };
  const [holding, resting] = [drawn(plan), drawn({ ...plan, resting: [1] })];
  const out = (picture: Picture) => picture.centre.y - stitch(picture, 40).y;
  expect(out(resting)).toBeGreaterThan(out(holding));
  expect(stitch(resting, 40).quiet).toBe(true);
});

test('drawMoment() puts work at the other end on a wrong-side row', () => {
  const plan: MomentPlan = { setup: 'dpn-5', loads: [32, 16, 16], resting: [1, 2] };
  const [right, wrong] = [
    drawn({ ...plan, yarn: { needle: 0, stitch: 0 } }),
    drawn({ ...plan, side: 'WS', yarn: { needle: 0, stitch: 31 } })
  ];
  const works = (picture: Picture) => picture.shafts.find(({ state }) => state === 'working')!.x - picture.centre.x;
  expect(works(right)).toBeGreaterThan(0);
  expect(works(wrong)).toBeLessThan(0);
});
