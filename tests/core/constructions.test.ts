import { describe, expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { loadsExpected, loadsOf, messagesExpected, messagesOf, samples, sideBySide } from '../support/constructions.ts';

// Each sample was written from the inventory of constructions, its numbers by hand, before the reader was tried on it.
describe('knitText() understands every construction', () => {
  test.each(samples())('$name', ({ text, expected }) => {
    const workpiece = knitText(text);
    const compared = workpiece.fabrics.map((fabric) => sideBySide(fabric, expected));
    expect({
      sizes: workpiece.pattern.sizes.length,
      messages: messagesOf(workpiece, expected),
      knitted: compared.map(({ found }) => found)
    }).toEqual({
      sizes: expected.sizes,
      messages: messagesExpected(expected),
      knitted: compared.map((size) => size.expected)
    });
  });
});

describe('knitText() follows the needles of every construction', () => {
  const told = samples().filter(({ expected }) => expected.loads !== null);

  test.each(told)('$name', ({ text, expected }) => {
    const { fabrics } = knitText(text);
    const loads = fabrics.map((_, size) => loadsExpected(expected, size));
    expect(fabrics.map(loadsOf)).toEqual(loads);
  });
});
