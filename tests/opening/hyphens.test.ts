import { expect, test } from 'vitest';
import { joinBroken, wordsOf } from '$lib/opening/hyphens.ts';

const NONE = new Set<string>();

test.each([
  ['a word', 'Rep-', 'eat from *', 'Repeat from *'],
  ['a word at a soft hyphen', 'pat\u00AD', 'tern', 'pattern'],
  ['a printed hyphen', 'ribb\u2010', 'ing', 'ribbing'],
  ['a range', 'Rnds 1-', '16: K.', 'Rnds 1-16: K.'],
  ['a range with a dash', 'Rnds 1–', '16: K.', 'Rnds 1–16: K.'],
  ['stitches', 'sl1-', 'k2tog-psso', 'sl1-k2tog-psso'],
  ['stitches without figures', 'sl-', 'k-psso', 'sl-k-psso'],
  ['stitches in capitals', 'K2tog-', 'TBL', 'K2tog-TBL'],
  ['a compound', 'a left-', 'leaning decrease', 'a left-leaning decrease'],
  ['another compound', 'the set-', 'up rnd', 'the set-up rnd'],
  ['an ending that only begins like a compound', 'set-', 'ting', 'setting'],
  ['a figure and a word', 'a 3-', 'needle bind-off', 'a 3-needle bind-off']
])('joinBroken() joins %s', (_, before, after, joined) => {
  expect(joinBroken(before, after, NONE)).toBe(joined);
});

test.each([
  ['no hyphen', 'k2,', 'p2'],
  ['a dash between blanks', 'work loosely -', 'take care'],
  ['a dash after a word', 'and now –', 'k2'],
  ['nothing to join', 'k2-', '']
])('joinBroken() leaves %s', (_, before, after) => {
  expect(joinBroken(before, after, NONE)).toBeNull();
});

test('joinBroken() keeps the hyphen of a compound that stands elsewhere in the text', () => {
  expect(joinBroken('an eye-', 'partridge heel', NONE)).toBe('an eyepartridge heel');
  expect(joinBroken('an eye-', 'partridge heel', wordsOf(['Eye-partridge heel']))).toBe('an eye-partridge heel');
});
