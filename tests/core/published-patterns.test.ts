import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knitText, planJson, planWorkpiece, type PlanJson, type SetupId } from '$lib/core/index.ts';
import { countAfter } from '../support/counts.ts';

interface Expectation {
  readonly pattern: string;
  readonly setup: SetupId;
  readonly stages: readonly {
    readonly match: string;
    readonly totalStart: number | null;
    readonly totalEnd: number | null;
    readonly loadsStart: readonly number[] | null;
    readonly loadsEnd: readonly number[] | null;
    readonly worked: string;
    readonly rows: readonly {
      readonly label: string;
      readonly unworked: readonly [number, number] | null;
      readonly after: number;
    }[];
  }[];
  readonly diagnostics: readonly unknown[];
}

const folder = new URL('../published/patterns/', import.meta.url);

function read(name: string): string {
  return readFileSync(new URL(name, folder), 'utf8');
}

const heading = (name: string) => name.toLowerCase().replaceAll(/[#:]/gu, '').trim();

function stageNamed(plan: PlanJson, match: string) {
  const wanted = heading(match);
  return (
    plan.stages.find((stage) => heading(stage.name) === wanted) ??
    plan.stages.find((stage) => heading(stage.name).includes(wanted))
  );
}

const loadsOf = (needles: readonly { readonly stitches: number }[]) => needles.map((needle) => needle.stitches);

// Restated published examples with printed numbers; see tests/published/patterns/README.md for where each comes from.
// Those told needle by needle ("First needle: …") are not read yet.
describe.each(['12-two-benches', '15-ferry-hat'])('%s gives its printed numbers', (name) => {
  const expected = JSON.parse(read(`${name}.expect.json`)) as Expectation;
  const workpiece = knitText(read(`${name}.txt`));
  const plan = planJson(workpiece, planWorkpiece(workpiece, { setup: expected.setup }));

  test('reads without a complaint', () => {
    expect(plan.diagnostics.filter((found) => found.severity !== 'note')).toEqual(expected.diagnostics);
  });

  test.each(expected.stages.map((stage) => [stage.match, stage] as const))(
    '%s: totals, loads and rows',
    (match, told) => {
      const stage = stageNamed(plan, match)!;
      expect(stage.worked).toBe(told.worked);
      if (told.totalStart !== null) expect(stage.total.start).toBe(told.totalStart);
      if (told.totalEnd !== null) expect(stage.total.end).toBe(told.totalEnd);
      if (told.loadsStart) expect(loadsOf(stage.start)).toEqual(told.loadsStart);
      if (told.loadsEnd) expect(loadsOf(stage.end)).toEqual(told.loadsEnd);
      for (const row of told.rows) {
        const found = stage.rows.find((candidate) => candidate.label === row.label)!;
        expect(found.after, row.label).toBe(row.after);
        if (row.unworked) expect([found.unworked.after, found.unworked.before], row.label).toEqual(row.unworked);
      }
    }
  );
});

describe('17-harbour-wall, a printed slip', () => {
  test('tells 84 printed for 34 at its line', () => {
    const workpiece = knitText(read('17-harbour-wall.txt'));
    const plan = planJson(workpiece, planWorkpiece(workpiece, { setup: 'dpn-4' }));
    const slip = plan.diagnostics.find((found) => found.code === 'count-mismatch');
    expect(slip).toMatchObject({ line: 14, expected: 84, found: 34 });
  });
});

// before + made − taken = after, for every row of every example in every size.
describe('every row keeps account', () => {
  test.each(['harbour-steps-sock', 'winter-crossing-mitten', 'ferry-lane-hat'])('%s', (name) => {
    const text = readFileSync(new URL(`../../static/examples/${name}.txt`, import.meta.url), 'utf8');
    for (const fabric of knitText(text).fabrics) {
      for (const row of fabric.stages.flatMap((stage) => stage.rows)) {
        const change = row.steps.reduce((sum, step) => sum + step.makes - step.takes, 0);
        const held = row.before.stitches.length + change - row.after.stitches.length;
        expect(held, `${row.label} sets ${held} aside`).toBeGreaterThanOrEqual(0);
        expect(countAfter(row)).toBeGreaterThan(0);
        if (held > 0) expect(row.label).toBe('Next round');
      }
    }
  });
});
