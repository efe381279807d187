import { describe, expect, test } from 'vitest';
import { MOST_TEXT } from '$lib/core/model/limits.ts';
import { readPattern } from '$lib/core/text/read.ts';
import { printBody, printStatement } from './notation.ts';

const read = (...lines: readonly string[]) => readPattern(lines.join('\n'));

describe('the title', () => {
  test.each<readonly [string, readonly string[]]>([
    ['Heron Quay sock', ['Heron Quay sock', '', 'CUFF', 'CO 8 sts.']],
    ['Heron Quay sock', ['', '  # Heron Quay sock', 'CO 8 sts.']],
    ['Two Benches: a sock', ['Two Benches: a sock', 'CO 8 sts.']],
    ['', ['CO 8 sts.', 'Rnd 1: K.']],
    ['', ['Rnd 1: K.']],
    ['', ['']]
  ])('%j', (title, lines) => {
    expect(read(...lines).title).toBe(title);
  });
});

describe('sizes', () => {
  test.each<readonly [string, readonly string[]]>([
    ['Sizes: S (M, L)', ['S', 'M', 'L']],
    ['Sizes: S[M:L:XL]', ['S', 'M', 'L', 'XL']],
    ['Sizes: Firm (Loose)', ['Firm', 'Loose']],
    ["Sizes: Women's small (medium, large)", ["Women's small", 'medium', 'large']],
    ['Sizes: S, M and L', ['S', 'M', 'L']],
    ['Sizes: 6 (7, 8) in around', ['6', '7', '8']],
    ['Size: Adult M', ['Adult M']],
    ['Sizes: XS (S, M) [L, XL]', ['XS', 'S', 'M', 'L', 'XL']]
  ])('%s', (line, sizes) => {
    expect(read('Example', line, 'CUFF').sizes).toEqual(sizes);
  });

  test('the first list of sizes tells how many there are when no line names them', () => {
    expect(read('Example', 'CUFF', 'CO 48 (56, 64, 72) sts.').sizes).toEqual(['1', '2', '3', '4']);
    expect(read('Example', 'CUFF', 'CO 48 sts.').sizes).toEqual(['']);
  });

  test('a list of another length is an error that tells both numbers', () => {
    const { diagnostics } = read('Example', 'Sizes: S (M, L)', 'CUFF', 'CO 48 (56) sts.');
    expect(diagnostics.map(({ code, severity, expected, found }) => ({ code, severity, expected, found }))).toEqual([
      { code: 'sizes-differ', severity: 'error', expected: 3, found: 2 }
    ]);
  });
});

describe('gauge', () => {
  test.each<readonly [string, number | null, number | null]>([
    ['Gauge: 32 sts and 44 rnds = 10 cm', 32, 44],
    ['Gauge: 8 sts and 11 rnds = 1" in St st', 32, 44],
    ['Gauge: 16 sts and 24 rnds = 4″ in St st', 16, 24],
    ['Gauge: 30 sts and 42 rnds = 10 cm/4 in in St st', 30, 42],
    ['Gauge: 30 sts and 42 rnds = 4 in in St st', 30, 42],
    ['Gauge: 7.5 sts per inch', 30, null],
    ['Tension is not vital, but about 32 sts to 10 cm is intended.', 32, null],
    ['Tension: 19 rows gave 5cm', null, 38]
  ])('%s', (line, stitchesPer10cm, rowsPer10cm) => {
    expect(read('Example', line, 'CUFF').gauge).toEqual({ stitchesPer10cm, rowsPer10cm });
  });

  test('stands under a heading of its own too', () => {
    expect(read('Example', 'GAUGE', '28 sts and 40 rnds = 10 cm', 'CUFF').gauge.stitchesPer10cm).toBe(28);
  });
});

describe('needles', () => {
  test.each<readonly [string, number | null, number | null]>([
    ['Needles: 2.5 mm, 15 cm long', 2.5, 15],
    ['Needles: 2,5 mm', 2.5, null],
    ['Needles: 5 mm 16" circular and a set of 4 dpns', 5, 40],
    ['Needles: one set of five double-pointed needles, 2.5 mm', 2.5, null],
    ['Needles: four dpns', null, null]
  ])('%s', (line, thicknessMm, lengthCm) => {
    expect(read('Example', line, 'CUFF').needles).toEqual({ thicknessMm, lengthCm });
  });
});

describe('headings', () => {
  test.each<readonly [string, string]>([
    ['CUFF', 'CUFF'],
    ['Cuff:', 'Cuff'],
    ['# Brim', 'Brim'],
    ['## Foot ##', 'Foot ##'],
    ['Heel flap', 'Heel flap'],
    ['Thumb gusset:', 'Thumb gusset'],
    ['GUSSET PICK-UP', 'GUSSET PICK-UP'],
    ['PICK UP', 'PICK UP'],
    ['TURN HEEL', 'TURN HEEL'],
    ['TURNING THE HEEL', 'TURNING THE HEEL'],
    ['HEEL FLAP (back and forth on the sole sts)', 'HEEL FLAP'],
    ['Closing the top:', 'Closing the top']
  ])('%s', (line, name) => {
    expect(read('Example', '', line, 'Rnd 1: K.').stages.map((stage) => stage.name)).toEqual([name]);
  });

  test.each(['K.', 'K2, p2.', 'PM', 'Knit', 'CO 64 sts.', 'The heel is worked flat.', 'Rnd 1: K.'])(
    '%s is none',
    (line) => {
      expect(read('Example', '', 'LEG', line).stages.map((stage) => stage.name)).toEqual(['LEG']);
    }
  );

  test('a known stage word may stand before the knitting on one line', () => {
    const [stage] = read('Example', '', 'Cuff: CO 56 sts.').stages;
    expect([stage?.name, stage?.statements.map(printStatement)]).toEqual(['Cuff', ['cast on 56']]);
  });

  test('tells its line and where it stands', () => {
    const text = 'Example\n\nCUFF\nRnd 1: K.\n\nHeel flap\nRow 1: K.';
    const [, flap] = readPattern(text).stages;
    expect([flap?.line, text.slice(flap?.heading.from, flap?.heading.to)]).toEqual([6, 'Heel flap']);
  });

  test('knitting without a heading makes a stage', () => {
    expect(
      read('Example', '', 'CO 8 sts.', 'Rnd 1: K.').stages.map((stage) => stage.statements.map(printStatement))
    ).toEqual([['cast on 8', 'Rnd 1: k>end']]);
  });
});

describe('what a stage is worked over', () => {
  test.each<readonly [string, unknown]>([
    ['HEEL FLAP', null],
    ['HEEL FLAP (back and forth on the sole sts)', { section: 'sole', count: null }],
    [
      'HEEL FLAP (worked back and forth on the first 32 sts of the rnd; the instep sts rest)',
      { section: null, count: [32] }
    ],
    ['HEEL FLAP (worked flat over the 32 heel sts)', { section: 'heel', count: [32] }],
    ['HEEL FLAP (worked flat)', { section: null, count: null }],
    ['THUMB (in the round)', null]
  ])('%s', (heading, over) => {
    expect(read('Example', '', heading, 'Row 1: K.').stages[0]?.over).toEqual(over);
  });

  test('a sentence under the heading may say it', () => {
    const [stage] = read(
      'Example',
      '',
      'HEEL FLAP',
      'The flap is worked back and forth on the 32 heel sts.',
      'Row 1: K.'
    ).stages;
    expect(stage?.over).toEqual({ section: 'heel', count: [32] });
  });
});

describe('the key', () => {
  const row = (key: string, text: string) => {
    const { stages, diagnostics } = read('Example', key, '', 'LEG', `Rnd 1: ${text}`);
    const [statement] = stages[0]!.statements;
    return { body: statement?.kind === 'row' ? statement.body : [], codes: diagnostics.map(({ code }) => code) };
  };

  test('gives a name the meaning of another stitch', () => {
    const { body, codes } = row('Key: inc = kfb; dec = ssk', 'k2, inc, dec, k1');
    expect([printBody(body), codes]).toEqual(['k2 kfb ssk k1', []]);
  });

  test('explains a cable in the words of the hands', () => {
    const { body, codes } = row('Key: 2/2 RPC = sl 2 to cn, hold back, k2, p2 from cn', 'k2, 2/2 RPC, k1');
    const cable = body[1]?.kind === 'work' ? body[1].operation : null;
    expect([codes, cable?.takes, cable?.makes, cable?.faces, cable?.leans, cable?.crosses]).toEqual([
      [],
      4,
      4,
      ['knit', 'knit', 'purl', 'purl'],
      'right',
      true
    ]);
  });

  test('may make a standard name mean something else', () => {
    const { body } = row('Key: C4F = sl 1 to cn, hold front, p3, k1 from cn', 'C4F');
    const cable = body[0]?.kind === 'work' ? body[0].operation : null;
    expect([cable?.takes, cable?.faces, cable?.leans]).toEqual([4, ['purl', 'purl', 'purl', 'knit'], 'left']);
  });

  test('may define a name of the pattern by the stitches in it', () => {
    const { body } = row('Key: lace2 = yo, k2tog', 'lace2, k1');
    const lace = body[0]?.kind === 'work' ? body[0].operation : null;
    expect([lace?.takes, lace?.makes, printBody(body.slice(1))]).toEqual([2, 2, 'k1']);
  });

  test('does not need the words that every pattern explains', () => {
    expect(row('Key: k = knit; st = stitch; RS = right side; rnd = round', 'k4').codes).toEqual([]);
  });

  test('says which meaning it does not understand', () => {
    expect(row('Key: q3 = do something clever; k = knit', 'k4').codes).toEqual(['key-not-understood']);
  });

  test('is read from a sentence that explains a word', () => {
    const { body, codes } = row('To gather is to knit two stitches together.', 'k2, gather, k1');
    expect([printBody(body), codes]).toEqual(['k2 k2tog k1', []]);
  });
});

test('prose before the first heading is kept', () => {
  expect(read('Example', 'A warm hat.', '', 'BRIM', 'Rnd 1: K.').introduction.map(printStatement)).toEqual([
    '"A warm hat."'
  ]);
});

test('lines under notes and materials are prose, whatever they look like', () => {
  const { stages, diagnostics } = read(
    'Example',
    '',
    'NOTES',
    'Slip the first stitch of each row as you like.',
    'K2tog leans right.'
  );
  expect([stages[0]?.statements.map(({ kind }) => kind), diagnostics]).toEqual([['prose'], []]);
});

test('a text that is too long is refused with both lengths', () => {
  const { stages, diagnostics } = readPattern('k'.repeat(MOST_TEXT + 1));
  expect([stages, diagnostics.map(({ code, expected, found }) => ({ code, expected, found }))]).toEqual([
    [],
    [{ code: 'text-too-long', expected: MOST_TEXT, found: MOST_TEXT + 1 }]
  ]);
});

test('places are those of the text as typed', () => {
  const text = 'Example\n\nLEG\nRnds 1–2: “K2”, [k½x] 4×.\nRnd\u00a03: K4, glorp.';
  const found = readPattern(text).diagnostics.find(({ message }) => message.includes('glorp'));
  expect(text.slice(found?.span.from, found?.span.to)).toBe('glorp');
});
