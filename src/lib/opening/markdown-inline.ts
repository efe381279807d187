/** What Markdown does inside a line: emphasis, links, pictures, code, escaped signs. */

import { withoutEmphasis } from './emphasis.ts';
import { withoutEntities } from './html.ts';

// Escaped signs and code wait in the private use area, where no rule looks for them.
const FIRST_WAITING = 0xe400;
const ESCAPED = /\\([!-/:-@[-`{-~])/gu;
const CODE = /(?<!`)(`+)(?!`)([^`\n]+?)\1(?!`)/gu;
const FENCED = /^( {0,3})(```|~~~)(.*\n)([\s\S]*?\n)( {0,3}\2)/gmu;
const WAITING = /[\uE400-\uE47F]/gu;

const PICTURE = /!\[([^\]]*)\](?:\([^()]*\)|\[[^\]]*\])/gu;
const LINK = /\[([^\][]+)\]\(\s*<?([^\s()<>]+)>?(?:\s+["'(][^"')]*["')])?\s*\)/gu;
const NAMED_LINK = /\[([^\][]+)\](?:\[([^\][]*)\])?/gu;
const BARE_LINK = /<((?:https?:\/\/|mailto:)[^\s<>]+)>/giu;
const CROSSED_OUT = /~~(?!\s)([^~\n]+?)(?<!\s)~~/gu;

/** What `plainWords()` needs to know of the text and adds to what is told of it. */
export interface Told {
  /** Names of defined links, in small letters. */
  readonly links: ReadonlySet<string>;
  readonly unread: Set<string>;
}

/** Puts escaped signs and code out of reach. */
export function protect(text: string): string {
  return text
    .replace(FENCED, (_, indent, fence, info, code: string, end) => indent + fence + info + wait(code) + end)
    .replace(ESCAPED, (_, sign: string) => wait(sign))
    .replace(CODE, (_, _marks, code: string) => wait(code.trim()));
}

/** Puts back what `protect()` took, after entities have been replaced in the rest. */
export function restore(text: string): string {
  return withoutEntities(text).replace(WAITING, (sign) => String.fromCharCode(sign.charCodeAt(0) - FIRST_WAITING));
}

/** The words of a line without their dress. Brackets of a pattern stay: only those before an address are a link. */
export function plainWords(text: string, { links, unread }: Told): string {
  const plain = text
    .replace(PICTURE, (_, name: string) => {
      unread.add(name ? `The picture “${restore(name)}” is not read.` : 'A picture is not read.');
      return '';
    })
    .replace(LINK, (whole, words: string, address: string) => (isAddress(address) ? words : whole))
    .replace(BARE_LINK, '$1')
    .replace(NAMED_LINK, (whole, words: string, name: string | undefined) =>
      links.has((name || words).toLowerCase()) ? words : whole
    )
    .replace(CROSSED_OUT, (_, words: string) => {
      unread.add(`Crossed-out words were left out: “${restore(words)}”.`);
      return '';
    });
  return withoutEmphasis(plain);
}

/** True for the address of a page, a place on one, or a file; false for "twice" and "4". */
export function isAddress(text: string): boolean {
  return /^(?:https?:|mailto:|www\.|[#/]|\.\.?\/)|\.[a-z]{2,5}(?:[/?#]|$)/iu.test(text);
}

// Signs that a rule could take for its own; letters and digits may stay.
function wait(code: string): string {
  return code.replace(/[!-/:-@[-`{-~]/gu, (sign) => String.fromCharCode(FIRST_WAITING + sign.charCodeAt(0)));
}
