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
    ['Following round: k4', 'Following round: k4']
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

  test.each<readonly [string, string]>([
    ['K4, p2.', 'Row next: k4 p2'],
    ['k, p2, k', 'Row next: k1 p2 k1'],
    ['pm, k2, pm', 'Row next: pm k2 pm'],
    ['rm, k2, pm for new BOR', 'Row next: rm k2 pm:BOR'],
    ['K, inc 6 sts evenly', 'Row next: m1@6'],
    ['slip, slip, knit', 'Row next: ssk'],
    ['work 3 sts in rib, 2 purl sts', 'Row next: ~3 p2'],
    ['Instep: work in patt. Sole: k.', 'Row next: instep{~>end} sole{k>end}'],
    ['With an empty needle k the 34 instep sts.', 'Row next: on N:new k34'],
    ['With CC, k 1 rnd.', 'knit 1 rows']
  ])('instructions without a label are a part of a row: %s', (text, told) => {
    expect(clean(text)).toEqual([told]);
  });

  test.each([
    'Rep from ** to **.',
    'AT THE SAME TIME dec 1 st each end.',
    'Left: k to last 4 sts, foo.',
    'K to the foo.'
  ])('what looks like an instruction is told when it is not understood: %s', (text) => {
    expect(tell(text).codes).toEqual(['not-understood']);
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
    ['3-needle BO 16 pairs.', ['bind-off 32']],
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

  test('each needle is a check, however many there are', () => {
    expect(clean('CO 64 sts, 16 sts on each of 4 needles.\nRnd 1: K2. (14 sts each needle)').at(-1)).toBe(
      'Rnd 1: k2 | N:each 14'
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

describe('needles', () => {
  test.each([
    ['Rnd now begins at centre of heel.', 'bor here'],
    ['The round now begins in the middle of the heel, with the first side needle.', 'bor N:first side'],
    ['Sl first 2 sts of 2nd needle to 1st needle.', 'sl first 2 N:2 -> N:1'],
    ['Slip the last 9 stitches of the second needle on to the beginning of the third needle.', 'sl last 9 N:2 -> N:3'],
    ['Sl 10 sts from N2 to N1.', 'sl 10 N:2 -> N:1'],
    ['Place the sts of N2 and N3 on one needle.', 'gather N:2+N:3 ?'],
    ['Put the other 28 stitches on one needle, the front needle.', 'gather rest 28 as front'],
    ['The other 30 wait on two front needles, 15 on each.', 'gather rest 15-15 as front'],
    ['These 28 sts are on the heel needle.', 'N:same = heel'],
    ['Divide evenly over 4 needles.', 'layout ?-?-?-?'],
    ['Left needle 22, front needle 28, right needle 22.', 'layout 22-28-22'],
    ['Needles 1 and 3: 24 sts each; needles 2 and 4: 14 sts each.', 'layout 24-14-24-14'],
    ['13 on the first two needles, 14 on the last.', 'layout 13-13-14']
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual([told]);
  });

  test.each([
    [
      'Rnd 1: 1st and 3rd needles: k to last 3 sts, k2tog, k1. 2nd and 4th needles: k.',
      'N:1+N:3{k>-3 k2tog k1} N:2+N:4{k>end}'
    ],
    [
      'Rnd 1: N1: k to last 3 sts, k2tog, k1; N2: k; N3: k1, ssk, k to end.',
      'N:1{k>-3 k2tog k1} N:2{k>end} N:3{k1 ssk k>end}'
    ],
    ['Rnd 1: On first needle, k to end; on second needle, k1, ssk, k to end.', 'N:1{k>end} N:2{k1 ssk k>end}'],
    ['Rnd 1: K to last 3 sts of N1, k2tog, k1, k to end.', 'k>N:1-3 k2tog k1 k>end'],
    ['Rnd 1: K the first 9 stitches of the first needle onto the third needle, k to end.', 'on N:3 k9 on own k>end'],
    ['Rnd 1: With the same needle pick up and k 14 sts (this is the 1st needle again).', 'on N:same pu14 N:same = 1']
  ])('%s', (text, told) => {
    expect(clean(text)).toEqual([`Rnd 1: ${told}`]);
  });

  test.each([
    ['Rep rnd 1 until 8 sts rem on each needle.', 'until N:each 8'],
    ['Rep rnd 1 until 4 stitches are left on the front needle.', 'until N:front 4'],
    ['Rep rnd 1 until there are 14 stitches on the left needle and 14 on the right needle.', 'until N:left 14']
  ])('%s', (text, told) => {
    expect(clean(`Rnd 1: k.\n${text}`).at(-1)).toBe(`repeat 1 ${told}`);
  });
});

describe('prose', () => {
  test.each([
    'The instep waits from here.',
    'These 2 rnds form rib.',
    'Weave in the ends, closing any small hole beside the thumb.',
    'Change to dpns when sts no longer fit comfortably.',
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
