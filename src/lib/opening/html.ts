/** Remnants of web pages inside a text: tags and entities. */

const ENTITIES: Readonly<Record<string, string>> = {
  ...{ amp: '&', lt: '<', gt: '>', quot: '"', apos: "'", nbsp: '\u00A0', shy: '\u00AD', hellip: '…', bull: '•' },
  ...{ ndash: '–', mdash: '—', lsquo: '‘', rsquo: '’', ldquo: '“', rdquo: '”', prime: '′', Prime: '″', minus: '−' },
  ...{ frac12: '½', frac14: '¼', frac34: '¾', frasl: '⁄', times: '×', deg: '°', middot: '·', sup1: '¹', sup2: '²' },
  ...{ copy: '©', reg: '®', trade: '™', ast: '*', lowast: '*', ensp: ' ', emsp: ' ', thinsp: ' ', zwnj: '', zwj: '' },
  ...{ auml: 'ä', ouml: 'ö', uuml: 'ü', szlig: 'ß', eacute: 'é', egrave: 'è', agrave: 'à', ccedil: 'ç', aring: 'å' }
};

// Tags that end a line, tags that only dress words, and tags whose content is not for reading.
const BREAKING = 'p|div|li|ul|ol|tr|table|thead|tbody|h[1-6]|section|article|blockquote|header|footer|hr|pre|dl|dt|dd';
const DRESSING =
  'a|abbr|b|big|center|cite|code|del|em|font|html|body|head|i|img|ins|kbd|label|link|main|mark|meta|q|s|small|span|strike|strong|sub|sup|td|th|tt|u|wbr|o:p';

const END_OF_CELL = /<\/t[dh]>\s*(?=<t[dh])/giu;
const LINE_BREAK = /[ \t]*<br\b[^<>]*>[ \t]*\n?/giu;
const HIDDEN = /<!--.*?-->|<(script|style|title)\b[^<>]*>.*?<\/\1>/gisu;
const BREAKING_TAG = new RegExp(`[ \\t]*\\n?[ \\t]*</?(?:${BREAKING})(?:\\s[^<>]*)?/?>[ \\t]*\\n?`, 'giu');
const DRESSING_TAG = new RegExp(`</?(?:${DRESSING})(?:\\s[^<>]*)?/?>`, 'giu');

/** Takes the known tags out; those that end a line leave one. Anything else in angle brackets stays: "<k2>". */
export function withoutTags(text: string): string {
  return text
    .replace(HIDDEN, '')
    .replace(LINE_BREAK, '\n')
    .replace(END_OF_CELL, ' ')
    .replace(BREAKING_TAG, '\n')
    .replace(DRESSING_TAG, '');
}

/** Replaces entities that end in a semicolon: "&frac12;" → "½", "&#8217;" → "’". Unknown ones stay. */
export function withoutEntities(text: string): string {
  return text.replace(/&(?:#(\d{1,7})|#x([\da-f]{1,6})|(\w{2,8}));/giu, (whole, decimal, hex, name: string) => {
    if (name) return ENTITIES[name] ?? whole;
    const code = decimal ? Number(decimal) : Number.parseInt(hex, 16);
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}
