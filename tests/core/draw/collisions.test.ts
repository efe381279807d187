import { describe, expect, test } from 'vitest';
import { drawMoment, SETUP_IDS, SETUPS, type Picture, type SetupId } from '$lib/core/index.ts';
import { momentOf, type MomentPlan } from '../../support/moments.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

interface Box extends Spot {
  readonly id: string;
  readonly width: number;
  readonly height: number;
}

/** What lies on the needles, from plain to crowded, for any number of stitches. */
const SITUATIONS: Readonly<Record<string, (stitches: number) => Partial<MomentPlan>>> = {
  plain: () => ({}),
  'an odd-width panel': (n) => {
    const edge = Math.floor(n / 8);
    const panel = 2 * Math.floor(n / 8) + 1;
    const sections = `edge ${edge}, panel ${panel}, edge ${edge}, sole ${n - panel - 2 * edge}`;
    return { sections, markers: `m1 ${edge}, m2 ${edge + panel}`, faces: 'kkxx' };
  },
  'a thumb gusset at a needle end': (n) => ({
    sections: `palm ${n / 2 - 1}, thumb gusset 3, back of hand ${n / 2 - 2}`,
    markers: `m1 ${n / 2 - 1}, m2 ${n / 2 + 2}, *x ${n - 1}`,
    faces: 'kp'
  }),
  'many markers': (n) => ({
    sections: `instep ${n / 2}, sole ${n / 2}`,
    markers: Array.from({ length: Math.min(12, n - 2) }, (_, index) => `m${index + 1} ${index + 1}`).join(', ')
  }),
  'long names': (n) => ({
    sections: `heel of the right foot ${n / 2 - 2}, inside of the very long instep 4, Fußrücken mit Zopfmuster ${n / 2 - 2}`,
    markers: `middle of the heel ${Math.floor(n / 4)}, side seam ${n / 2}`
  }),
  'a wrong side row with needles at rest': (n) => ({
    sections: `heel ${n / 2}, instep ${n / 2}`,
    resting: [1, 2, 3],
    side: 'WS',
    yarn: { needle: 0, stitch: 1 }
  }),
  'nothing worked': (n) => ({ sections: `heel ${n / 2}, instep ${n / 2}`, feeding: null })
};

function drawn(setup: SetupId, stitches: number, plan: Partial<MomentPlan>): Picture {
  const { holds } = SETUPS[setup];
  const loads = Array.from({ length: holds }, (_, index) => Math.floor((stitches + index) / holds));
  return drawMoment(momentOf({ setup, loads, ...plan }), { mirrored: false, theme: 'light' });
}

function textBoxes(picture: Picture): Box[] {
  return [...picture.labels, ...picture.flags];
}

function touches(one: Box, other: Box): boolean {
  const gap = (middle: 'x' | 'y', size: 'width' | 'height') =>
    Math.abs(one[middle] - other[middle]) - (one[size] + other[size]) / 2;
  return gap('x', 'width') < -0.01 && gap('y', 'height') < -0.01;
}

function covers(box: Box, { x, y }: Spot): boolean {
  return Math.abs(x - box.x) < box.width / 2 && Math.abs(y - box.y) < box.height / 2;
}

/** Points all over a stitch and the fabric below it. */
function* spotsOf({ x, y, angle, size, rows }: Picture['stitches'][number]): Generator<Spot> {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const depth = 0.9 + 0.55 * rows;
  for (const along of [-0.4, 0, 0.4]) {
    for (let out = -0.5; out <= depth; out += 0.35) {
      yield { x: x + size * (along * cos - out * sin), y: y + size * (along * sin + out * cos) };
    }
  }
}

function pairsThatTouch(boxes: readonly Box[]): string[] {
  return boxes.flatMap((one, index) =>
    boxes.slice(index + 1).flatMap((other) => (touches(one, other) ? [`${one.id} on ${other.id}`] : []))
  );
}

function textOnStitches(picture: Picture): string[] {
  return textBoxes(picture).flatMap((box) =>
    picture.stitches.flatMap((stitch) =>
      [...spotsOf(stitch)].some((spot) => covers(box, spot)) ? [`${box.id} on ${stitch.id}`] : []
    )
  );
}

function textOnThreads(picture: Picture): string[] {
  const threads = [...picture.cords, ...picture.yarns, ...picture.lines.filter((line) => line.kind === 'bracket')];
  return textBoxes(picture).flatMap((box) =>
    threads.flatMap((thread) =>
      thread.points.some((point) => covers(box, point)) ? [`${box.id} on ${thread.id}`] : []
    )
  );
}

function outside(picture: Picture): string[] {
  return textBoxes(picture)
    .filter(
      ({ x, y, width, height }) =>
        Math.min(x - width / 2, y - height / 2, picture.width - x - width / 2, picture.height - y - height / 2) < 0
    )
    .map(({ id }) => id);
}

describe.each(SETUP_IDS)('text on %s', (setup) => {
  describe.each(Object.entries(SITUATIONS))('with %s', (_, plan) => {
    test.each([8, 18, 64, 96, 200])(
      'keeps clear of itself, the stitches, cords and yarn at %i stitches',
      (stitches) => {
        const picture = drawn(setup, stitches, plan(stitches));
        expect(pairsThatTouch(textBoxes(picture))).toEqual([]);
        expect(textOnStitches(picture)).toEqual([]);
        expect(textOnThreads(picture)).toEqual([]);
        expect(outside(picture)).toEqual([]);
      }
    );
  });
});
