import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Operation } from '$lib/core/model/operation.ts';
import { operationNamed, OPERATIONS } from '$lib/core/model/operations.ts';
import { readPattern } from '$lib/core/text/read.ts';

interface Published {
  readonly abbr: string;
  readonly aliases: readonly string[];
  readonly consumes: number | string | null;
  readonly produces: number | string | null;
  /** Ids of tests/published/README.md. */
  readonly source: string;
}

// Published lists of abbreviations, gathered; the sources stand with each entry and in tests/published/README.md.
const published = JSON.parse(
  readFileSync(new URL('../../published/abbreviations.json', import.meta.url), 'utf8')
) as Published[];

/** psso takes from the right needle and is read with its phrase; the others are done by the hands and make no stitch. */
const NO_OPERATION = new Set(['psso', 'p2sso', 'w&t', 'turn', 'pm', 'sm', 'rm']);

/** Spellings that other entries claim too, that only a key can decide, or that are whole phrases. */
const UNDECIDED = new Set([
  'inc 1',
  "dec'd",
  "inc'd",
  'dec 4',
  'yf',
  'bo',
  'drop extra wrap',
  '1-to-3 inc',
  'cdd on WS',
  'brp'
]);

const withoutExplanation = (name: string) => name.replace(/ \([a-z][^)]*\)$/iu, '');

const counted = published.filter(
  ({ abbr, consumes, produces }) =>
    typeof consumes === 'number' && typeof produces === 'number' && !NO_OPERATION.has(abbr)
);

const byRule = published.filter(({ consumes, abbr }) => typeof consumes === 'string' && !NO_OPERATION.has(abbr));

/** The operations that a text of one row works. */
function operationsIn(text: string): Operation[] {
  const { stages, diagnostics } = readPattern(`Example\n\nLEG\nRnd 1: ${text}, k1, p1`);
  expect(diagnostics).toEqual([]);
  const [row] = stages[0]!.statements;
  const body = row?.kind === 'row' ? row.body : [];
  return body.slice(0, -2).flatMap((part) => (part.kind === 'work' ? [part.operation] : []));
}

describe('operationNamed() gives the published counts', () => {
  test.each(counted.map((entry) => [entry.abbr, entry] as const))('of %s', (abbr, entry) => {
    const operation = operationNamed(withoutExplanation(abbr));
    expect([operation?.takes, operation?.makes]).toEqual([entry.consumes, entry.produces]);
  });

  const shaped = byRule.flatMap(({ aliases }) => aliases).filter((name) => /^(?:\d+\/|[CT]w?r?\d+[A-Z]$)/u.test(name));

  test('there are published names that follow a rule', () => {
    expect(shaped.length).toBeGreaterThan(30);
  });

  test.each(shaped)('of %s, whose numbers add up', (name) => {
    const total = [...name.matchAll(/\d+/gu)].reduce((sum, [digits]) => sum + Number(digits), 0);
    const operation = operationNamed(name);
    expect([operation?.takes, operation?.makes]).toEqual([total, total]);
  });
});

describe('readPattern() knows the published spellings', () => {
  const spellings = counted.flatMap((entry) =>
    [entry.abbr, ...entry.aliases].map((name) => [withoutExplanation(name), entry] as const)
  );
  const plain = spellings.filter(([name]) => !UNDECIDED.has(name) && !name.startsWith('('));

  test.each(plain)('%s', (name, { consumes, produces }) => {
    const operations = operationsIn(name);
    // Moving the yarn makes no instruction; its counts are 0 and 0.
    const sum = (key: 'takes' | 'makes') => operations.reduce((total, operation) => total + operation[key], 0);
    expect([sum('takes'), sum('makes'), operations.length]).toEqual([
      consumes,
      produces,
      produces === 0 && consumes === 0 ? 0 : 1
    ]);
  });
});

describe('operationNamed()', () => {
  test.each<readonly [string, string]>([
    ['2/2 RC', 'k k k k'],
    ['2/1 RPC', 'k k p'],
    ['2/1 LPC', 'p k k'],
    ['2/1/2 RPC', 'k k p k k'],
    ['T3B', 'k k p'],
    ['T3F', 'p k k'],
    ['C4F', 'k k k k'],
    ['p2tog', 'p'],
    ['pfb', 'p p'],
    ['k-p-k', 'k p k']
  ])('tells the faces of %s in the order of working', (name, faces) => {
    const made = operationNamed(name)?.faces.map((face) => (face === 'knit' ? 'k' : 'p'));
    expect(made?.join(' ')).toBe(faces);
  });

  test.each<readonly [string, Operation['leans']]>([
    ['k2tog', 'right'],
    ['k4tog', 'right'],
    ['ssk', 'left'],
    ['skp', 'left'],
    ['k2tog tbl', 'left'],
    ['s2kp2', 'none'],
    ['m1L', 'left'],
    ['m1R', 'right'],
    ['2/2 RC', 'right'],
    ['C6F', 'left'],
    // Published as leaning right, and left, on the right side when worked on the wrong side.
    ['p2tog', 'left'],
    ['p2tog tbl', 'right']
  ])('tells where %s leans on the side worked', (name, leans) => {
    expect(operationNamed(name)?.leans).toBe(leans);
  });

  test('does not mind capitals', () => {
    expect(operationNamed('SSK')).toBe(operationNamed('ssk'));
    expect(operationNamed('c6f')?.name).toBe('C6F');
  });

  test.each(['', 'glorp', 'k', '0/2 RC', 'k0tog', 'C1F', 'k99tog', '99/99 LC', 'constructor'])(
    'gives %j only when it is one',
    (name) => {
      expect(operationNamed(name)?.name ?? null).toBe(name === 'k' ? 'k' : null);
    }
  );

  test('crossed stitches are cables and twists, and only those', () => {
    for (const operation of [...OPERATIONS, operationNamed('2/2 RC')!, operationNamed('T3B')!]) {
      expect([operation.name, operation.crosses]).toEqual([
        operation.name,
        operation.family === 'cable' || operation.family === 'twist'
      ]);
    }
  });

  test('every operation tells a face for each stitch it makes', () => {
    for (const { name, faces, makes } of OPERATIONS) expect([name, faces.length]).toEqual([name, makes]);
  });

  test('no name stands for two operations', () => {
    const names = OPERATIONS.flatMap(({ name, aliases }) => [name, ...aliases]).map((name) => name.toLowerCase());
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  });
});
