import { expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { keyOf, namesIn, termsOf } from '$lib/view/state/answers/glossary.ts';

const terms = (text: string) =>
  termsOf(keyOf(knitText(text))).map(({ name, takes, makes, leans }) => [name, takes, makes, leans]);

test('termsOf() reads the stitches of a key, also those that no row works', () => {
  const text =
    'Test\nKey: dagger = sl 1, k2tog, psso; 3/3 RC = sl 3 to cn, hold back, k3, k3 from cn\n\nBODY\nCO 20 sts.\n';
  expect(terms(text)).toEqual([
    ['dagger', 3, 1, 'left'],
    ['3/3 RC', 6, 6, 'right']
  ]);
});

test('termsOf() gives the meaning of a cable without its name', () => {
  const [cable] = termsOf('Key: 3/3 RC = sl 3 to cn, hold back, k3, k3 from cn');
  expect(cable?.words).toBe('sl 3 to cn, hold back, k3, k3 from cn');
});

test('termsOf() leaves out what everybody knows and what is not understood', () => {
  expect(terms('Test\nKey: k2tog = knit 2 together; foo9 = a secret\n\nBODY\nCO 20 sts.\n')).toEqual([]);
});

test('termsOf() reads the lines under a heading of their own', () => {
  expect(terms('Test\n\nABBREVIATIONS\ninc = kfb;\ntwin = k2tog.\n\nBODY\nCO 20 sts.\n')).toEqual([
    ['inc', 1, 2, 'none'],
    ['twin', 2, 1, 'right']
  ]);
});

test('namesIn() finds sections and markers', () => {
  const text = `Test

BODY
CO 20 sts. Join to work in the rnd; pm for BOR.
Sections: front 10, back 10.
Rnd 1: K5, place marker A, k to end.
Rnd 2: [K to marker A, slip marker A] once, k to end.
`;
  expect(namesIn(knitText(text).pattern)).toEqual({ sections: ['front', 'back'], markers: ['BOR', 'A'] });
});
