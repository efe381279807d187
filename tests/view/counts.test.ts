import { expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { countLines, kindsOfLines } from '$lib/view/state/answers/counts.ts';

const TEXT = `Test cowl

BODY
CO 20 sts. Join to work in the rnd; pm for BOR.
Rnds 1-3: *K2, p2; rep from * to end.
Rnd 4: K8, k2tog, k10.
`;

test('countLines() gives the stitches before and after each line', () => {
  const counts = countLines(knitText(TEXT).fabrics[0]!);
  expect(counts.map(({ line, words }) => [line, words])).toEqual([
    [5, '20'],
    [6, '20 → 19']
  ]);
  expect(counts[0]!.title).toContain('3 times');
});

test('countLines() counts the stretch in work of a flat row', () => {
  const flat = `${TEXT}\nFLAP (back and forth on 8 sts)\nRow 1: K6, k2tog.\n`;
  const last = countLines(knitText(flat).fabrics[0]!).at(-1)!;
  expect(last.words).toBe('8 → 7');
});

test('kindsOfLines() tells the title and the headings', () => {
  expect(kindsOfLines(knitText(TEXT))).toEqual(
    expect.arrayContaining([
      { line: 1, kind: 'title' },
      { line: 3, kind: 'heading' }
    ])
  );
});
