import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pagesToText } from '$lib/opening/index.ts';
import { lines, page } from './layout.ts';

const letters = fc.constantFrom(...'abcdefghiklmnoprstuwy0123456789');
const word = fc.array(letters, { minLength: 1, maxLength: 9 }).map((signs) => signs.join(''));
const line = fc.array(word, { minLength: 1, maxLength: 10 }).map((words) => words.join(' '));
const column = fc.array(line, { minLength: 1, maxLength: 40 });

test('a page of one column reads back as the lines that were laid out on it', () => {
  const place = fc.record({
    x: fc.integer({ min: 20, max: 90 }),
    y: fc.integer({ min: 115, max: 130 }),
    fontSize: fc.integer({ min: 8, max: 12 })
  });
  fc.assert(
    fc.property(column, place, fc.infiniteStream(fc.nat(1000)), (texts, at, dice) => {
      const items = lines(texts, at).map((item) => ({ item, order: dice.next().value }));
      const shuffled = items.toSorted((a, b) => a.order - b.order).map(({ item }) => item);
      expect(pagesToText([page(shuffled)]).text).toBe(`${texts.join('\n')}\n`);
    }),
    { seed: 27, numRuns: 300 }
  );
});

test('no word is lost or doubled in two columns', () => {
  fc.assert(
    fc.property(column, column, (left, right) => {
      const narrow = (texts: readonly string[]) => texts.map((text) => text.slice(0, 40).trim());
      const items = [lines(narrow(left), { y: 115 }), lines(narrow(right), { x: 330, y: 115 })].flat();
      const words = (text: string) => text.split(/\s+/u).filter(Boolean).toSorted();
      expect(words(pagesToText([page(items)]).text)).toEqual(words([...narrow(left), ...narrow(right)].join(' ')));
    }),
    { seed: 28, numRuns: 200 }
  );
});
