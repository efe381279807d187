import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  drawMoment,
  knitText,
  momentAt,
  planWorkpiece,
  SETUP_IDS,
  type DrawOptions,
  type SetupId
} from '$lib/core/index.ts';
import { svgText } from '$lib/drawing/render.ts';
import { momentOf, type MomentPlan } from '../support/moments.ts';

const LIGHT: DrawOptions = { mirrored: false, theme: 'light' };

const text = readFileSync(new URL('../../static/examples/harbour-steps-sock.txt', import.meta.url), 'utf8');
const sock = knitText(text);

/** The leg of the sock with its odd-width cable panel, 64 stitches, at the round of the first cable. */
function legOn(setup: SetupId) {
  const plan = planWorkpiece(sock, { setup, size: 1 });
  const stage = plan.stages.findIndex((planned) => planned.stage.name === 'LEG');
  const row = plan.stages[stage]!.stage.rows.findIndex((candidate) => candidate.label === 'Rnd 3');
  return momentAt(plan, { stage, row, pass: 0 })!;
}

const HEEL: MomentPlan = {
  setup: 'dpn-5',
  loads: [32, 16, 16],
  sections: 'heel 32, instep 32',
  faces: 's' + 'k'.repeat(29) + 'wd' + 'kkpp'.repeat(8),
  resting: [1, 2],
  side: 'WS',
  yarn: { needle: 0, stitch: 31 },
  stage: 'Heel',
  row: 'Row 2'
};

const MITTEN: MomentPlan = {
  setup: 'flexible-3',
  loads: [24, 24],
  sections: 'palm 21, thumb gusset 6, back of the hand 21',
  markers: 'm1 21, m2 27, *side 36',
  faces: 'kkp',
  stage: 'Hand',
  row: 'Rnd 9'
};

/** Other moments: a heel turned on double-pointed needles, a left-handed mitten, the round end of a hat. */
const OTHERS: Readonly<Record<string, readonly [MomentPlan, DrawOptions]>> = {
  'heel-dpn-5': [HEEL, LIGHT],
  'heel-dpn-5-print': [HEEL, { ...LIGHT, theme: 'print' }],
  'mitten-flexible-3-mirrored': [MITTEN, { ...LIGHT, mirrored: true }],
  'mitten-flexible-3-dark': [MITTEN, { ...LIGHT, theme: 'dark' }],
  'crown-dpn-4': [{ setup: 'dpn-4', loads: [3, 3, 2], feeding: 1, stage: 'Crown' }, LIGHT],
  'body-magic-loop-resting': [{ setup: 'magic-loop', loads: [20, 20], feeding: null, stage: 'Body' }, LIGHT]
};

// A person looked at each of these files before it was kept.
describe('svgText() draws as it was looked at', () => {
  test.each(SETUP_IDS)('the leg on %s', async (setup) => {
    const file = new URL(`golden/leg-${setup}.svg`, import.meta.url).pathname;
    await expect(`${svgText(drawMoment(legOn(setup), LIGHT))}\n`).toMatchFileSnapshot(file);
  });

  test.each(Object.entries(OTHERS))('%s', async (name, [plan, options]) => {
    const file = new URL(`golden/${name}.svg`, import.meta.url).pathname;
    await expect(`${svgText(drawMoment(momentOf(plan), options))}\n`).toMatchFileSnapshot(file);
  });
});
