/** Pattern texts spoilt at random: stretches cut out, doubled, or replaced by bits that are hard to read. */

import fc from 'fast-check';

/** Bits of text that lead a reader astray. */
export const BITS = [
  ...[
    '(',
    ')',
    '[',
    ']',
    '*',
    '**',
    '; rep from * ',
    'to end',
    ' 3 times',
    ', ',
    '. ',
    ': ',
    '\n',
    '\n\n',
    '-',
    '0',
    '99999',
    '½'
  ],
  ...[
    'k',
    'k2tog ',
    '2/2 RC ',
    'turn',
    'pm A',
    'Rnds 1-999999: ',
    'Sizes: S (M, L)\n',
    '(4, 5)',
    'N1: ',
    '# ',
    '\u{1F9F6}',
    '\ud800'
  ],
  ...[
    'C99999999F',
    'k9999999tog',
    'every 4th rnd',
    'until 0 sts rem',
    'Key: k = k; ',
    '“',
    '’',
    '\u00a0',
    '\r\n',
    '\u2028',
    '\0',
    'constructor'
  ]
];

/** One change: where, how much is cut out, and what stands there instead. */
type Edit = readonly [at: number, length: number, bit: string];

/** Longest stretch that one edit cuts out, in characters. */
const LONGEST_CUT = 60;

/** One of the texts with up to twelve edits. */
export function mutated(texts: readonly string[]): fc.Arbitrary<string> {
  const edit = fc.tuple(fc.nat(5000), fc.nat(LONGEST_CUT), fc.constantFrom(...BITS));
  return fc
    .tuple(fc.constantFrom(...texts), fc.array(edit, { minLength: 1, maxLength: 12 }))
    .map(([text, edits]) => edits.reduce(change, text));
}

function change(text: string, [at, length, bit]: Edit): string {
  const from = at % (text.length + 1);
  return text.slice(0, from) + bit + text.slice(from + length);
}
