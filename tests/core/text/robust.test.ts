import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Pattern } from '$lib/core/model/pattern.ts';
import { readPattern } from '$lib/core/text/read.ts';
import { spansIn } from '../../support/laws.ts';
import { BITS, mutated } from '../../support/mutations.ts';
import { textsIn } from '../../support/texts.ts';

const EXAMPLES = textsIn(['static/examples', 'tests/published/patterns']).map(({ text }) => text);

function expectLaws(text: string): void {
  const pattern: Pattern = readPattern(text);
  const outside = spansIn(pattern).filter(({ from, to }) => from < 0 || to < from || to > text.length);
  expect(outside).toEqual([]);
  expect(pattern.sizes.length).toBeGreaterThan(0);
  expect(readPattern(text)).toEqual(pattern);
}

describe('readPattern() never throws, keeps its places, and gives the same each time', () => {
  test('on the examples', () => {
    for (const text of EXAMPLES) expectLaws(text);
  });

  test('on mutated examples', () => {
    fc.assert(fc.property(mutated(EXAMPLES), expectLaws), { seed: 64, numRuns: 200 });
  });

  test('on heaps of fragments', () => {
    const heap = fc
      .array(fc.constantFrom(...BITS), { maxLength: 80 })
      .map((bits) => `Example\n\nLEG\nRnd 1: ${bits.join('')}`);
    fc.assert(fc.property(heap, expectLaws), { seed: 56, numRuns: 300 });
  });

  test('on any signs', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), expectLaws), { seed: 72, numRuns: 200 });
  });
});

describe('readPattern() stays quick on texts that are made to be slow', () => {
  const many = (bit: string, length = 100_000) =>
    `Example\n\nLEG\nRnd 1: ${bit.repeat(Math.ceil(length / bit.length))}`;

  // A reader that goes back over the whole text at each bit would take minutes here.
  test.each([
    ['open brackets', many('(')],
    ['nested groups', many('[k2, ')],
    ['brackets of numbers', many('(1, ')],
    ['closed brackets', many('(1) ')],
    ['asterisks', many('* ')],
    ['asterisks of two kinds', many('*k ** ')],
    ['repeats with tails', many('*k1; rep from *, end ')],
    ['unknown words', many('glorp, ')],
    ['sentences that fail', many('K the foo. ')],
    ['prefixes', many('Instep: k1. ')],
    ['labels', many('Rnd 1: ')],
    ['short lines', many('k\n')],
    ['one long word', many('k')],
    ['one long number', many('9')],
    ['dashes', many('1-')],
    ['counts', many('(2 sts ')]
  ])('%s', { timeout: 10_000 }, (_, text) => {
    expect(readPattern(text).title).toBe('Example');
  });
});
