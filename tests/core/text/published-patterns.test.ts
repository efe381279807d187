import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readPattern } from '$lib/core/text/read.ts';

// Titles, headings and sizes counted by eye in the texts; see tests/published/patterns/README.md.
test.each<readonly [string, string, number, readonly string[]]>([
  ['01-winter-watch', 'Winter Watch Sock', 10, ['']],
  ['05-skerry', 'Skerry ribbed sock', 10, ['']],
  ['09-convoy', 'Convoy sock', 11, ['Firm', 'Loose']],
  ['12-two-benches', 'Two Benches: a sock for any needles', 9, ['']],
  ['15-ferry-hat', 'Ferry Hat', 4, ['']],
  ['17-harbour-wall', 'Harbour Wall sock', 10, ['']]
])('readPattern() finds title, stages and sizes of %s', (name, title, stages, sizes) => {
  const text = readFileSync(new URL(`../../published/patterns/${name}.txt`, import.meta.url), 'utf8');
  const pattern = readPattern(text);
  expect([pattern.title, pattern.stages.length, pattern.sizes]).toEqual([title, stages, sizes]);
});

test.each(['12-two-benches', '15-ferry-hat'])('readPattern() understands every line of %s', (name) => {
  const text = readFileSync(new URL(`../../published/patterns/${name}.txt`, import.meta.url), 'utf8');
  expect(readPattern(text).diagnostics).toEqual([]);
});
