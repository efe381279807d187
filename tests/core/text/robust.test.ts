import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Pattern } from '$lib/core/model/pattern.ts';
import { readPattern } from '$lib/core/text/read.ts';

function textsIn(folder: string): string[] {
  const url = new URL(folder, import.meta.url);
  return readdirSync(url)
    .filter((name) => name.endsWith('.txt'))
    .map((name) => readFileSync(new URL(name, url), 'utf8'));
}

const EXAMPLES = [...textsIn('../../../static/examples/'), ...textsIn('../../published/patterns/')];

/** Every span anywhere in a value. */
function spansIn(value: unknown): { readonly from: number; readonly to: number }[] {
  if (typeof value !== 'object' || value === null) return [];
  const inner = Object.values(value).flatMap(spansIn);
  const { from, to } = value as Record<string, unknown>;
  return typeof from === 'number' && typeof to === 'number' ? [{ from, to }, ...inner] : inner;
}

function expectLaws(text: string): void {
  const pattern: Pattern = readPattern(text);
  const outside = spansIn(pattern).filter(({ from, to }) => from < 0 || to < from || to > text.length);
  expect(outside).toEqual([]);
  expect(pattern.sizes.length).toBeGreaterThan(0);
  expect(readPattern(text)).toEqual(pattern);
}

test('spansIn() finds spans at any depth', () => {
  expect(spansIn({ span: { from: 1, to: 2 }, body: [{ span: { from: 3, to: 9 } }] })).toEqual([
    { from: 1, to: 2 },
    { from: 3, to: 9 }
  ]);
});

const BITS = [
  ...[
    '(',
    ')',
    '[',
    ']',
    '*',
    '**',
    '; rep from * ',
    'to end',
    ' 3 times',
    ', ',
    '. ',
    ': ',
    '\n',
    '\n\n',
    '-',
    '0',
    '99999',
    '½'
  ],
  ...[
    'k',
    'k2tog ',
    '2/2 RC ',
    'turn',
    'pm A',
    'Rnds 1-999999: ',
    'Sizes: S (M, L)\n',
    '(4, 5)',
    'N1: ',
    '# ',
    '\u{1F9F6}',
    '\ud800'
  ],
  ...[
    'C99999999F',
    'k9999999tog',
    'every 4th rnd',
    'until 0 sts rem',
    'Key: k = k; ',
    '“',
    '’',
    '\u00a0',
    '\r\n',
    '\u2028',
    '\0',
    'constructor'
  ]
];

/** A text with stretches cut out, doubled, or replaced. */
const mutated = fc
  .tuple(
    fc.constantFrom(...EXAMPLES),
    fc.array(fc.tuple(fc.nat(5000), fc.nat(60), fc.constantFrom(...BITS)), { minLength: 1, maxLength: 12 })
  )
  .map(([text, edits]) =>
    edits.reduce((now, [at, length, bit]) => {
      const from = at % (now.length + 1);
      return now.slice(0, from) + bit + now.slice(from + length);
    }, text)
  );

describe('readPattern() never throws, keeps its places, and gives the same each time', () => {
  test('on the examples', () => {
    for (const text of EXAMPLES) expectLaws(text);
  });

  test('on mutated examples', () => {
    fc.assert(fc.property(mutated, expectLaws), { seed: 64, numRuns: 200 });
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
