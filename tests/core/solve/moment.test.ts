import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knitText, momentAt, passCount, planWorkpiece, SETUP_IDS } from '$lib/core/index.ts';

const tube = knitText('Trial\n\nBODY\nCO 64 sts. Join.\nRnds 1-6: K.\n');

function letters(moment: ReturnType<typeof momentAt>): string {
  const holding = moment!.needles.filter((needle) => needle.number !== null).map((needle) => needle.letter);
  const free = moment!.needles.filter((needle) => needle.number === null).map((needle) => needle.letter);
  return `${holding.join('')}|${free.join('')}`;
}

// Told by hand: the free needle takes each needle's place in turn, and the emptied one is free. After one round on a set of
// five N1 is E, N2 is A and D is free.
describe('momentAt() moves the letters on with every pass', () => {
  const plan = planWorkpiece(tube, { setup: 'dpn-5' });

  test.each([
    [0, 0, 'ABCD|E'],
    [0, 1, 'EBCD|A'],
    [0, 2, 'EACD|B'],
    [0, 3, 'EABD|C'],
    [1, 0, 'EABC|D'],
    [5, 0, 'ABCD|E']
  ])('row %i, pass %i: %s', (row, pass, expected) => {
    expect(letters(momentAt(plan, { stage: 0, row, pass }))).toBe(expected);
  });

  test('two circulars and a magic loop keep theirs', () => {
    const circulars = planWorkpiece(tube, { setup: 'two-circulars' });
    expect(letters(momentAt(circulars, { stage: 0, row: 3, pass: 1 }))).toBe('AB|');
    const loop = planWorkpiece(tube, { setup: 'magic-loop' });
    const moment = momentAt(loop, { stage: 0, row: 3, pass: 1 })!;
    expect(moment.needles.map((needle) => needle.group)).toEqual(['back', 'front']);
  });
});

const sock = knitText(
  readFileSync(new URL('../../../static/examples/harbour-steps-sock.txt', import.meta.url), 'utf8')
);

// At any pass exactly one needle feeds, one works, no letter is in two places, and the stitches add up.
describe.each(SETUP_IDS)('every pass of the sock on %s', (setup) => {
  const plan = planWorkpiece(sock, { setup, size: 1 });

  test('has one feeding and one working needle', () => {
    plan.stages.forEach((stagePlan, stage) => {
      stagePlan.stage.rows.forEach((row, index) => {
        for (let pass = 0; pass < passCount(stagePlan, index); pass += 1) {
          const moment = momentAt(plan, { stage, row: index, pass })!;
          const place = `${stagePlan.stage.name}, ${row.label}, pass ${pass}`;
          expect(
            moment.needles.filter((needle) => needle.state === 'feeding'),
            place
          ).toHaveLength(1);
          expect(moment.working, place).not.toBeNull();
          const ownTip = plan.setup.works !== 'free-needle';
          expect(moment.working === moment.feeding, place).toBe(ownTip);
          if (setup !== 'magic-loop') {
            expect(new Set(moment.needles.map((needle) => needle.letter)).size, place).toBe(moment.needles.length);
          }
          if (pass > 0) continue;
          const held = moment.needles.reduce((sum, needle) => sum + needle.stitches.length, 0);
          expect(held, place).toBe(row.before.stitches.length);
        }
      });
    });
  });
});
