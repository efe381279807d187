import { expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { outlineStages } from '$lib/view/state/answers/piece.ts';
import { triedByStage, withoutTried, withTried } from '$lib/view/state/tried.ts';

const CHOICE = { setup: 'dpn-4', size: 0 } as const;
const TEXT = 'Cowl\n\nBODY\nCO 24 sts. Join to work in the rnd.\nRnd 1: K.\n\nEDGE\nRnd 1: P.\n\nEDGE\nRnd 1: K.\n';
const LAYOUT = { breaks: [0, 8, 16] };

function stagesOf(text: string) {
  return outlineStages(knitText(text).fabrics[0]!);
}

test('withTried() keeps a layout for one stage, size and set-up', () => {
  const stages = stagesOf(TEXT);
  const tried = withTried([], { stages, stage: 2, ...CHOICE }, LAYOUT);
  expect([...triedByStage(tried, stages, CHOICE)]).toEqual([[2, LAYOUT]]);
  expect(triedByStage(tried, stages, { ...CHOICE, setup: 'dpn-5' }).size).toBe(0);
});

test('triedByStage() finds the stage again when another was written before it', () => {
  const stages = stagesOf(TEXT);
  const tried = withTried([], { stages, stage: 0, ...CHOICE }, LAYOUT);
  const longer = stagesOf(
    TEXT.replace(
      'BODY\nCO 24 sts. Join to work in the rnd.',
      `START\nCO 24 sts. Join to work in the rnd.\nRnd 1: K.\n\nBODY`
    )
  );
  expect([...triedByStage(tried, longer, CHOICE)]).toEqual([[1, LAYOUT]]);
});

test('triedByStage() lets go of a layout for another count of stitches', () => {
  const tried = withTried([], { stages: stagesOf(TEXT), stage: 0, ...CHOICE }, LAYOUT);
  expect(triedByStage(tried, stagesOf(TEXT.replace('24', '28')), CHOICE).size).toBe(0);
});

test('withTried() puts a new layout in the place of the old one, and withoutTried() takes it away', () => {
  const place = { stages: stagesOf(TEXT), stage: 1, ...CHOICE };
  const twice = withTried(withTried([], place, LAYOUT), place, { breaks: [0, 10, 16] });
  expect(twice.map(({ breaks }) => breaks)).toEqual([[0, 10, 16]]);
  expect(withoutTried(twice, place)).toEqual([]);
});
