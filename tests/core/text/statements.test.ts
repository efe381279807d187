import { describe, expect, test } from 'vitest';
import { tell } from './notation.ts';

/** The statements of lines that are read without a word of complaint. */
function clean(lines: string, sizes = 1): readonly string[] {
  const { statements, codes } = tell(lines, sizes);
  expect(codes).toEqual([]);
  return statements;
}

describe('labels of rows', () => {
  test.each<readonly [string, string]>([
    ['Rnd 5: K.', 'Rnd 5: k>end'],
    ['Round 5 - k2, p2', 'Round 5: k2 p2'],
    ['R5: k2, p2', 'Row 5: k2 p2'],
    ['5th rnd: k2, p2', 'Rnd 5: k2 p2'],
    ['5: k2, p2', 'Row 5: k2 p2'],
    ['Row 1 k to end', 'Row 1: k>end'],
    ['Rnds 1-4: K.', 'Rnd 1,2,3,4: k>end'],
    ['Rnds 1–4: K.', 'Rnd 1,2,3,4: k>end'],
    ['Rounds 1 to 4: K.', 'Round 1,2,3,4: k>end'],
    ['Rnds 1-4 inclusive: K.', 'Rnd 1,2,3,4: k>end'],
    ['9th and 10th rows: K.', 'Row 9,10: k>end'],
    ['1st to 4th rows: K.', 'Row 1,2,3,4: k>end'],
    ['Rnds 2 and 4: K.', 'Rnd 2,4: k>end'],
    ['Rnds 2 & 4: K.', 'Rnd 2,4: k>end'],
    ['Rnds 1, 3, 5: K.', 'Rnd 1,3,5: k>end'],
    ['Rnds 2, 4, 6 and 8: K.', 'Rnd 2,4,6,8: k>end'],
    ['Odd rnds: K.', 'Rnd odd from 1: k>end'],
    ['All even rnds: K.', 'Rnd even from 2: k>end'],
    ['Even-numbered Rounds 2-8: K.', 'Round 2,4,6,8: k>end'],
    ['Every odd-numbered row: K.', 'Row odd from 1: k>end'],
    ['Rnd 2 and all even rnds: K.', 'Rnd even from 2: k>end'],
    ['Row 4 and all even rows: P.', 'Row even from 4: p>end'],
    ['WS rows: P.', 'Row even from 2 WS: p>end'],
    ['Row 1 (RS): sl 1, k to end', 'Row 1 RS: sl1 k>end'],
    ['Row 2 [WS]: sl 1, p to end', 'Row 2 WS: sl1 p>end'],
    ['Row 1 (right side): k4', 'Row 1 RS: k4'],
    ['Row 1 (wrong side) - k4', 'Row 1 WS: k4'],
    ['Rnd 5 (increase): k2, m1', 'Rnd 5: k2 m1'],
    ['Dec rnd: k1, ssk', 'Dec rnd: k1 ssk'],
    ['Inc Row: k1, m1', 'Inc Row: k1 m1'],
    ['Set-up rnd: k4', 'Set-up rnd: k4'],
    ['Rib row (RS): k4', 'Rib row RS: k4'],
    ['Next rnd: k4', 'Rnd next: k4'],
    ['Next Row [RS]: k4', 'Row next RS: k4'],
    ['Following round: k4', 'Round next: k4']
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual([told]);
  });

  test('two labels may stand on one line', () => {
    expect(clean('Rnd 1: [k8, k2tog] 8 times; rnd 3: [k7, k2tog] 8 times')).toEqual([
      'Rnd 1: [k8 k2tog]x8',
      'Rnd 3: [k7 k2tog]x8'
    ]);
  });

  test('a wrapped line goes on with the row', () => {
    expect(clean('Rnd 1: K4, p2, k2tog, k5,\np3, ssk.\nRnd 2: K.')).toEqual([
      'Rnd 1: k4 p2 k2tog k5 p3 ssk',
      'Rnd 2: k>end'
    ]);
  });

  test('instructions without a label are a part of a row', () => {
    expect(clean('K4, p2.')).toEqual(['Row next: k4 p2']);
  });
});

describe('rows like others', () => {
  test('As rnd 2 copies the instructions', () => {
    expect(clean('Rnd 2: K4, p2.\nRnds 4-6: As rnd 2.')).toEqual(['Rnd 2: k4 p2', 'Rnd 4,5,6: k4 p2']);
  });

  test('as rows 1 and 2 takes them in turn', () => {
    expect(clean('Row 1 (RS): K4.\nRow 2 (WS): P4.\nRows 3-6: as rows 1 and 2')).toEqual([
      'Row 1 RS: k4',
      'Row 2 WS: p4',
      'Row 3,5 RS: k4',
      'Row 4,6 WS: p4'
    ]);
  });

  test('a row that does not exist is an error', () => {
    expect(tell('Rnd 4: As rnd 2.').codes).toEqual(['row-not-found']);
  });
});

describe('rows worked again', () => {
  test.each<readonly [string, string]>([
    ['Rep rnds 1 and 2 five more times.', 'repeat 1,2 5 more'],
    ['Rep rnds 1-8 once more.', 'repeat 1,2,3,4,5,6,7,8 1 more'],
    ['Repeat these 2 rounds 3 times more.', 'repeat last 2 3 more'],
    ['Repeat these two rows 11 times more.', 'repeat last 2 11 more'],
    ['Rep last 2 rnds 4 more times.', 'repeat last 2 4 more'],
    ['Repeat the last 2 rows 4 times more.', 'repeat last 2 4 more'],
    ['Work rnds 1-2 a total of 5 times.', 'repeat 1,2 5 total'],
    ['Rep rows 1-2 5 times in all.', 'repeat 1,2 5 total'],
    ['Rep rnds 1 and 2 five times.', 'repeat 1,2 5 unclear'],
    ['Rep last 2 rnds until 24 sts rem.', 'repeat last 2 until 24'],
    ['Rep rnds 1 and 2 until there are 24 sts.', 'repeat 1,2 until 24'],
    ['Rep rnds 1 and 2 until 18 heel sts remain.', 'repeat 1,2 until heel 18'],
    ['Rep rnds 1-4 for 20 rnds.', 'repeat 1,2,3,4 for 20 rows'],
    ['Rep dec rnd every 4th rnd 3 more times.', 'repeat "dec rnd" with 3 plain between 3 more'],
    ['Rep Dec rnd every other rnd 3 more times.', 'repeat "Dec rnd" with 1 plain between 3 more'],
    ['Work row 1 once more.', 'repeat 1 1 more'],
    ['Rep rnd 3.', 'repeat 3 1 more']
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual([told]);
  });

  test('two stages of a repeat are two statements', () => {
    expect(clean('Rep dec rnd every other rnd until 32 sts rem, then every rnd until 16 sts rem.')).toEqual([
      'repeat "dec rnd" with 1 plain between until 32',
      'repeat "dec rnd" until 16'
    ]);
  });

  test('then goes on with another repeat', () => {
    expect(clean('Rep rows 1 and 2 fourteen more times, then work row 1 once more. (31 rows)')).toEqual([
      'repeat 1,2 14 more',
      'repeat 1 1 more | rows 31'
    ]);
  });

  test('the number of times may differ by size', () => {
    expect(clean('Rep last 2 rnds 3 (4, 5) more times.', 3)).toEqual(['repeat last 2 3|4|5 more']);
  });
});

describe('plain rows', () => {
  test.each<readonly [string, string]>([
    ['Knit 60 rnds.', 'knit 60 rows'],
    ['K 10 rnds even.', 'knit 10 rows'],
    ['Purl 1 rnd.', 'purl 1 rows'],
    ['Work even for 44 rnds.', 'as-set 44 rows'],
    ['Work straight for 10 rounds.', 'as-set 10 rows'],
    ['Cont without shaping for 10 rnds.', 'as-set 10 rows'],
    ['Work 5 rnds in St st.', 'knit 5 rows'],
    ['Work in patt for 12 rnds.', 'as-set 12 rows'],
    ['Work in rib as set for 10 more rnds.', 'as-set 10 rows'],
    ['Work even until piece measures 6 in from CO.', 'as-set until 15 cm from cast-on'],
    ['Work even until leg measures 12 cm.', 'as-set until 12 cm from stage'],
    ['Work even until foot measures 2½" (6.5 cm).', 'as-set until 6.25 cm from stage'],
    ['Work even until piece measures 2 1/2 in from beg.', 'as-set until 6.25 cm from cast-on'],
    ['K every rnd until hat measures 6 in from CO (about 26 rnds of St st).', 'knit until 15 cm from cast-on']
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual([told]);
  });

  test('a length may differ by size and be given in two units', () => {
    expect(clean('Work even until leg measures 5 (6, 7) in [12.5 (15, 18) cm].', 3)).toEqual([
      'as-set until 12.5|15|17.5 cm from stage'
    ]);
  });
});

describe('beginnings and endings', () => {
  test.each<readonly [string, readonly string[]]>([
    ['CO 64 sts.', ['cast on 64']],
    ['Cast on 64 stitches loosely.', ['cast on 64']],
    ['Using the long-tail method, cast on 64 sts.', ['cast on 64']],
    ['CO 80 sts on the circular. PM, join.', ['cast on 80', 'join, pm']],
    ['Join to work in the rnd, being careful not to twist; pm for BOR.', ['join, pm']],
    ['Join in a round without twisting.', ['join']],
    ['Join. Place marker for beginning of round.', ['join, pm']],
    ['Join, pm.', ['join, pm']],
    ['Sections: instep 28, sole 28.', ['sections instep 28, sole 28']],
    ['Sections: back of hand 20, palm 18', ['sections back of hand 20, palm 18']],
    ['Cut yarn, thread through rem 8 sts, pull tight.', ['draw-through 8']],
    ['Break the yarn, draw it through the 8 stitches and fasten off.', ['draw-through 8']],
    ['Draw yarn through all sts.', ['draw-through all']],
    ['Graft toe: 12 sts each side.', ['graft 12']],
    ['Graft the 12 front stitches to the 12 sole stitches.', ['graft 12']],
    ['Graft the rem sts.', ['graft all']],
    ['Join the sides with Kitchener stitch.', ['graft all']],
    ['BO all sts loosely in rib.', ['bind-off all']],
    ['Return 13 held sts to needles, pick up and k 3 sts over the gap.', ['resume ? 13', 'Row next: pu3']],
    ['Place held thumb sts on dpns.', ['resume thumb all']]
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual(told);
  });
});

describe('layouts that the text states', () => {
  test.each<readonly [string, readonly string[]]>([
    ['Cast on 64 sts, 16 sts on each of 4 needles.', ['cast on 64', 'layout 16-16-16-16']],
    ['N1: 24 sts, N2: 24 sts, N3: 20 sts.', ['layout 24-24-20']],
    ['Divide the sts over 3 needles: N1: 24 sts, N2: 24 sts, N3: 20 sts.', ['layout 24-24-20']],
    ['Change to dpns: 20 sts on N1, 40 sts on N2, 20 sts on N3.', ['layout 20-40-20']],
    [
      'Cast on 68 stitches: 24 on the first needle, 24 on the second and 20 on the third.',
      ['cast on 68', 'layout 24-24-20']
    ],
    ['Place sts on needles as follows: 20-24-20.', ['layout 20-24-20']]
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual(told);
  });
});

describe('printed counts', () => {
  test.each<readonly [string, string]>([
    ['Rnd 1: K2. 80 sts.', 'total 80'],
    ['Rnd 1: K2 - 80 sts', 'total 80'],
    ['Rnd 1: K2. (80 sts)', 'total 80'],
    ['Rnd 1: K2. [80 sts]', 'total 80'],
    ['Rnd 1: K2--80 sts rem.', 'total 80'],
    ['Rnd 1: K2. = 80 sts', 'total 80'],
    ['Rnd 1: K2. There are now 69 stitches.', 'total 69'],
    ['Rnd 1: K2. You should have 69 sts.', 'total 69'],
    ['Rnd 1: K2, for a total of 36 sts.', 'total 36'],
    ['Rnd 1: K2. 8 stitches in all.', 'total 8'],
    ["Rnd 1: K2. (2 sts dec'd)", 'change -2'],
    ["Rnd 1: K2. 2 sts inc'd.", 'change 2'],
    ['Rnd 1: K2. (2 dec)', 'change -2'],
    ['Rnd 1: K2. 1 st decreased.', 'change -1'],
    ['Rnd 1: K2 (8 sts dec – 56 sts)', 'change -8 | total 56'],
    ['Rnd 1: K2. 18 heel sts rem.', 'heel 18'],
    ['Rnd 1: K2. 32 instep sts, 32 sole sts.', 'instep 32 | sole 32'],
    ['Rnd 1: K2. 24 sts to marker A, 32 instep sts.', 'to marker A 24 | instep 32'],
    ['Rnd 1: K2. (31 rows)', 'rows 31'],
    ['Rnd 1: K2. 48 sts (12-24-12).', 'total 48 | loads 12-24-12'],
    ['Rnd 1: K2. 88 sts: N1: 27 sts, N2: 34 sts, N3: 27 sts.', 'total 88 | loads 27-34-27']
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual([`Rnd 1: k2 | ${told}`]);
  });

  test('each needle is meant for as many needles as were named before', () => {
    expect(clean('CO 64 sts, 16 sts on each of 4 needles.\nRnd 1: K2. (14 sts each needle)').at(-1)).toBe(
      'Rnd 1: k2 | loads 14-14-14-14'
    );
  });

  test('a count on a line of its own is a check', () => {
    expect(clean('18 heel sts rem.')).toEqual(['check heel 18']);
  });

  test('a size that has no such row has no count', () => {
    expect(clean('Rnd 1: K2. 44 (-, 60) sts.', 3)).toEqual(['Rnd 1: k2 | total 44|-|60']);
  });
});

describe('lines for some sizes', () => {
  test.each<readonly [string, string]>([
    ['Sizes M and L only: K4.', 'Row next {1,2}: k4'],
    ['Size L only: Row 15: K4.', 'Row 15 {2}: k4'],
    ['Sizes 2 and 3 only: K4.', 'Row next {1,2}: k4'],
    ['L only: K4.', 'Row next {2}: k4'],
    ['First size only: K4.', 'Row next {0}: k4'],
    ['For size M only: Rep last 2 rnds once more.', 'repeat last 2 1 more']
  ])('%s', (text, told) => {
    expect(clean(text, 3)).toEqual([told]);
  });

  test('a prefix alone on its line lasts to the next', () => {
    expect(clean('Sizes M and L only:\nRnd 1: K4.\nRnd 2: P4.\nAll sizes:\nRnd 3: K4.', 3)).toEqual([
      'Rnd 1 {1,2}: k4',
      'Rnd 2 {1,2}: p4',
      'Rnd 3: k4'
    ]);
  });

  test('a check for some sizes says nothing about the others', () => {
    expect(clean('Size L only: 60 sts.', 3)).toEqual(['check total -|-|60']);
  });
});

describe('prose', () => {
  test.each([
    'The instep waits from here.',
    'These 2 rnds form rib.',
    'Weave in the ends, closing any small hole beside the thumb.',
    'Change to dpns when sts no longer fit comfortably.',
    'Rnd now begins at centre of heel.',
    'Caution: markers are small; keep them away from babies.',
    'Join CC.'
  ])('%s', (text) => {
    expect(clean(text)).toEqual([`"${text.replace(/\.$/u, '')}"`]);
  });

  test('a remark in a row is kept behind it', () => {
    expect(clean('Next row: K across the instep; it waits from here.')).toEqual([
      'Row next: k>instep',
      '"it waits from here"'
    ]);
  });
});
