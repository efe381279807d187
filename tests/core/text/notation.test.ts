import { expect, test } from 'vitest';
import { operationNamed } from '$lib/core/model/operations.ts';
import type { Instruction } from '$lib/core/model/pattern.ts';
import { printBody, printStatement } from './notation.ts';

const span = { from: 0, to: 0 };
const work = (name: string, ...count: (number | null)[]): Instruction => ({
  kind: 'work',
  operation: operationNamed(name)!,
  count,
  span
});

test('printBody() prints counts, sizes and repeats', () => {
  const k2: Instruction = work('k', 2);
  expect(
    printBody([
      work('k', 4),
      work('p', 6, null, 10),
      work('k2tog', 1),
      work('k2tog', 3),
      { kind: 'group', body: [k2, work('p', 2)], extent: { kind: 'to', target: { kind: 'last', count: [2] } }, span },
      { kind: 'group', body: [k2], extent: { kind: 'unclear-times', count: [7] }, span }
    ])
  ).toBe('k4 p6|-|10 k2tog k2tog x3 [k2 p2]>-2 [k2]x?7');
});

test('printBody() prints targets, markers and edges', () => {
  const marker: Instruction = {
    kind: 'work-to',
    operation: operationNamed('k'),
    target: { kind: 'marker', name: 'A', before: [3], nth: 1 },
    span
  };
  expect(
    printBody([
      marker,
      { ...marker, operation: null, target: { kind: 'gap', before: [0] } },
      { kind: 'marker', action: 'place', name: 'BOR', span },
      { kind: 'hold', count: [13], name: 'thumb', span },
      { kind: 'over', section: 'sole', body: [work('sl', 1)], span },
      { kind: 'turn', mark: 'wrap', span }
    ])
  ).toBe('k>A-3 ~>gap pm:BOR hold13:thumb sole{sl1} w&t');
});

test('printStatement() prints counts behind bars', () => {
  expect(
    printStatement({
      kind: 'repeat-rows',
      rows: { kind: 'numbers', numbers: [1, 2] },
      extent: { kind: 'times', count: [5], meaning: 'more' },
      plainBetween: 0,
      sizes: null,
      assertions: [{ kind: 'part', of: 'heel', count: [17], span }],
      span
    })
  ).toBe('repeat 1,2 5 more | heel 17');
});
