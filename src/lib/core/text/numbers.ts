/** Numbers as patterns write them: digits, fractions, words and ordinals. */

const UNITS = [
  ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
  ...['thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen']
];

const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

const ORDINALS = [
  ...['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth', 'eleventh'],
  ...['twelfth', 'thirteenth', 'fourteenth', 'fifteenth', 'sixteenth']
];

const FRACTIONS: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '½': 1 / 2,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅕': 1 / 5,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8
};

const WORD_VALUES = new Map<string, number>([
  ...UNITS.map((word, value) => [word, value] as const),
  ...TENS.map((word, index) => [word, (index + 2) * 10] as const)
]);

const ORDINAL_VALUES = new Map(ORDINALS.map((word, index) => [word, index + 1]));

/** The value of a number word ("thirteen", "twenty"), or `null`. */
export function wordValue(word: string): number | null {
  return WORD_VALUES.get(word) ?? null;
}

/** The value of an ordinal word ("second"), or `null`. */
export function ordinalValue(word: string): number | null {
  return ORDINAL_VALUES.get(word) ?? null;
}

/** The value of digits with an optional decimal point and an optional fraction sign: "21½". */
export function digitsValue(text: string): number {
  const last = text.at(-1) ?? '';
  const fraction = FRACTIONS[last];
  if (fraction === undefined) return Number(text) || 0;
  return (Number(text.slice(0, -1)) || 0) + fraction;
}
