import { describe, expect, test } from 'vitest';
import {
  DEFAULT_SETTINGS,
  drawMoment,
  knitText,
  momentAt,
  planWorkpiece,
  SETUP_IDS,
  type Picture,
  type SetupId
} from '$lib/core/index.ts';

/** Needles long enough for anything, so that every number of stitches can be drawn on every set-up. */
const LONG = Object.fromEntries(SETUP_IDS.map((id) => [id, 300])) as Record<SetupId, number>;
const SETTINGS = { ...DEFAULT_SETTINGS, lengthCm: LONG };

/** Section lines and markers for a ring, from plain to crowded. */
const SITUATIONS: Readonly<Record<string, (stitches: number) => readonly string[]>> = {
  plain: () => ['Rnd 1: K.'],
  sections: (n) => [`Sections: heel of the right foot ${n / 2 + 1}, instep ${n / 2 - 1}.`, 'Rnd 1: K.'],
  markers: (n) => [
    `Sections: instep ${n / 2 + 1}, sole ${n / 2 - 1}.`,
    `Rnd 1: K2, pm, k1, pm, k${n / 2 - 2}, pm, k to end.`,
    'Rnd 2: K.'
  ]
};

interface Box {
  readonly name: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxesOf(picture: Picture): Box[] {
  return [...picture.labels, ...picture.flags].map(({ id, x, y, width, height }) => ({
    name: id,
    left: x - width / 2,
    right: x + width / 2,
    top: y - height / 2,
    bottom: y + height / 2
  }));
}

function overlaps(boxes: readonly Box[]): string[] {
  const found: string[] = [];
  boxes.forEach((a, index) => {
    for (const b of boxes.slice(index + 1)) {
      const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (wide > 0.5 && high > 0.5) found.push(`${a.name} on ${b.name}`);
    }
  });
  return found;
}

function draw(setup: SetupId, stitches: number, lines: readonly string[]): Picture {
  const sock = knitText(['Trial', '', 'BODY', `CO ${stitches} sts. Join; pm for BOR.`, ...lines].join('\n'));
  expect(sock.diagnostics).toEqual([]);
  const plan = planWorkpiece(sock, { setup, settings: SETTINGS });
  const rows = plan.stages[0]!.stage.rows.length;
  return drawMoment(momentAt(plan, { stage: 0, row: rows - 1, pass: 0 })!, { mirrored: false, theme: 'light' });
}

describe.each(SETUP_IDS)('labels and flags on %s', (setup) => {
  test.each([8, 18, 64, 96, 200])('with %i stitches lie apart and inside the picture', (stitches) => {
    for (const [situation, lines] of Object.entries(SITUATIONS)) {
      const picture = draw(setup, stitches, lines(stitches));
      const boxes = boxesOf(picture);
      expect(overlaps(boxes), situation).toEqual([]);
      for (const box of boxes) {
        expect(
          Math.min(box.left, box.top, picture.width - box.right, picture.height - box.bottom),
          box.name
        ).toBeGreaterThan(-1);
      }
    }
  });
});
