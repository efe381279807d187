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
  const counts = countLines(knitText(TEXT), 0);
  expect(counts.map(({ line, words }) => [line, words])).toEqual([
    [5, '20'],
    [6, '20 → 19']
  ]);
  expect(counts[0]!.title).toContain('3 times');
});

test('countLines() counts the stretch in work of a flat row', () => {
  const flat = `${TEXT}\nFLAP (back and forth on 8 sts)\nRow 1: K6, k2tog.\n`;
  const last = countLines(knitText(flat), 0).at(-1)!;
  expect(last.words).toBe('8 → 7');
});

const SIZED = `Test cowl
Sizes: S (L)

BODY
CO 20 (24) sts. Join to work in the rnd; pm for BOR.
Rnd 1: K1, ssk, k to last 3 sts, k2tog, k1.
Rnd 2: K.
Rep rnds 1 and 2 two (3) more times.
Rep rnd 1 once more.
Size L only: Rnd 1: K.
All even rnds: K.
Next 2 rnds: P.
`;

// By hand: every round 1 takes 2 stitches; 20 - 2 = 18, three times more 12; L 24 - 2 = 22, four times more 14.
test('countLines() gives what a line that repeats others starts and ends with, in every size', () => {
  const counts = countLines(knitText(SIZED), 0);
  const at = (line: number) => counts.find((one) => one.line === line);
  expect(at(8)?.sizes).toEqual(['18 → 14', '22 → 16']);
  expect(at(8)?.title).toContain('4 more rows');
  expect(at(9)?.sizes).toEqual(['14 → 12', '16 → 14']);
  expect(at(8)?.place).toEqual({ stage: 0, row: 2 });
  expect(at(9)?.place).toEqual({ stage: 0, row: 6 });
});

test('countLines() tells a line that is not worked in one size from the others', () => {
  const only = (size: number) => countLines(knitText(SIZED), size).find(({ line }) => line === 10);
  expect(only(0)).toMatchObject({ words: '', place: null, sizes: ['', '14'] });
  expect(only(1)).toMatchObject({ words: '14', sizes: ['', '14'] });
});

test('countLines() takes rows that are told once for several as told, and no repeat', () => {
  const last = countLines(knitText(SIZED), 0).find(({ line }) => line === 12);
  expect(last?.title).toBe('knitted 2 times; first stitches: 12; last: 12');
});

test('countLines() parts two repeats in one line from its own rows', () => {
  const text = `${TEXT.slice(0, TEXT.indexOf('Rnds'))}Rnd 1: K2tog, k to end. Rep rnd 1 twice more. Rep rnd 1 once more.\n`;
  expect(countLines(knitText(text), 0).map(({ words }) => words)).toEqual(['20 → 16']);
});

test('countLines() follows a repeat with plain rounds between, up to a count', () => {
  const text = `${TEXT.slice(0, TEXT.indexOf('Rnds'))}Dec rnd: K2tog, k to end.\nRep dec rnd every other rnd until 16 sts rem.\n`;
  const counts = countLines(knitText(text), 0);
  expect(counts.map(({ line, words }) => [line, words])).toEqual([
    [5, '20 → 19'],
    [6, '19 → 16']
  ]);
  expect(counts[1]!.title).toContain('6 more rows');
});

test('kindsOfLines() tells the title and the headings', () => {
  expect(kindsOfLines(knitText(TEXT))).toEqual(
    expect.arrayContaining([
      { line: 1, kind: 'title' },
      { line: 3, kind: 'heading' }
    ])
  );
});
