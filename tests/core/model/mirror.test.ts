import { describe, expect, test } from 'vitest';
import { knitText, lineFinder, planWorkpiece, SETUP_IDS, type Fabric, type Workpiece } from '$lib/core/index.ts';
import { knitPattern } from '$lib/core/knit/knit.ts';
import { mirrorOperation, mirrorPattern } from '$lib/core/model/mirror.ts';
import type { Operation } from '$lib/core/model/operation.ts';
import { operationNamed, OPERATIONS } from '$lib/core/model/operations.ts';
import { textsIn } from '../../support/texts.ts';

const named = (name: string): Operation => {
  const operation = operationNamed(name);
  if (!operation) throw new Error(`no operation ${name}`);
  return operation;
};

function mirrored(workpiece: Workpiece): Workpiece {
  const pattern = mirrorPattern(workpiece.pattern);
  const lineOf = lineFinder(workpiece.text);
  return { ...workpiece, pattern, fabrics: pattern.sizes.map((_, size) => knitPattern(pattern, size, lineOf)) };
}

/** Everything that a number says about a fabric. */
function numbersOf({ stages, diagnostics }: Fabric) {
  return {
    stages: stages.map(({ name, rows, stated, run, held }) => ({
      name,
      stated,
      run,
      held: held.map(({ ring }) => ring.stitches.length),
      rows: rows.map(({ label, before, after, unworked, start, end, steps }) => ({
        label,
        counts: [before.stitches.length, after.stitches.length],
        unworked,
        yarn: [start, end],
        steps: steps.map(({ from, at, takes, makes }) => [from, at, takes, makes].join(' '))
      }))
    })),
    diagnostics: diagnostics.map(({ code, span }) => `${code} at ${span.from}`)
  };
}

/** The leans of all operations that a value tells, in order; what knitting chooses by place ("at each end") is not told. */
function leansIn(value: unknown): unknown[] {
  if (typeof value !== 'object' || value === null) return [];
  return 'leans' in value ? [value.leans] : Object.values(value).flatMap(leansIn);
}

const OTHER = { left: 'right', right: 'left', none: 'none' } as const;

describe('mirrorOperation()', () => {
  test.each([
    ['k2tog', 'ssk'],
    ['k3tog', 'sssk'],
    ['k4tog', 'k4tog tbl'],
    ['p2tog', 'ssp'],
    ['m1L', 'm1R'],
    ['RT', 'LT'],
    ['2/2 RC', '2/2 LC'],
    ['2/1 RPC', '2/1 LPC'],
    ['2/1/2 LPC', '2/1/2 RPC'],
    ['C6F', 'C6B'],
    ['T3B', 'T3F'],
    ['Tw3L', 'Tw3R']
  ])('%s and %s', (left, right) => {
    expect(mirrorOperation(named(left)).name).toBe(right);
    expect(mirrorOperation(named(right)).name).toBe(left);
  });

  test.each(['skp', 'k2tog tbl'])('%s leans like ssk, and its counterpart is k2tog', (name) => {
    expect(mirrorOperation(named(name)).name).toBe('k2tog');
  });

  test.each(OPERATIONS)('$name keeps its numbers and turns its lean', (operation) => {
    const { takes, makes, leans } = mirrorOperation(operation);
    expect({ takes, makes, leans }).toEqual({
      takes: operation.takes,
      makes: operation.makes,
      leans: OTHER[operation.leans]
    });
  });

  test('a cable of the pattern’s own key is turned with its faces', () => {
    const own: Operation = { ...named('2/1 RPC'), name: 'wave', words: 'told in the key' };
    expect(mirrorOperation(own)).toEqual({ ...own, leans: 'left', faces: ['purl', 'knit', 'knit'] });
  });
});

describe('mirrorPattern() changes no number', () => {
  test.each(textsIn())('$name', ({ text }) => {
    const workpiece = knitText(text);
    const other = mirrored(workpiece);
    expect(other.fabrics.map(numbersOf)).toEqual(workpiece.fabrics.map(numbersOf));
    expect(leansIn(other.pattern)).toEqual(leansIn(workpiece.pattern).map((lean) => OTHER[lean as keyof typeof OTHER]));
  });

  test.each(textsIn(['static/examples']))('nor a load on any set-up: $name', ({ text }) => {
    const workpiece = knitText(text);
    const other = mirrored(workpiece);
    for (const setup of SETUP_IDS) {
      const loads = (one: Workpiece) =>
        planWorkpiece(one, { setup }).stages.map(({ chosen, endLoads, letters }) => [chosen?.loads, endLoads, letters]);
      expect(loads(other)).toEqual(loads(workpiece));
    }
  });
});
