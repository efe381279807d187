import { expect, test } from 'vitest';
import { gapAt, moveBreak, viewStrip } from '$lib/view/state/strip.ts';

test('moveBreak() moves a break between its neighbours and no further', () => {
  const layout = { breaks: [0, 16, 32, 48] };
  expect(moveBreak(layout, { index: 1, to: 20, stitches: 64 }).breaks).toEqual([0, 20, 32, 48]);
  expect(moveBreak(layout, { index: 1, to: 40, stitches: 64 }).breaks).toEqual([0, 31, 32, 48]);
  expect(moveBreak(layout, { index: 1, to: -Infinity, stitches: 64 }).breaks).toEqual([0, 1, 32, 48]);
});

test('moveBreak() stops at the ends of the strip', () => {
  const layout = { breaks: [5, 16] };
  expect(moveBreak(layout, { index: 0, to: -3, stitches: 24 }).breaks).toEqual([0, 16]);
  expect(moveBreak(layout, { index: 1, to: Infinity, stitches: 24 }).breaks).toEqual([5, 23]);
});

test('gapAt() finds the gap of a handle', () => {
  const ring = { stitches: 24, markers: [], sections: [] };
  const view = viewStrip({ ring, prices: [], layout: { breaks: [0, 11] }, room: 700 });
  expect(view.handles.map(({ x }) => gapAt(x, view))).toEqual([0, 11]);
  expect(view.loads.map(({ name }) => name)).toEqual(['N1 11', 'N2 13']);
});
