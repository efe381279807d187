/** Tidies text that was pasted or read from a plain file. */

import { withoutEntities, withoutTags } from './html.ts';
import { plainFractions, plainLineEnds, withoutInvisibles, withoutLigatures, withoutSoftHyphens } from './signs.ts';

/**
 * Takes out what came along with a text and is no part of it: tags and entities, soft hyphens, signs without width,
 * form feeds, blanks at line ends. Curly quotes, dashes and fixed blanks stay: a pattern may be written with them.
 */
export function tidyPasted(text: string): string {
  return tidyPlain(withoutEntities(withoutTags(plainLineEnds(text)))).replace(/\n{3,}/gu, '\n\n');
}

/** As `tidyPasted()`, for a text that is certainly no web page: angle brackets and ampersands stay. */
export function tidyPlain(text: string): string {
  const plain = plainFractions(withoutLigatures(withoutInvisibles(withoutSoftHyphens(plainLineEnds(text)))));
  return plain
    .replace(/[ \t]*\n?\f\n?/gu, '\n')
    .replace(/[\u1680\u205F]/gu, ' ')
    .replace(CONTROL, '')
    .replace(/[ \t\u00A0]+$/gmu, '')
    .replace(/^\n+/u, '');
}

// Whatever steers a device and prints nothing; tabs and line ends print.
const CONTROL = /(?![\t\n\v\f\r])\p{Cc}/gu;
