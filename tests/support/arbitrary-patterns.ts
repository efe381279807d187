/** Small patterns made at random, as reading a text gives them. */

import fc from 'fast-check';
import type { NeedleRef, NeedleRefs } from '$lib/core/model/needle-words.ts';
import { operationNamed, OPERATIONS } from '$lib/core/model/operations.ts';
import type {
  Assertion,
  Extent,
  Instruction,
  Pattern,
  RowNumbers,
  RowText,
  Statement,
  Target
} from '$lib/core/model/pattern.ts';
import type { RowExtent } from '$lib/core/model/repeating.ts';
import type { Sized } from '$lib/core/model/sized.ts';

const span = { from: 0, to: 0 };
const SECTIONS = ['heel', 'instep', 'sole', 'palm'];

/** Operations that stand in rows; edges have words of their own, and moving the yarn works nothing. */
const WORKED = [
  ...OPERATIONS.filter(({ family, takes, makes }) => !/pick-up|cast-on|bind-off/u.test(family) && takes + makes > 0),
  ...['2/2 RC', '2/1 LPC', '2/1/2 RPC', 'C6F', 'T3B', 'Tw2L', 'k4tog', 'p5tog tbl', '5-to-1 dec'].map((name) =>
    operationNamed(name)!
  )
];

/** A number, for every size alike or one for each; a size may have none. */
function counts(sizes: number, most = 40): fc.Arbitrary<Sized<number>> {
  const one = fc.integer({ min: 1, max: most });
  const alike = fc.tuple(one);
  if (sizes < 2) return alike;
  const some = fc.array(fc.option(one, { freq: 8 }), { minLength: sizes, maxLength: sizes });
  return fc.oneof(
    alike,
    some.filter((list) => list.some((entry) => entry !== null))
  );
}

const needleRef: fc.Arbitrary<NeedleRef> = fc
  .constantFrom('1', '2', '3', 'a', 'heel', 'first side')
  .map((name) => ({ kind: 'named', name }));

const needleRefs: fc.Arbitrary<NeedleRefs> = fc.oneof(
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

// A row is one body, or a stretch for each of some sections or needles.
function rowBodies(sizes: number): fc.Arbitrary<Instruction[]> {
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

function assertions(sizes: number): fc.Arbitrary<Assertion[]> {
  const count = counts(sizes, 90);
  const one = fc.oneof(
    count.map((told): Assertion => ({ kind: 'total', count: told, span })),
    fc.record({ count, fewer: fc.boolean() }).map(({ count: told, fewer }): Assertion => ({
      kind: 'change',
      count: fewer ? told.map((entry) => (entry === null ? null : -entry)) : told,
      span
    })),
    fc
      .record({ count, of: fc.constantFrom(...SECTIONS, 'unworked', 'to marker A') })
      .map((told): Assertion => ({ kind: 'part', ...told, span })),
    count.map((told): Assertion => ({ kind: 'rows', count: told, span })),
    fc
      .array(count, { minLength: 2, maxLength: 4 })
      .chain((loads) =>
        fc.constantFrom(null, ['1', '2', '3', '4'].slice(0, loads.length)).map((names) => ({ loads, names }))
      )
      .map((told): Assertion => ({ kind: 'loads', ...told, span })),
    fc
      .record({ count, needles: fc.oneof(fc.constant('each' as const), fc.tuple(needleRef)) })
      .map((told): Assertion => ({ kind: 'on-needles', ...told, span }))
  );
  // Two lists of needles one after the other are one list.
  return fc.array(one, { maxLength: 2 }).filter((list) => list.filter(({ kind }) => kind === 'loads').length < 2);
}

const numbers: fc.Arbitrary<RowNumbers> = fc.oneof(
  fc
    .uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 6 })
    .map((list): RowNumbers => ({ kind: 'numbers', numbers: list.sort((left, right) => left - right) })),
  fc.constantFrom<RowNumbers>(
    { kind: 'parity', parity: 'even', from: 2 },
    { kind: 'parity', parity: 'odd', from: 1 },
    { kind: 'parity', parity: 'even', from: 6 }
  ),
  fc.constantFrom<RowNumbers>({ kind: 'next' }, { kind: 'next', times: 7 })
);

function onlySizes(sizes: number): fc.Arbitrary<readonly number[] | null> {
  if (sizes < 2) return fc.constant(null);
  return fc.option(fc.subarray([...Array(sizes).keys()], { minLength: 1 }), { freq: 3 });
}

function rows(sizes: number): fc.Arbitrary<RowText> {
  return fc
    .record({
      noun: fc.constantFrom('Rnd', 'Round', 'Row'),
      numbering: fc.constantFrom('noun' as const, 'ordinal' as const),
      numbers,
      name: fc.constantFrom(null, null, 'Dec rnd', 'Set-up row'),
      side: fc.constantFrom(null, 'RS' as const, 'WS' as const),
      purpose: fc.constantFrom(null, 'inc' as const, 'dec' as const),
      sizes: onlySizes(sizes),
      body: rowBodies(sizes),
      assertions: assertions(sizes)
    })
    .map((told): RowText => asRead({ kind: 'row', ...told, span }));
}

// A name tells the noun and may tell the purpose; only numbers can be ordinal.
function asRead(row: RowText): RowText {
  const { name } = row;
  const numbering = row.numbers.kind === 'numbers' && name === null ? row.numbering : 'noun';
  if (name === null) return { ...row, numbering };
  const noun = name.endsWith('rnd') ? 'Rnd' : 'Row';
  return { ...row, numbering, noun, numbers: { kind: 'next' }, purpose: name.startsWith('Dec') ? 'dec' : null };
}

function rowExtents(sizes: number): fc.Arbitrary<RowExtent> {
  const count = counts(sizes, 30);
  return fc.oneof(
    fc
      .record({ count, meaning: fc.constantFrom('more' as const, 'total' as const, 'unclear' as const) })
      .map((told): RowExtent => ({ kind: 'times', ...told })),
    fc
      .record({ count, of: fc.constantFrom(null, ...SECTIONS), on: fc.option(needleRefs) })
      .map((told): RowExtent => ({ kind: 'until', ...told })),
    fc
      .record({ count, meaning: fc.constantFrom('more' as const, 'total' as const) })
      .map((told): RowExtent => ({ kind: 'rows', ...told })),
    fc.constantFrom<RowExtent>({ kind: 'all-worked' }, { kind: 'free' }),
    lengths(sizes).map((told): RowExtent => ({ kind: 'length', ...told }))
  );
}

function lengths(sizes: number) {
  return fc.record({
    lengthCm: counts(sizes, 30),
    from: fc.constantFrom('cast-on' as const, 'stage' as const),
    lastSide: fc.constantFrom(null, 'RS' as const, 'WS' as const)
  });
}

function otherStatements(sizes: number): fc.Arbitrary<Statement> {
  const count = counts(sizes);
  const worked = { sizes: onlySizes(sizes), assertions: assertions(sizes) };
  const as = fc.constantFrom('knit' as const, 'purl' as const, 'as-set' as const, 'stockinette' as const);
  return fc.oneof(
    fc
      .record({
        rows: fc.oneof(
          fc
            .constantFrom([1], [1, 2], [3, 4, 5, 6], [2, 4])
            .map((list) => ({ kind: 'numbers' as const, numbers: list })),
          fc.constantFrom(1, 2, 6).map((last) => ({ kind: 'last' as const, count: last })),
          fc.constant({ kind: 'named' as const, name: 'dec rnd' })
        ),
        extent: rowExtents(sizes),
        plainBetween: fc.constantFrom(0, 1, 3),
        ...worked
      })
      .map((told): Statement => ({ kind: 'repeat-rows', ...told, span })),
    fc
      .record({ rows: count, as, unit: fc.constant([]), ...worked })
      .map((told): Statement => ({ kind: 'even', ...told, span })),
    fc
      .tuple(lengths(sizes), fc.record({ as, unit: fc.constant([]), ...worked }))
      .map(([length, told]): Statement => ({ kind: 'even-until', ...length, ...told, span })),
    fc
      .record({
        count: fc.option(count),
        how: fc.constantFrom('graft' as const, 'draw-through' as const, 'bind-off' as const)
      })
      .map((told): Statement => ({ kind: 'close', ...told, span })),
    fc
      .record({ count: fc.option(count), name: fc.constantFrom(null, 'thumb') })
      .map((told): Statement => ({ kind: 'resume', ...told, span })),
    fc
      .array(count, { minLength: 2, maxLength: 4 })
      .chain((loads) =>
        fc.constantFrom(null, ['1', '2', '3', '4'].slice(0, loads.length)).map((names) => ({ loads, names }))
      )
      .map((told): Statement => ({ kind: 'layout', ...told, span })),
    fc
      .record({ step: fc.constantFrom(null, -1, 1, 2), extent: rowExtents(sizes), ...worked })
      .filter(({ extent }) => extent.kind === 'until' || extent.kind === 'all-worked')
      .map((told): Statement => ({ kind: 'progression', ...told, span }) as Statement)
  );
}

/** A pattern of one stage, in one size or in three. */
export const smallPattern: fc.Arbitrary<Pattern> = fc.constantFrom([''], ['S', 'M', 'L']).chain((sizes) =>
  fc
    .record({
      count: counts(sizes.length, 90),
      marker: fc.boolean(),
      statements: fc.array(fc.oneof({ arbitrary: rows(sizes.length), weight: 3 }, otherStatements(sizes.length)), {
        minLength: 1,
        maxLength: 4
      })
    })
    .map(({ count, marker, statements }): Pattern => ({
      title: 'Example',
      sizes,
      gauge: { stitchesPer10cm: null, rowsPer10cm: null },
      needles: { thicknessMm: null, lengthCm: null },
      introduction: [],
      stages: [
        {
          name: 'LEG',
          line: 1,
          heading: { from: 0, to: 3 },
          over: null,
          statements: [{ kind: 'cast-on', count, assertions: [], span }, { kind: 'join', marker, span }, ...statements],
          span
        }
      ],
      diagnostics: []
    }))
);
