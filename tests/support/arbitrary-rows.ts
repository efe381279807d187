/** Instructions of rows made at random, as reading a text gives them. */

import fc from 'fast-check';
import type { NeedleRef, NeedleRefs } from '$lib/core/model/needle-words.ts';
import { operationNamed, OPERATIONS } from '$lib/core/model/operations.ts';
import type { Extent, Instruction, Target } from '$lib/core/model/pattern.ts';
import type { Sized } from '$lib/core/model/sized.ts';

/** No place: these are made without a text. */
export const span = { from: 0, to: 0 };
/** Parts of a tube that need no line of their own to be known. */
export const SECTIONS = ['heel', 'instep', 'sole', 'palm'];

/** Operations that stand in rows; edges have words of their own, and moving the yarn works nothing. */
const WORKED = [
  ...OPERATIONS.filter(({ family, takes, makes }) => !/pick-up|cast-on|bind-off/u.test(family) && takes + makes > 0),
  ...['2/2 RC', '2/1 LPC', '2/1/2 RPC', 'C6F', 'T3B', 'Tw2L', 'k4tog', 'p5tog tbl', '5-to-1 dec'].map((name) =>
    operationNamed(name)!
  )
];

/** A number, for every size alike or one for each; a size may have none. */
export function counts(sizes: number, most = 40): fc.Arbitrary<Sized<number>> {
  const one = fc.integer({ min: 1, max: most });
  const alike = fc.tuple(one);
  if (sizes < 2) return alike;
  const some = fc.array(fc.option(one, { freq: 8 }), { minLength: sizes, maxLength: sizes });
  return fc.oneof(
    alike,
    some.filter((list) => list.some((entry) => entry !== null))
  );
}

/** One needle by its name. */
export const needleRef: fc.Arbitrary<NeedleRef> = fc
  .constantFrom('1', '2', '3', 'a', 'heel', 'first side')
  .map((name) => ({ kind: 'named', name }));

/** Every needle, or one or two of them. */
export const needleRefs: fc.Arbitrary<NeedleRefs> = fc.oneof(
  fc.constant('each' as const),
  fc.uniqueArray(needleRef, { minLength: 1, maxLength: 2, selector: (ref) => JSON.stringify(ref) })
);

const markerName = fc.constantFrom(null, 'A', 'B', 'm2', 'BOR');

/** Where a marker, a gap or a double stitch may have stitches before it, 0 is none. */
function before(sizes: number): fc.Arbitrary<Sized<number>> {
  return fc.oneof(fc.constant([0]), counts(sizes, 6));
}

function targets(sizes: number): fc.Arbitrary<Target> {
  return fc.oneof(
    fc.constant<Target>({ kind: 'end' }),
    counts(sizes, 9).map((count): Target => ({ kind: 'last', count })),
    fc
      .record({ name: markerName, before: before(sizes), nth: fc.constantFrom(1, 1, 2, 3) })
      .map((told): Target => ({ kind: 'marker', ...told })),
    before(sizes).map((told): Target => ({ kind: 'gap', before: told })),
    before(sizes).map((told): Target => ({ kind: 'double-stitch', before: told })),
    fc.constantFrom(...SECTIONS).map((name): Target => ({ kind: 'centre', name })),
    fc
      .record({ name: fc.constantFrom(...SECTIONS), count: fc.option(counts(sizes)) })
      .map((told): Target => ({ kind: 'section', ...told })),
    fc
      .record({ needle: fc.option(needleRef), before: before(sizes) })
      .map((told): Target => ({ kind: 'needle', ...told }))
  );
}

// "Yo 2" is a double yarn over, and "inc 1" and "brk1" are one stitch whatever stands behind them.
function works(sizes: number): fc.Arbitrary<Instruction> {
  return fc
    .record({ operation: fc.constantFrom(...WORKED), count: counts(sizes, 12) })
    .filter(({ operation: { name }, count: [first, ...rest] }) => {
      return (
        !(name === 'yo' && first === 2) && !(/^(?:inc|dec|brk|brp)$/u.test(name) && first === 1 && rest.length > 0)
      );
    })
    .map((told): Instruction => ({ kind: 'work', ...told, span }));
}

function plainParts(sizes: number): fc.Arbitrary<Instruction> {
  const count = counts(sizes, 12);
  const marker = fc.record({
    action: fc.constantFrom('place' as const, 'slip' as const, 'remove' as const),
    name: markerName
  });
  return fc.oneof(
    { arbitrary: works(sizes), weight: 5 },
    fc
      .record({ operation: fc.option(fc.constantFrom(...WORKED)), target: targets(sizes) })
      .map((told): Instruction => ({ kind: 'work-to', ...told, span })),
    count.map((told): Instruction => ({ kind: 'work-as-set', count: told, span })),
    marker.map((told): Instruction => ({ kind: 'marker', ...told, span })),
    count.map((told): Instruction => ({ kind: 'pick-up', count: told, atMost: 0, span })),
    count.map((told): Instruction => ({ kind: 'cast-on-here', count: told, span })),
    fc.option(count).map((told): Instruction => ({ kind: 'bind-off', count: told, span })),
    fc
      .record({ count, name: fc.constantFrom(null, 'thumb', 'instep') })
      .map((told): Instruction => ({ kind: 'hold', ...told, span })),
    fc.constant<Instruction>({ kind: 'remove-markers', span }),
    fc
      .record({ operation: fc.constantFrom(operationNamed('k2tog')!, operationNamed('m1')!), count })
      .map((told): Instruction => ({ kind: 'evenly', ...told, span })),
    fc
      .record({
        change: fc.constantFrom('inc' as const, 'dec' as const),
        count: counts(sizes, 3),
        place: fc.constantFrom(
          ...(['ends', 'beginning', 'end'] as const).map((places) => ({ places, markers: null })),
          ...[1, 2, 4, null].map((markers) => ({ places: 'markers' as const, markers })),
          { places: 'pair' as const, markers: 2 }
        )
      })
      .map(({ place, ...told }): Instruction => ({ kind: 'shape', ...told, ...place, span }))
  );
}

function extents(sizes: number): fc.Arbitrary<Extent> {
  return fc.oneof(
    counts(sizes, 12).map((count): Extent => ({ kind: 'times', count })),
    counts(sizes, 12).map((count): Extent => ({ kind: 'unclear-times', count })),
    targets(sizes).map((target): Extent => ({ kind: 'to', target }))
  );
}

function parts(sizes: number, depth: number): fc.Arbitrary<Instruction> {
  const plain = plainParts(sizes);
  if (depth === 0) return plain;
  const group = fc
    .record({ body: bodies(sizes, depth - 1, 3), extent: extents(sizes) })
    .map((told): Instruction => ({ kind: 'group', ...told, span }));
  const intoOne = fc
    .array(works(sizes), { minLength: 2, maxLength: 3 })
    .map((body): Instruction => ({ kind: 'into-one', body, span }));
  return fc.oneof({ arbitrary: plain, weight: 5 }, group, intoOne);
}

function bodies(sizes: number, depth: number, most = 5): fc.Arbitrary<Instruction[]> {
  return fc.array(parts(sizes, depth), { minLength: 1, maxLength: most });
}

/** The instructions of one row: one body, or a stretch for each of some sections or needles. */
export function rowBodies(sizes: number): fc.Arbitrary<Instruction[]> {
  const body = bodies(sizes, 2);
  const over = fc
    .uniqueArray(fc.constantFrom(...SECTIONS), { minLength: 1, maxLength: 2 })
    .chain((names) => fc.tuple(...names.map((section) => fc.tuple(fc.constant(section), body))))
    .map((list) => list.map(([section, told]): Instruction => ({ kind: 'over', section, body: told, span })));
  const overNeedles = fc
    .array(fc.tuple(needleRefs, body), { minLength: 1, maxLength: 3 })
    .map((list) => list.map(([needles, told]): Instruction => ({ kind: 'over-needles', needles, body: told, span })));
  const turned = fc
    .tuple(body, fc.constantFrom('none' as const, 'wrap' as const, 'double' as const))
    .map(([told, mark]): Instruction[] => [...told, { kind: 'turn', mark, span }]);
  return fc.oneof({ arbitrary: body, weight: 3 }, over, overNeedles, turned);
}
