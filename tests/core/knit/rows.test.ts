import { describe, expect, test } from 'vitest';
import { knitText, type Row } from '$lib/core/index.ts';

/** The last row of a pattern that is nothing but a cast-on and these lines. */
function lastRow(cast: number, ...lines: string[]): Row {
  return rowsOf(cast, ...lines).at(-1)!;
}

function rowsOf(cast: number, ...lines: string[]): readonly Row[] {
  const workpiece = knitText(['Trial', '', 'BODY', `CO ${cast} sts. Join.`, ...lines].join('\n'));
  expect(workpiece.diagnostics.map((found) => found.message)).toEqual([]);
  return workpiece.fabrics[0]!.stages[0]!.rows;
}

function messages(cast: number, ...lines: string[]): string[] {
  const workpiece = knitText(['Trial', '', 'BODY', `CO ${cast} sts. Join.`, ...lines].join('\n'));
  return workpiece.diagnostics.map((found) => found.code);
}

const faces = (row: Row) => row.after.stitches.map((stitch) => (stitch.face === 'knit' ? 'k' : 'p')).join('');

describe('knitText() keeps the identity of stitches', () => {
  test('a stitch knitted in place stays itself', () => {
    const row = lastRow(8, 'Rnd 1: K.');
    expect(row.after.stitches.map((stitch) => stitch.id)).toEqual(row.before.stitches.map((stitch) => stitch.id));
  });

  test('a decrease makes a new stitch with two parents', () => {
    const row = lastRow(8, 'Rnd 1: K2, k2tog, k4.');
    const made = row.after.stitches[2]!;
    expect(made.parents).toEqual([row.before.stitches[2]!.id, row.before.stitches[3]!.id]);
    expect(row.before.stitches.map((stitch) => stitch.id)).not.toContain(made.id);
  });

  test('a 2/2 cross changes the places of two and two', () => {
    const row = lastRow(8, 'Rnd 1: K2, 2/2 LC, k2.');
    const ids = row.before.stitches.map((stitch) => stitch.id);
    expect(row.after.stitches.map((stitch) => stitch.id)).toEqual([0, 1, 4, 5, 2, 3, 6, 7].map((at) => ids[at]));
  });

  test('ribs show what was worked', () => {
    expect(faces(lastRow(8, 'Rnd 1: *K2, p2; rep from * to end.'))).toBe('kkppkkpp');
  });

  test('a repeat tells where it lies and how long it is', () => {
    expect(lastRow(9, 'Rnd 1: K1, [k2, p2] 2 times.').repeats).toEqual([{ from: 1, to: 9, unit: 4 }]);
  });
});

describe('knitText() hangs markers', () => {
  test('pm in its gap, carried by sm, gone with rm', () => {
    const rows = rowsOf(8, 'Rnd 1: K3, pm, k5.', 'Rnd 2: K to m, sm, k to end.', 'Rnd 3: K to m, rm, k to end.');
    expect(rows.map((row) => row.after.markers.map((marker) => marker.at))).toEqual([[3], [3], []]);
  });

  test('a make-one before sm stays before the marker, one after it behind', () => {
    const row = lastRow(8, 'Rnd 1: K4, pm, k4.', 'Rnd 2: K to m, m1, sm, m1, k to end.');
    expect(row.after.stitches).toHaveLength(10);
    expect(row.after.markers.map((marker) => marker.at)).toEqual([5]);
  });
});

describe('knitText() hangs locking markers', () => {
  test('in the stitch just worked, where they stay', () => {
    const rows = rowsOf(8, 'Rnd 1: K3, place a locking marker A, k5.', 'Rnd 2: K.');
    const locks = rows.map((row) => row.after.markers.map((marker) => [marker.name, marker.kind, marker.at]));
    expect(locks).toEqual([[['A', 'locking', 2]], [['A', 'locking', 2]]]);
  });
});

describe('knitText() tells what does not come out', () => {
  test.each([
    ['a row that is too short', 8, 'Rnd 1: K5.', 'row-too-short'],
    ['a row that is too long', 8, 'Rnd 1: K9.', 'row-too-long'],
    ['a repeat that does not divide', 10, 'Rnd 1: *K2, p2; rep from * to end.', 'repeat-does-not-fit'],
    ['a printed count', 8, 'Rnd 1: K2tog, k6. 6 sts.', 'count-mismatch'],
    ['a count up to a marker', 8, 'Rnd 1: K3, pm A, k5. 8 sts: 4 sts to marker A.', 'count-mismatch'],
    ['a marker that is not there', 8, 'Rnd 1: K to marker A, k1.', 'marker-missing']
  ])('%s', (_title, cast, line, code) => {
    expect(messages(cast, line)).toEqual([code]);
  });

  test('a row that starts at the wrong end, and nothing besides', () => {
    expect(messages(8, 'Row 1 (WS): P6, turn.', 'Row 2 (RS): K6.')).toEqual(['wrong-side']);
  });

  test('a mistake in a row that is repeated is told once', () => {
    expect(messages(8, 'Rnds 1-20: K5.')).toEqual(['row-too-short']);
  });

  test('a count that repeating steps over', () => {
    expect(messages(9, 'Rnd 1: K2tog, k to last 2 sts, ssk.', 'Rep rnd 1 until 4 sts rem.')).toEqual([
      'unreachable-count'
    ]);
  });
});

describe('knitText() reads "7 times" after an asterisk', () => {
  const row = (after: string) => `Next row: *K3, k2tog; rep from * 7 times.${after}`;
  const after = (cast: number, line: string) =>
    knitText(['Trial', '', 'BODY', `CO ${cast} sts. Join.`, line].join('\n'));

  // Seven repeats of five take 35 stitches, eight take 40.
  test('as eight in all where 40 stitches are to be used up', () => {
    const workpiece = after(40, 'Rnd 1: *K3, k2tog; rep from * 7 times.');
    expect(workpiece.diagnostics.map((found) => found.code)).toEqual(['repeats-decided']);
    expect(workpiece.fabrics[0]!.stages[0]!.exit.stitches).toHaveLength(32);
  });

  test.each([
    [' 43 sts.', 43],
    [' 42 sts.', 42]
  ])('as the printed count%s says where both fit', (printed, stitches) => {
    const workpiece = after(50, row(printed));
    expect(workpiece.diagnostics.map((found) => found.code)).toEqual(['repeats-decided']);
    expect(workpiece.fabrics[0]!.stages[0]!.exit.stitches).toHaveLength(stitches);
  });

  test('and says that it is ambiguous where nothing decides', () => {
    expect(after(50, row('')).diagnostics.map((found) => found.code)).toEqual(['ambiguous-repeats']);
  });
});

describe('knitText() without a cast-on', () => {
  test.each(['', 'hello world', 'Trial\n\nBODY\nA line of prose about wool.'])('says so: %j', (text) => {
    expect(knitText(text).diagnostics.map((found) => found.code)).toEqual(['no-cast-on']);
  });
});

describe('knitText() works back and forth', () => {
  const lines = ['Row 1 (RS): K6, turn.', 'Row 2 (WS): P4, turn.'];

  test('a turn leaves the rest unworked, told in ring order', () => {
    const rows = rowsOf(8, ...lines);
    expect(rows.map((row) => [row.side, row.unworked])).toEqual([
      ['RS', { before: 0, after: 0 }],
      ['WS', { before: 2, after: 0 }]
    ]);
  });

  test('a purl on the wrong side shows as a knit', () => {
    expect(faces(rowsOf(8, ...lines).at(-1)!)).toBe('kkkkkkkk');
  });
});
