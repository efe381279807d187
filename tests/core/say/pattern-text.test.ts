import { describe, expect, test } from 'vitest';
import { knitText, writePattern } from '$lib/core/index.ts';
import { countsOfRows, meaningOf } from '../../support/same-pattern.ts';
import { textsIn } from '../../support/texts.ts';

/** Texts that are read differently when they are written back, each with the gap in the reader behind it. */
const OPEN: Readonly<Record<string, string>> = {
  'tests/pasted/01-lock-keeper.txt': 'a line behind a run-in heading does not go on in the next line',
  'tests/pasted/02-saltmarsh.txt': '"and graft …" behind a row is taken for a remark',
  'tests/pasted/11-mirror-lagoon.txt': 'prose swallows a printed count that stands between two sentences'
};

function expectSame(text: string): void {
  const first = knitText(text);
  const again = knitText(writePattern(first.pattern));
  expect(meaningOf(again.pattern)).toEqual(meaningOf(first.pattern));
  expect(countsOfRows(again.fabrics)).toEqual(countsOfRows(first.fabrics));
}

const ALL = textsIn();

describe('writePattern() writes what reads as the same pattern', () => {
  test.each(ALL.filter(({ name }) => !(name in OPEN)))('$name', ({ text }) => {
    expectSame(text);
  });

  test.fails.each(ALL.filter(({ name }) => name in OPEN))('not yet: $name', ({ text }) => {
    expectSame(text);
  });
});
