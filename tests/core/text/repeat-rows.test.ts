import { describe, expect, test } from 'vitest';
import { tell } from './notation.ts';

/** The statements of lines that are read without a word of complaint. */
function clean(lines: string, sizes = 1): readonly string[] {
  const { statements, codes } = tell(lines, sizes);
  expect(codes).toEqual([]);
  return statements;
}

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
    ['Work 5 rnds in St st.', 'stockinette 5 rows'],
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
