import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { between, drawMoment, knitText, momentAt, planWorkpiece, SETUP_IDS, type SetupId } from '$lib/core/index.ts';
import { svgText } from '$lib/drawing/render.ts';

const text = readFileSync(new URL('../../static/examples/harbour-steps-sock.txt', import.meta.url), 'utf8');
const sock = knitText(text);

/** The leg of the sock with its odd-width cable panel, 64 stitches, at the round of the first cable. */
function legOn(setup: SetupId) {
  const plan = planWorkpiece(sock, { setup, size: 1 });
  const stage = plan.stages.findIndex((planned) => planned.stage.name === 'LEG');
  const row = plan.stages[stage]!.stage.rows.findIndex((candidate) => candidate.label === 'Rnd 3');
  return momentAt(plan, { stage, row, pass: 0 })!;
}

describe.each(SETUP_IDS)('the leg on %s', (setup) => {
  const moment = legOn(setup);
  const picture = drawMoment(moment, { mirrored: false, theme: 'light' });

  // A person looked at each of these files before it was kept.
  test('is drawn as it was looked at', async () => {
    const file = new URL(`golden/leg-${setup}.svg`, import.meta.url).pathname;
    await expect(`${svgText(picture)}\n`).toMatchFileSnapshot(file);
  });

  test('shows every stitch once, under an id of its own', () => {
    const ids = picture.stitches.map((stitch) => stitch.id);
    const wanted = moment.needles.flatMap((needle) => needle.stitches.map((stitch) => `stitch:${stitch.id}`));
    expect([...ids].sort()).toEqual([...wanted].sort());
    expect(new Set(ids).size).toBe(64);
  });

  test('is the same every time, and well-formed', () => {
    const again = svgText(drawMoment(legOn(setup), { mirrored: false, theme: 'light' }));
    expect(again).toBe(svgText(picture));
    expect(again).not.toMatch(/undefined|NaN|<!--|var\(/u);
  });
});

describe('between()', () => {
  const from = drawMoment(legOn('dpn-5'), { mirrored: false, theme: 'light' });
  const to = drawMoment(legOn('magic-loop'), { mirrored: false, theme: 'light' });
  const places = (picture: typeof from) =>
    new Map(picture.stitches.map((stitch) => [stitch.id, [Math.round(stitch.x), Math.round(stitch.y)]]));

  test('begins where the stitches were and ends where they will be', () => {
    expect(places(between(from, to, 0))).toEqual(places(from));
    expect(places(between(from, to, 1))).toEqual(places(to));
  });

  test('keeps every stitch on the way', () => {
    expect(new Set(between(from, to, 0.5).stitches.map((stitch) => stitch.id)).size).toBe(64);
  });
});
