import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { countAfter } from '../support/counts.ts';
import { differencesOf, expectationsIn } from '../support/expectations.ts';

// Restated published examples with printed numbers; see tests/published/patterns/README.md for where each comes from.
describe('published patterns give their printed numbers', () => {
  const folder = new URL('../published/patterns/', import.meta.url);
  test.each(expectationsIn(folder))('%s', (name) => {
    expect(differencesOf(folder, name)).toEqual([]);
  });
});

// Whole patterns in many styles, written with their numbers by people who did not know the reader.
describe('pasted patterns give their numbers', () => {
  const folder = new URL('../pasted/', import.meta.url);
  test.each(expectationsIn(folder))('%s', (name) => {
    expect(differencesOf(folder, name)).toEqual([]);
  });
});

// The published layouts, written down as texts in our own words; each file names its source.
describe('published layouts come out', () => {
  const folder = new URL('../layouts/', import.meta.url);
  test.each(expectationsIn(folder))('%s', (name) => {
    expect(differencesOf(folder, name)).toEqual([]);
  });
});
// before + made − taken = after, for every row of every example in every size.
describe('every row keeps account', () => {
  test.each(['harbour-steps-sock', 'winter-crossing-mitten', 'ferry-lane-hat'])('%s', (name) => {
    const text = readFileSync(new URL(`../../static/examples/${name}.txt`, import.meta.url), 'utf8');
    for (const fabric of knitText(text).fabrics) {
      for (const row of fabric.stages.flatMap((stage) => stage.rows)) {
        const change = row.steps.reduce((sum, step) => sum + step.makes - step.takes, 0);
        const held = row.before.stitches.length + change - row.after.stitches.length;
        expect(held, `${row.label} sets ${held} aside`).toBeGreaterThanOrEqual(0);
        expect(countAfter(row)).toBeGreaterThan(0);
        if (held > 0) expect(row.label).toBe('Next round');
      }
    }
  });
});
