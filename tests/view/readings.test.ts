import { expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { OPERATIONS } from '$lib/core/model/operations.ts';
import { meaningOf, readingAt, sayReading, type Term } from '$lib/view/attachments/hand/readings.ts';
import { OFFERED_HANDS, OFFERED_STITCHES } from '$lib/view/attachments/hand/words.ts';

const DAGGER: Term = { name: 'dagger', words: 'slip 1', takes: 3, makes: 1, leans: 'left', crosses: false };

/** The reading at the mark | of a line. */
function read(marked: string, terms: readonly Term[] = []): string | null {
  const found = readingAt(marked.replace('|', ''), marked.indexOf('|'), terms);
  return found && sayReading(found);
}

test.each([
  ['Rnd 1: K1, ss|k, k to end.', 'ssk: slip, slip, knit; takes 2, makes 1, leans left'],
  ['Rnd 1: K1, k2tog| tbl.', 'k2tog tbl: knit 2 together through the back loops; takes 2, makes 1, leans left'],
  ['Rnd 1: |2/2 LC, k4.', '2/2 LC: 4-stitch cable to the left; takes 4, makes 4, crosses left'],
  ['Rnd 1: 2/2 L|C, k4.', '2/2 LC: 4-stitch cable to the left; takes 4, makes 4, crosses left'],
  ['Rnd 1: k1f&|b.', 'k1f&b: knit into front and back; takes 1, makes 2'],
  ['Rnd 1: p|2, k2.', 'p2: purl 2 stitches; takes 2, makes 2'],
  ['Rnd 1: k|1, p2.', 'k1: knit 1 stitch; takes 1, makes 1'],
  ['Rnd 1: sl 1|, p2.', 'sl 1: slip 1 stitch; takes 1, makes 1'],
  ['Rnd 1: k6| (8, 10), p2.', 'k6 (8, 10): knit 6 (8, 10) stitches; takes 6 (8, 10), makes 6 (8, 10)'],
  ['Rnd 1: k to m, s|m, k to end.', 'sm: slip the marker to the right needle'],
  ['Rnd 1: k to |m, sm, k to end.', 'm: marker'],
  ['Rnd 1: k5, w&|t.', 'w&t: wrap the next stitch, then turn the work'],
  ["Rnd 1: k5. (2 sts dec'|d)", "dec'd: decreased"],
  ['De|c rnd: k5.', null],
  ['Rnd 1: k5, zug|.', null],
  ['Rnd 1:  | k5', null]
])('readingAt() in %s', (line, reading) => expect(read(line)).toBe(reading));

test('readingAt() knows the key of the pattern before the standard', () => {
  expect(read('Rnd 1: dag|ger, k2.', [DAGGER])).toBe(
    'dagger: slip 1; takes 3, makes 1, leans left; explained in the key'
  );
  expect(read('Rnd 1: ss|k.', [{ ...DAGGER, name: 'ssk' }])).toContain('takes 3');
});

test('every stitch of the table is offered, but those that every knitter writes without help', () => {
  const offered = new Set(OFFERED_STITCHES.map((name) => name.toLowerCase()));
  const left = OPERATIONS.map(({ name }) => name).filter((name) => !offered.has(name.toLowerCase()));
  expect(left).toEqual(['k', 'p', 'pick up', 'CO', 'BO']);
});

test.each([...OFFERED_STITCHES, ...OFFERED_HANDS])('"%s" has a meaning, and is read in a row', (name) => {
  expect(meaningOf(name, [])).not.toBeNull();
  const { diagnostics } = knitText(
    `Test\n\nBODY\nCO 40 sts. Join to work in the rnd.\nRnd 1: K5, pm, k5.\nRnd 2: K5, ${name}, k5.\n`
  );
  expect(diagnostics.map(({ code }) => code)).not.toContain('unknown-stitch');
});
