/** Signs as printers and word processors write them, turned into those a pattern is typed with. */

const LIGATURES: Readonly<Record<string, string>> = {
  ﬀ: 'ff',
  ﬁ: 'fi',
  ﬂ: 'fl',
  ﬃ: 'ffi',
  ﬄ: 'ffl',
  ﬅ: 'st',
  ﬆ: 'st'
};

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';

/** Takes ligatures apart: "ﬁnish" → "finish". */
export function withoutLigatures(text: string): string {
  return text.replace(/[\uFB00-\uFB06]/gu, (sign) => LIGATURES[sign] ?? sign);
}

/** Writes raised and lowered fractions plainly: "2¹⁄₂" → "2 1/2", "1⁄2" → "1/2". The one-sign "½" stays. */
export function plainFractions(text: string): string {
  return text
    .replace(/(\d?)([⁰¹²³⁴-⁹]+)\s?[⁄∕/]\s?([₀-₉]+|\d+)/gu, (_, whole: string, top: string, bottom: string) => {
      const fraction = `${digits(top, RAISED)}/${digits(bottom, LOWERED)}`;
      return whole ? `${whole} ${fraction}` : fraction;
    })
    .replace(/(\d+)\s?[⁄∕]\s?(\d+)/gu, (_, top: string, bottom: string) => mixed(top, bottom));
}

/** Digits set small and high, as footnote marks are: "2" → "²". */
export function raised(text: string): string {
  return text.replace(/\d/gu, (digit) => RAISED[Number(digit)]!);
}

/** Turns spaces of every width into plain ones and drops signs that have no width. */
export function plainSpaces(text: string): string {
  return withoutInvisibles(text).replace(/[\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000]/gu, ' ');
}

/** Drops signs that are not seen: zero-width spaces and joiners, marks of writing direction, byte order marks. */
export function withoutInvisibles(text: string): string {
  return text.replace(/[\u200B-\u200F\u202A-\u202E\u2060-\u2064\uFEFF\uFFF9-\uFFFB]/gu, '');
}

/** Joins words at soft hyphens, whether a line ends there or not. */
export function withoutSoftHyphens(text: string): string {
  return text.replace(/\u00AD(?:[ \t]*\n[ \t]*)?/gu, '');
}

/** Ends every line in "\n", wherever the text came from. */
export function plainLineEnds(text: string): string {
  return text.replace(/\r\n?|[\u0085\u2028\u2029\v]/gu, '\n');
}

function digits(text: string, signs: string): string {
  return text.replace(/./gu, (sign) => (signs.includes(sign) ? String(signs.indexOf(sign)) : sign));
}

// "21⁄2" is two and a half: a half of more than one whole is never printed.
function mixed(top: string, bottom: string): string {
  const isMixed = top.length > 1 && Number(top) >= Number(bottom) && Number(top.at(-1)) < Number(bottom);
  return isMixed && top.at(-1) !== '0' ? `${top.slice(0, -1)} ${top.at(-1)}/${bottom}` : `${top}/${bottom}`;
}
