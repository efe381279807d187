import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { knitText, type Row, type Workpiece } from '$lib/core/index.ts';
import { brokenLaws, spansIn } from '../support/laws.ts';
import { mutated } from '../support/mutations.ts';
import { textsIn } from '../support/texts.ts';

test('spansIn() finds spans at any depth', () => {
  expect(spansIn({ span: { from: 1, to: 2 }, body: [{ span: { from: 3, to: 9 } }] })).toEqual([
    { from: 1, to: 2 },
    { from: 3, to: 9 }
  ]);
});

describe('brokenLaws()', () => {
  const workpiece = knitText('Example\n\nCUFF\nCO 8 sts. Join.\nRnd 1: K2tog, k6.\n');
  const [fabric] = workpiece.fabrics;
  const withRow = (change: (row: Row) => Row): Workpiece => ({
    ...workpiece,
    fabrics: [{ ...fabric!, stages: fabric!.stages.map((stage) => ({ ...stage, rows: stage.rows.map(change) })) }]
  });

  test('finds nothing where all is well', () => {
    expect(brokenLaws(workpiece)).toEqual([]);
  });

  test('finds a stitch that comes from nowhere, and one that is taken without a trace', () => {
    const one = (row: Row) => row.after.stitches.slice(1);
    expect(brokenLaws(withRow((row) => ({ ...row, after: { ...row.after, stitches: one(row) } })))).toHaveLength(1);
    expect(brokenLaws(withRow((row) => ({ ...row, steps: row.steps.slice(1) })))).toHaveLength(1);
  });

  test('finds a stage that is lost without a word', () => {
    expect(brokenLaws({ ...workpiece, fabrics: [{ ...fabric!, stages: [] }] })).toHaveLength(1);
  });

  test('finds a place outside the text', () => {
    expect(brokenLaws(withRow((row) => ({ ...row, span: { from: 0, to: 1000 } })))).toHaveLength(1);
    expect(brokenLaws({ ...workpiece, text: '' }).length).toBeGreaterThan(0);
  });
});

// `npm run fuzz` does the same with many more.
test('knitText() never throws on a spoilt text, keeps its places, and keeps account of every row', () => {
  const texts = textsIn().map(({ text }) => text);
  const holds = fc.property(mutated(texts), (text) => {
    expect(brokenLaws(knitText(text))).toEqual([]);
  });
  fc.assert(holds, { seed: 64, numRuns: 2000 });
}, 120_000);
