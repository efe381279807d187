import { expect, test } from 'vitest';
import { textWidth, wrapText } from '$lib/core/draw/metrics.ts';

test('textWidth() is that of the typeface or a little more', () => {
  // N, 1 and a blank are 689, 402 and 280 thousandths of the font size wide.
  expect(textWidth('N1 ', false)).toBeGreaterThanOrEqual(1.371);
  expect(textWidth('N1 ', false)).toBeLessThan(1.42);
});

test('textWidth() knows letters with marks, and makes room for those it does not know', () => {
  expect(textWidth('é', false)).toBe(textWidth('e', false));
  expect(textWidth('編', false)).toBeGreaterThanOrEqual(1);
});

test('wrapText() breaks between words', () => {
  expect(wrapText('heel of the right foot', 14)).toEqual(['heel of the', 'right foot']);
});

test('wrapText() cuts what has no end', () => {
  expect(wrapText('x'.repeat(400), 10)).toEqual(['x'.repeat(10), 'x'.repeat(10), `${'x'.repeat(9)}…`]);
});
