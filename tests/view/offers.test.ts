import { expect, test } from 'vitest';
import { nextLabels } from '$lib/view/attachments/hand/labels.ts';
import { offersAt, type Place } from '$lib/view/attachments/hand/offers.ts';

const NAMES: Place['names'] = {
  terms: [{ name: 'dagger', words: 'slip 1', takes: 3, makes: 1, leans: 'left', crosses: false }],
  sections: ['instep', 'sole'],
  markers: ['BOR', 'A']
};

/** Lines above, the last one last; headings are written in capitals or marked with #. */
function above(...texts: string[]) {
  return texts.reverse().map((text) => ({ text, isHeading: /^(?:#|[A-Z ]+$|[A-Z ]+ \()/u.test(text) }));
}

function offered(before: string, place: Partial<Place> = {}): string[] {
  const found = offersAt({ before, kind: null, above: [], names: NAMES, isAsked: false, ...place });
  return found?.offers.map(({ apply, label }) => apply ?? label) ?? [];
}

test('stitches are offered from their second letter on, with their meaning and arithmetic', () => {
  expect(offered('Rnd 1: K1, ss')).toEqual(['ssk', 'ssp', 'sssk', 'sssp']);
  expect(offered('Rnd 1: K1, s')).toEqual([]);
  expect(offersAt({ before: 'Rnd 1: k2t', kind: null, above: [], names: NAMES, isAsked: false })).toEqual({
    from: 7,
    offers: [
      { label: 'k2tog', detail: 'knit 2 together; takes 2, makes 1, leans right', apply: 'k2tog' },
      {
        label: 'k2tog tbl',
        detail: 'knit 2 together through the back loops; takes 2, makes 1, leans left',
        apply: 'k2tog tbl'
      }
    ]
  });
});

test('a stitch and its number, a whole word, and the middle of an instruction are left alone', () => {
  for (const before of ['Rnd 1: k2', 'Rnd 1: K12', 'Rnd 1: turn', 'Rnd 1: k5 stt']) expect(offered(before)).toEqual([]);
});

test('words are completed as they are begun', () => {
  expect(offered('Rnd 1: K2t')[0]).toBe('K2tog');
  expect(offered('Rnd 1: SSK, SS')[0]).toBe('SSK');
  expect(offered('Rnd 1: M1')).toContain('m1L');
});

test('prose, titles and headings are left alone unless the knitter asks', () => {
  expect(offered('The sock is worked, ss', { kind: 'prose' })).toEqual([]);
  expect(offered('The sock is worked, ss', { kind: 'prose', isAsked: true })).toContain('ssk');
  expect(offered('Cu', { kind: 'title' })).toEqual([]);
});

test('the key of the pattern comes first', () => {
  expect(offered('Rnd 1: ', { isAsked: true })[0]).toBe('dagger');
  expect(offered('Rnd 1: da')).toEqual(['dagger']);
});

test('after an asterisk the end of the repeat is offered, once', () => {
  expect(offered('Rnd 1: *K2, p2; re')[0]).toBe('rep from * to end');
  expect(offered('Rnd 1: *K2, p2; rep from * to end, re')).toEqual([]);
  expect(offered('Rnd 1: K2, p2; re')).toEqual([]);
});

test('after a bracket it is offered how often', () => {
  expect(offered('Rnd 1: [K2, p2] ar')).toEqual(['around']);
  expect(offered('Rnd 1: [K2, p2] ', { isAsked: true })).toContain('to end');
});

test('sections and markers of the text are offered where they can stand', () => {
  expect(offered('Rnd 1: In')).toContain('Instep: ');
  expect(offered('Row 1: K over the so')).toEqual(['sole sts']);
  expect(offered('Rnd 1: K to ma')).toEqual(['marker A']);
  expect(offered('Rnd 1: K to ', { isAsked: true })).toEqual(['end', 'last 2 sts', 'm', 'BOR', 'marker A']);
});

test('headings are offered after an empty line, as those above are written, and none twice', () => {
  expect(offered('HE', { above: above('CUFF', 'Rnd 1: K.', '') })).toEqual(['HEEL FLAP', 'HEEL TURN', 'HEM']);
  expect(offered('CU', { above: above('CUFF', 'Rnd 1: K.', '') })).toEqual([]);
  expect(offered('# Cr', { above: above('# Brim', 'Rnd 1: K.', '') })).toEqual(['Crown']);
  expect(offered('HE', { above: above('CUFF', 'Rnd 1: K.') })).toEqual([]);
});

test('the next label follows the rows above', () => {
  const first = (...lines: string[]) => nextLabels(above(...lines))[0]?.label;
  expect(first('LEG', 'Rnds 1-4: K.')).toBe('Rnd 5: ');
  expect(first('LEG', 'Round 1: K.', 'Some words.')).toBe('Round 2: ');
  expect(first('FLAP', 'Row 1 (RS): K.')).toBe('Row 2 (WS): ');
  expect(first('FLAP', 'Rows 2 and 4 (WS): P.')).toBe('Row 5 (RS): ');
  expect(first('CROWN', 'Rnd 1: K.', 'All even rnds: K.')).toBe('Rnd 3: ');
  expect(first('LEG', 'Round 1: K.', 'FOOT')).toBe('Round 1: ');
  expect(first('LEG', 'Rnd 1: K.', 'HEEL FLAP (back and forth)')).toBe('Row 1 (RS): ');
  expect(first()).toBe('Rnd 1: ');
});

test('what has been told can be repeated', () => {
  expect(nextLabels(above('LEG', 'Rnd 1: K.', 'Rnd 2: P.')).map(({ label }) => label)).toContain('Rep rnds 1-2 ');
  expect(offered('Re', { above: above('LEG', 'Rnd 1: K.') })).toEqual(['Rep rnd 1 ']);
});
