import { expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { NO_PIECE } from '$lib/view/state/answers/question.ts';
import { outlinePiece } from '$lib/view/state/answers/piece.ts';
import { countsOfLine, sayLine } from '$lib/view/state/line-counts.ts';

const TEXT = `Test cowl
Sizes: S (L)

BODY
CO 20 (24) sts. Join to work in the rnd; pm for BOR.
Rnd 1: K2tog, k to end.
Rep rnd 1 once more.
Size L only: Rnd 2: K.
`;

const piece = outlinePiece(knitText(TEXT), 0);
const oneSize = outlinePiece(knitText(TEXT.replace('Sizes: S (L)\n', '').replace(' (24)', '')), 0);

test('countsOfLine() tells the stitches in every size, and which is chosen', () => {
  expect(countsOfLine(piece, 6)).toEqual([
    { size: 'S', words: '20 → 19', isChosen: true },
    { size: 'L', words: '24 → 23', isChosen: false }
  ]);
  expect(countsOfLine(piece, 8).map(({ words }) => words)).toEqual(['not worked', '22']);
  expect(countsOfLine(oneSize, 5)).toEqual([{ size: '', words: '20 → 19 sts', isChosen: false }]);
});

test('sayLine() names the row told in a line, and no other', () => {
  expect(sayLine(piece, 6)).toBe('Line 6, Rnd 1');
  expect(sayLine(piece, 7)).toBe('Line 7');
  expect(sayLine(piece, 4)).toBe('Line 4: works no stitch');
  expect(sayLine(NO_PIECE, null)).toContain('Set the cursor in a row');
});
