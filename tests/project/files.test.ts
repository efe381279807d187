import { expect, test } from 'vitest';
import { acceptText, fileName, readTextFile, TOO_LONG } from '$lib/project/files.ts';

test('readTextFile() reads UTF-8 with any line ends and without a byte order mark', async () => {
  const outcome = await readTextFile(new Blob(['\uFEFFCuff: 21½"\r\nk\rp']));
  expect(outcome).toEqual({ kind: 'text', text: 'Cuff: 21½"\nk\np' });
});

test('readTextFile() reads the older western encoding', async () => {
  const outcome = await readTextFile(new Blob([new Uint8Array([0x32, 0xbd, 0x20, 0x63, 0x6d])]));
  expect(outcome).toEqual({ kind: 'text', text: '2½ cm' });
});

test('readTextFile() refuses what is not text', async () => {
  expect(await readTextFile(new Blob([new Uint8Array([80, 75, 0, 4])]))).toMatchObject({ kind: 'refused' });
});

test('acceptText() refuses a text over the limit', () => {
  expect(acceptText('k'.repeat(1_000_000))).toMatchObject({ kind: 'text' });
  expect(acceptText('k'.repeat(1_000_001))).toEqual({ kind: 'refused', because: TOO_LONG });
});

test.each([
  ['Harbour Steps sock', 'harbour-steps-sock.txt'],
  ['  Été: à 2/3 ', 'ete-a-2-3.txt'],
  ['', 'pattern.txt'],
  ['../../etc', 'etc.txt']
])('fileName() of "%s" is %s', (title, name) => {
  expect(fileName(title)).toBe(name);
});
