import { expect, test } from 'vitest';
import { acceptText, fileName, isTooLarge, TOO_LONG } from '$lib/project/files.ts';

test('acceptText() refuses a text over the limit', () => {
  expect(acceptText('k'.repeat(1_000_000))).toMatchObject({ kind: 'text' });
  expect(acceptText('k'.repeat(1_000_001))).toEqual({ kind: 'refused', because: TOO_LONG });
});

test('isTooLarge() tells a file that is no pattern by its size', () => {
  const sized = (size: number) => ({ size }) as Blob;
  expect(isTooLarge(sized(60_000_000))).toBe(false);
  expect(isTooLarge(sized(60_000_001))).toBe(true);
});

test.each([
  ['Harbour Steps sock', 'harbour-steps-sock.txt'],
  ['  Été: à 2/3 ', 'ete-a-2-3.txt'],
  ['', 'pattern.txt'],
  ['../../etc', 'etc.txt']
])('fileName() of "%s" is %s', (title, name) => {
  expect(fileName(title)).toBe(name);
});
