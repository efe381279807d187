/** The parser of pattern texts with the colours that the editor gives: editor and core see the same places. */

import { styleTags, tags } from '@lezer/highlight';
import type { LRParser } from '@lezer/lr';
import { parser } from './pattern.grammar';

/** Parses any text into lines, words, numbers, brackets and punctuation; offsets are UTF-16 code units from 0. */
export const patternLanguage: LRParser = parser.configure({
  props: [
    styleTags({
      'StitchWord Code': tags.keyword,
      HandWord: tags.controlKeyword,
      RowWord: tags.labelName,
      Number: tags.number,
      'Open Close': tags.bracket,
      Asterisk: tags.operator,
      Mark: tags.punctuation
    })
  ]
});
