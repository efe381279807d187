/** What rows are called: as the text prints their labels. */

import type { RowText } from '../model/pattern.ts';

/** "Rnd 3", "3rd rnd", "R3", "Dec rnd", "Next row". */
export function labelOf(text: RowText, number: number | null): string {
  if (number !== null) return numbered(text, number);
  return text.name ?? `Next ${text.noun.toLowerCase()}`;
}

function numbered({ noun, numbering }: RowText, number: number): string {
  switch (numbering) {
    case 'noun':
      return `${noun} ${number}`;
    case 'ordinal':
      return `${number}${ending(number)} ${noun.toLowerCase()}`;
    case 'letter':
      return `R${number}`;
    case 'bare':
      return String(number);
  }
}

// 1st, 2nd, 3rd, but 11th, 12th, 13th.
function ending(number: number): string {
  if (Math.floor(number / 10) % 10 === 1) return 'th';
  return ['th', 'st', 'nd', 'rd'][number % 10] ?? 'th';
}
