/** How far rows are worked: "three more times", "until 24 sts rem", "until piece measures 15 cm from CO edge". */

import type { LengthStop, RowExtent } from '../../model/repeating.ts';
import { needles } from './needles.ts';
import { inWords, isOnly, ordinal, sized, stitches } from './numbers.ts';

/** An extent with the words that lead to it. `noun`: what its rows are called, "rnd" or "row". */
export function extent(told: RowExtent, noun: string): string {
  switch (told.kind) {
    case 'times':
      return rowTimes(told);
    case 'until':
      return `until ${stitches(told.count, told.of ?? '')} rem${told.on ? ` on ${needles(told.on)}` : ''}`;
    case 'rows':
      return `for ${told.meaning === 'total' ? 'a total of ' : ''}${sized(told.count)} ${noun}s`;
    case 'all-worked':
      return 'until all sts have been worked';
    case 'length':
      return length(told);
    case 'free':
      return 'until piece is desired length';
  }
}

function rowTimes({ count, meaning }: Extract<RowExtent, { kind: 'times' }>): string {
  const once = isOnly(count, 1);
  if (meaning === 'more') return once ? 'once more' : `${inWords(count)} more times`;
  if (meaning === 'total') return `a total of ${inWords(count)} times`;
  return once ? 'once' : `${inWords(count)} times`;
}

/** "until piece measures 15 cm from CO edge, ending with a WS row". */
export function length({ lengthCm, from, lastSide }: LengthStop): string {
  const measured = from === 'cast-on' ? 'piece measures' : 'this section measures';
  const start = from === 'cast-on' ? ' from CO edge' : '';
  const ending = lastSide === null ? '' : `, ending with a ${lastSide} row`;
  return `until ${measured} ${sized(lengthCm)} cm${start}${ending}`;
}

/** Which rows are shaped: "every row", "every other row", "every 4th row", told by the plain rows between them. */
export function every(plainBetween: number, noun: string): string {
  if (plainBetween === 0) return `every ${noun}`;
  return plainBetween === 1 ? `every other ${noun}` : `every ${ordinal(plainBetween + 1)} ${noun}`;
}
