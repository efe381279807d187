/** Numbers in the wording of patterns: "4 (6, 8)", "twice", "three", "3rd", "1-4 and 6". */

import type { Sized } from '../../model/sized.ts';

const WORDS = [
  ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
  ...['thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen', 'twenty']
];

/** "4", or "4 (6, 8)" with "-" for a size that has none. */
export function sized(value: Sized<number>): string {
  const [first, ...rest] = value.map((entry) => (entry === null ? '-' : String(entry)));
  return rest.length === 0 ? (first ?? '-') : `${first} (${rest.join(', ')})`;
}

/** The number in words up to twenty, so that it does not run into the number of a row before it: "four (5, 6)". */
export function inWords(value: Sized<number>): string {
  const [first] = value;
  const word = typeof first === 'number' ? WORDS[first] : undefined;
  const digits = sized(value);
  return word ? digits.replace(/^\d+/u, word) : digits;
}

/** Whether the value is this number in every size. */
export function isOnly(value: Sized<number>, number: number): boolean {
  return value.length === 1 && value[0] === number;
}

/** "1 st", "4 (6, 8) sts", "17 heel sts". */
export function stitches(count: Sized<number>, of = ''): string {
  return `${sized(count)} ${of === '' ? '' : `${of} `}${noun(count)}`;
}

/** "st" for one stitch, "sts" for any other number. */
export function noun(count: Sized<number>): string {
  return isOnly(count, 1) ? 'st' : 'sts';
}

/** "once", "twice", "5 times", "4 (5, 6) times". */
export function times(count: Sized<number>): string {
  if (isOnly(count, 1)) return 'once';
  return isOnly(count, 2) ? 'twice' : `${sized(count)} times`;
}

/** "1st", "2nd", "13th". */
export function ordinal(value: number): string {
  const tens = value % 100;
  const end = tens > 10 && tens < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][value % 10] ?? 'th');
  return `${value}${end}`;
}

/** Row numbers with neighbours drawn together: "5", "1 and 2", "1-4, 6 and 8". `say` words one number, `to` joins a range. */
export function ranges(numbers: readonly number[], say: (number: number) => string = String, to = '-'): string {
  const runs: number[][] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run?.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  const parts = runs.flatMap((run) => {
    if (run.length < 3) return run.map(say);
    return [`${say(run[0]!)}${to}${say(run.at(-1)!)}`];
  });
  return and(parts);
}

/** "a", "a and b", "a, b and c". */
export function and(parts: readonly string[]): string {
  if (parts.length <= 1) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** The text with a capital at its beginning. */
export function capital(text: string): string {
  return text.replace(/^[*[( ]*\p{Ll}/u, (start) => start.toUpperCase());
}
