import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { countsOf, expectedOf, readCounts } from '../support/counts.ts';

const EXAMPLES = ['harbour-steps-sock', 'winter-crossing-mitten', 'ferry-lane-hat'];

function example(name: string): string {
  return readFileSync(new URL(`../../static/examples/${name}.txt`, import.meta.url), 'utf8');
}

// The expected counts were told by hand, stage by stage, before any reader existed.
describe.each(EXAMPLES)('knitText() on static/examples/%s', (name) => {
  const workpiece = knitText(example(name));
  const expected = readCounts(`examples/${name}.counts.json`);

  test('knows the sizes', () => {
    expect(workpiece.pattern.sizes).toEqual(expected.sizes);
  });

  test('finds nothing to complain about', () => {
    expect(workpiece.diagnostics.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });

  test.each(expected.sizes.map((size, index) => [size, index] as const))('gives the counts of size %s', (_, size) => {
    expect(countsOf(workpiece.fabrics[size]!, expected)).toEqual(expectedOf(expected, size));
  });
});
