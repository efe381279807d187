import { expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { outlinePiece } from '$lib/view/state/answers/piece.ts';
import { isOneSlip } from '$lib/view/state/answers/slips.ts';

const HEAD = 'Test cowl\n\nBODY\nCO 20 sts. Join to work in the rnd; pm for BOR.\n';

/** What the fixes of a message say, and every text that one of them gives. The first message counts, or the first of a code. */
function mended(text: string, code?: string) {
  const { messages } = outlinePiece(knitText(text), 0);
  const message = messages.find((one) => code === undefined || one.code === code);
  const fixes = message?.fixes ?? [];
  const after = fixes.map(({ edits }) =>
    edits.reduceRight((told, { from, to, insert }) => told.slice(0, from) + insert + told.slice(to), text)
  );
  return { code: message?.code, words: fixes.map(({ words }) => words), after };
}

const codes = (text: string) => knitText(text).diagnostics.map(({ code }) => code);

test.each([
  // mistake, row, what the fixes say, the row after each of them
  ['unknown-stitch', 'Rnd 1: K2tgo, k18.', ['Write "K2tog"'], ['Rnd 1: K2tog, k18.']],
  ['count-mismatch', 'Rnd 1: K18, k2tog. 18 sts.', ['Print 19'], ['Rnd 1: K18, k2tog. 19 sts.']],
  ['count-mismatch', 'Rnd 1: [K8, k2tog] twice. (1 st dec’d)', ['Print 2'], ['Rnd 1: [K8, k2tog] twice. (2 st dec’d)']],
  ['row-too-short', 'Rnd 1: K10, k2tog. 19 sts.', ['Add "k to end"'], ['Rnd 1: K10, k2tog, k to end. 19 sts.']],
  ['row-too-short', 'Round 1: Knit 10.', ['Add "knit to end"'], ['Round 1: Knit 10, knit to end.']],
  ['unclosed-bracket', 'Rnd 1: [K2, p2 5 times.', ['Add "]"'], ['Rnd 1: [K2, p2] 5 times.']],
  ['unclosed-bracket', 'Rnd 1: (K2, p2 to end.', ['Add ")"'], ['Rnd 1: (K2, p2) to end.']],
  ['repeat-end-missing', 'Rnd 1: *K2, p2.', ['Add "rep from * to end"'], ['Rnd 1: *K2, p2; rep from * to end.']],
  [
    'repeat-start-missing',
    'Rnd 1: K2, p2; rep from * to end.',
    ['Put "*" at the beginning of the row'],
    ['Rnd 1: *K2, p2; rep from * to end.']
  ],
  ['implied-repeat', 'Rnd 1: K2, p2.', ['Write it as a repeat to the end'], ['Rnd 1: *K2, p2; rep from * to end.']],
  [
    'bracket-unclear',
    'Rnd 1: [K2, p2], k16.',
    ['Add "to end"', 'Add "once"'],
    ['Rnd 1: [K2, p2] to end, k16.', 'Rnd 1: [K2, p2] once, k16.']
  ]
])('%s is mended: %s', (code, row, words, rows) => {
  const found = mended(HEAD + row + '\n', code);
  expect(found).toEqual({ code, words, after: rows.map((one) => HEAD + one + '\n') });
  expect(found.after.some((text) => codes(text).length === 0)).toBe(true);
});

test('a repeat that can be read in two ways is mended in either', () => {
  const row = 'Rnd 1: *K2, p2; rep from * 2 times, k to end.\n';
  const { code, after } = mended(HEAD + row);
  expect(code).toBe('ambiguous-repeats');
  expect(after.map((text) => text.slice(HEAD.length))).toEqual([
    'Rnd 1: *K2, p2; rep from * 2 more times, k to end.\n',
    'Rnd 1: *K2, p2; rep from * 2 times in all, k to end.\n'
  ]);
  for (const text of after) expect(codes(text)).toEqual([]);
});

test('rows that can be repeated in two ways are mended in either', () => {
  const rows = 'Rnd 1: K2tog, k to end.\nRnd 2: K.\n';
  const { after } = mended(`${HEAD}${rows}Rep rnds 1 and 2 three times.\n`, 'ambiguous-row-repeats');
  expect(after.map((text) => text.slice((HEAD + rows).length))).toEqual([
    'Rep rnds 1 and 2 three more times.\n',
    'Rep rnds 1 and 2 three times in all.\n'
  ]);
  for (const text of after) expect(codes(text)).toEqual([]);
});

test('a flat row that is too short is worked to its end or turned', () => {
  const text = `${HEAD}Rnd 1: K.\n\nFLAP (back and forth on 10 sts)\nRow 1 (RS): K10.\nRow 2 (WS): Sl 1, p3.\n`;
  const { words, after } = mended(text);
  expect(words).toEqual(['Add "p to end"', 'Add "turn"']);
  for (const one of after) expect(codes(one)).toEqual([]);
});

test('a count for several sizes is mended in those that differ', () => {
  const sizes = 'Test cowl\nSizes: S (M, L)\n\nBODY\nCO 20 (24, 28) sts. Join to work in the rnd; pm for BOR.\n';
  const inList = mended(`${sizes}Rnd 1: K2tog, k to end. 19 (22, 27) sts.\n`);
  expect(inList.after[0]).toBe(`${sizes}Rnd 1: K2tog, k to end. 19 (23, 27) sts.\n`);
  expect(codes(inList.after[0]!)).toEqual([]);
  const single = mended(`${sizes}Rnd 1: K2tog, k to end. 19 sts.\n`);
  expect(single.after[0]).toBe(`${sizes}Rnd 1: K2tog, k to end. 19 (23, 27) sts.\n`);
  expect(codes(single.after[0]!)).toEqual([]);
});

test('a misspelt stitch of the key is mended by the key', () => {
  const text = `Test cowl\nKey: dagger = sl 1, k2tog, psso\n\nBODY\nCO 20 sts. Join to work in the rnd.\nRnd 1: Daggre, k17.\n`;
  const { words, after } = mended(text);
  expect(words[0]).toBe('Write "Dagger"');
  expect(codes(after[0]!)).toEqual([]);
});

test('where nothing is known that helps, nothing is offered', () => {
  expect(mended('Test cowl\n\nBODY\nRnd 1: K.\n')).toEqual({ code: 'nothing-on-needles', words: [], after: [] });
});

test.each([
  ['k2tgo', 'k2tog', true],
  ['ssk', 'sssk', true],
  ['sk', 'ssk', true],
  ['yp', 'yo', true],
  ['yo', 'yo', false],
  ['abcd', 'badc', false],
  ['k2', 'k2tog', false]
])('isOneSlip(%s, %s) is %s', (one, other, is) => expect(isOneSlip(one, other)).toBe(is));
