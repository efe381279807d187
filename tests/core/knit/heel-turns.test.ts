import { describe, expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';

// Identities of heel turns, derived and compared with 35 published turns: rules of thumb, section 1. `n`: heel stitches, `m`:
// stitches worked in row 1 before its decrease, the slipped one included.
const WIDTHS = Array.from({ length: 53 }, (_, index) => index + 8);

const lastRows = (pairs: number, odd: boolean, rows: readonly [string, string]) => {
  const whole = odd ? pairs - 1 : pairs;
  const repeat = whole > 1 ? [`Rep rows 3 and 4 ${whole - 1} more times.`] : [];
  const end = odd ? [rows[0], rows[1]].map((row) => row.replace(/, [kp]1, turn/u, ', turn')) : [];
  return { whole, repeat, end };
};

function roundTurn(n: number, m: number): string {
  const u = n - m - 3;
  const pairs = Math.ceil(u / 2);
  const rows = ['Sl 1, k to 1 st before gap, ssk, k1, turn.', 'Sl 1, p to 1 st before gap, p2tog, p1, turn.'] as const;
  const { whole, repeat, end } = lastRows(pairs, u % 2 === 1, rows);
  return [
    'Turn',
    '',
    `CO ${n} sts.`,
    `HEEL TURN (back and forth on the ${n} sts)`,
    `Row 1 (RS): Sl 1, k${m - 1}, ssk, k1, turn.`,
    `Row 2 (WS): Sl 1, p${2 * m - n + 1}, p2tog, p1, turn.`,
    ...(whole > 0 ? [`Row 3: ${rows[0]}`, `Row 4: ${rows[1]}`, ...repeat] : []),
    ...end.map((row) => `Next row: ${row}`)
  ].join('\n');
}

describe('a round heel turn', () => {
  test.each(WIDTHS)('%i stitches', (n) => {
    for (let m = Math.ceil(n / 2) + 1; n - m - 3 >= 1; m += 1) {
      const u = n - m - 3;
      const { fabrics, diagnostics } = knitText(roundTurn(n, m));
      expect(diagnostics, `m = ${m}`).toEqual([]);
      const rows = fabrics[0]!.stages.at(-1)!.rows;
      expect(rows[0]!.unworked).toMatchObject({ before: 0, after: u });
      expect(rows[1]!.unworked).toMatchObject({ before: u, after: u });
      expect(rows.at(-1)!.unworked).toEqual({ before: 0, after: 0 });
      expect(rows.at(-1)!.after.stitches).toHaveLength(n - 2 - 2 * Math.ceil(u / 2));
      expect(rows).toHaveLength(2 + 2 * Math.ceil(u / 2));
    }
  });
});

describe('a square heel turn', () => {
  test.each(WIDTHS.filter((n) => n > 9))('%i stitches', (n) => {
    for (let m = Math.ceil(n / 2) + 1; n - m - 2 >= 1; m += 1) {
      const u = n - m - 2;
      const again = u > 1 ? [`Rep rows 3 and 4 ${u - 1} more times.`] : [];
      const run = 2 * m - n + 1;
      const text = [
        ...['Turn', '', `CO ${n} sts.`, `HEEL TURN (back and forth on the ${n} sts)`],
        `Row 1 (RS): Sl 1, k${m - 1}, ssk, turn.`,
        `Row 2 (WS): Sl 1, p${run - 1}, p2tog, turn.`,
        `Row 3: Sl 1, k${run - 1}, ssk, turn.`,
        `Row 4: Sl 1, p${run - 1}, p2tog, turn.`,
        ...again
      ].join('\n');
      const { fabrics, diagnostics } = knitText(text);
      expect(diagnostics, `m = ${m}`).toEqual([]);
      const rows = fabrics[0]!.stages.at(-1)!.rows;
      expect(rows[0]!.unworked).toMatchObject({ before: 0, after: u });
      expect(rows.at(-1)!.after.stitches).toHaveLength(run + 1);
      expect(rows.at(-1)!.unworked).toEqual({ before: 0, after: 0 });
    }
  });
});
