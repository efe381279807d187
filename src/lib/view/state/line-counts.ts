/** What is said about the line at the cursor. */

import type { Piece } from './answers/question.ts';

/** The stitches of a line in one size. */
export interface CountOfSize {
  /** Its name; "" when there is one size only. */
  readonly size: string;
  /** "64 → 62", or that it is not worked. */
  readonly words: string;
  readonly isChosen: boolean;
}

/** The stitches before and after a line, in every size; empty when no size works it. */
export function countsOfLine({ counts, sizes, size }: Piece, line: number): CountOfSize[] {
  const found = counts.find((other) => other.line === line);
  if (!found) return [];
  if (found.sizes.length === 0) return [{ size: '', words: `${found.words} sts`, isChosen: false }];
  return found.sizes.map((words, index) => ({
    size: sizes[index] ?? '',
    words: words || 'not worked',
    isChosen: index === size
  }));
}

/** "Line 42, Rnd 3"; what to do, before the cursor has been set anywhere. */
export function sayLine({ counts, stages }: Piece, line: number | null): string {
  if (line === null) return 'Set the cursor in a row to see its stitches in every size.';
  const found = counts.find((other) => other.line === line);
  const row = found?.place ? stages[found.place.stage]?.rows[found.place.row] : undefined;
  const isTold = row?.line === line;
  return `Line ${line}${isTold ? `, ${row.label}` : ''}${found ? '' : ': works no stitch'}`;
}
