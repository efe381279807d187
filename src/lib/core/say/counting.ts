/** Small turns of phrase: numbers with their nouns, lists, rows. */

import type { Stage } from '../model/fabric.ts';

/** "1 stitch", "17 stitches". */
export function stitches(count: number): string {
  return `${count} ${count === 1 ? 'stitch' : 'stitches'}`;
}

/** "a", "a and b", "a, b and c". */
export function list(words: readonly string[]): string {
  if (words.length <= 1) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** Names of rows by their indices: "all rows", "Rnd 3 and Rnd 7", "22 rows, first in Rnd 3". */
export function rowsOf(stage: Stage, rows: readonly number[]): string {
  if (rows.length >= stage.rows.length) return stage.rows.length === 1 ? labelAt(stage, 0) : 'every row';
  const labels = [...new Set(rows.map((row) => labelAt(stage, row)))];
  if (labels.length <= 3) return list(labels) + (rows.length > labels.length ? ` (${rows.length} times)` : '');
  return `${rows.length} rows, first ${labelAt(stage, rows[0] ?? 0)}`;
}

function labelAt(stage: Stage, row: number): string {
  return stage.rows[row]?.label ?? 'the cast-on';
}

/** Capital first letter. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
