/** Small patterns made at random, as reading a text gives them. */

import fc from 'fast-check';
import type { Assertion, Pattern, RowNumbers, RowText, Statement } from '$lib/core/model/pattern.ts';
import type { RowExtent } from '$lib/core/model/repeating.ts';
import { counts, needleRef, needleRefs, rowBodies, SECTIONS, span } from './arbitrary-rows.ts';

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
