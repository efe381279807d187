import { describe, expect, test } from 'vitest';
import { between, drawMoment, type Picture } from '$lib/core/index.ts';
import { momentOf, type MomentPlan } from '../../support/moments.ts';

function drawn(plan: MomentPlan, mirrored = false): Picture {
  return drawMoment(momentOf(plan), { mirrored, theme: 'light' });
}

const SQUARE = drawn({ setup: 'dpn-5', loads: [17, 16, 16, 15], markers: 'm1 8' });

/** Every kind of change there is. */
const CHANGES: Readonly<Record<string, Picture>> = {
  'the next pass': drawn({ setup: 'dpn-5', loads: [17, 16, 16, 15], markers: 'm1 8', feeding: 1 }),
  'another layout': drawn({ setup: 'dpn-5', loads: [24, 16, 12, 12] }),
  'another set-up': drawn({ setup: 'magic-loop', loads: [33, 31] }),
  'one needle': drawn({ setup: 'short-circular', loads: [64] }),
  'the other hand': drawn({ setup: 'dpn-5', loads: [17, 16, 16, 15] }, true),
  'other stitches': drawn({ setup: 'dpn-5', loads: [15, 15, 15, 15], firstId: 11 }),
  'no stitches': drawn({ setup: 'dpn-5', loads: [] })
};

function places(picture: Picture) {
  return new Map(picture.stitches.map(({ id, x, y }) => [id, { x, y }]));
}

function farthest(one: Picture, other: Picture): number {
  const [before, after] = [places(one), places(other)];
  const ways = [...before].flatMap(([id, { x, y }]) => {
    const there = after.get(id);
    return there ? [Math.hypot(there.x - x, there.y - y)] : [];
  });
  return Math.max(0, ...ways);
}

describe.each(Object.entries(CHANGES))('between() on the way to %s', (_, to) => {
  test('begins with the one picture and ends with the other', () => {
    expect(between(SQUARE, to, 0)).toBe(SQUARE);
    expect(between(SQUARE, to, 1)).toBe(to);
  });

  test('leaves and arrives without a jump', () => {
    expect(farthest(SQUARE, between(SQUARE, to, 0.001))).toBeLessThan(3);
    expect(farthest(between(SQUARE, to, 0.999), to)).toBeLessThan(3);
  });

  test('moves every stitch in small steps', () => {
    const frames = Array.from({ length: 61 }, (_, step) => between(SQUARE, to, step / 60));
    const steps = frames.slice(1).map((frame, index) => farthest(frames[index]!, frame));
    expect(Math.max(...steps)).toBeLessThan(30);
  });

  test('keeps ids apart and fades what comes and goes', () => {
    const { stitches, labels, shafts, lines } = between(SQUARE, to, 0.25);
    for (const things of [stitches, labels, shafts, lines]) {
      expect(new Set(things.map(({ id }) => id)).size).toBe(things.length);
      expect(things.every(({ opacity }) => opacity > 0 && opacity <= 1)).toBe(true);
    }
    const known = new Set([...SQUARE.stitches, ...to.stitches].map(({ id }) => id));
    expect(stitches.length).toBe(known.size);
  });
});

test('between() leads stitches over the tips, never across the ring', () => {
  const [from, to] = [SQUARE, CHANGES['another layout']!];
  const { centre } = from;
  const radius = (picture: Picture) => picture.stitches.map(({ x, y }) => Math.hypot(x - centre.x, y - centre.y));
  const least = Math.min(...radius(from), ...radius(to));
  for (const t of [0.2, 0.4, 0.6, 0.8]) expect(Math.min(...radius(between(from, to, t)))).toBeGreaterThan(least - 12);
});

test('between() keeps the order of the ring while stitches slide', () => {
  const half = between(SQUARE, CHANGES['another layout']!, 0.5);
  const { centre } = half;
  const turns = half.stitches.slice(1).map((here, index) => {
    const before = half.stitches[index]!;
    return (before.x - centre.x) * (here.y - centre.y) - (before.y - centre.y) * (here.x - centre.x);
  });
  expect(turns.every((turn) => turn > -1)).toBe(true);
});
