/** Which kind of file a row of bytes is, and the text in it. */

/** What a file turned out to be. `foreign` is a kind that is not read, with the sentence to say so. */
export type FileKind =
  { readonly kind: 'text' | 'markdown' | 'page' | 'pdf' } | { readonly kind: 'foreign'; readonly because: string };

/** How files of other kinds begin, and what they are. */
const BEGINNINGS: readonly (readonly [string, string])[] = [
  ['PK\x03\x04', 'a word processor’s file or an archive'],
  ['\xD0\xCF\x11\xE0', 'an older word processor’s file'],
  ['{\\rtf', 'a word processor’s file'],
  ['\x89PNG', 'a picture'],
  ['\xFF\xD8\xFF', 'a picture'],
  ['GIF8', 'a picture'],
  ['RIFF', 'a picture or a recording']
];

/** Tells the kind of a file from its first bytes, then from its name. */
export function kindOf(name: string, bytes: Uint8Array): FileKind {
  const beginning = String.fromCharCode(...bytes.subarray(0, 1024));
  if (beginning.includes('%PDF-')) return { kind: 'pdf' };
  const foreign = BEGINNINGS.find(([signs]) => beginning.startsWith(signs));
  if (foreign) return refused(`This is ${foreign[1]}.`);
  if (!wideEncoding(bytes) && bytes.includes(0)) return refused('This is not a text file.');
  if (/\.(?:md|markdown|mdown)$/iu.test(name)) return { kind: 'markdown' };
  return { kind: /\.x?html?$/iu.test(name) ? 'page' : 'text' };
}

/** The text of bytes: UTF-8 or UTF-16, with or without a byte order mark, or else the older western encoding. */
export function decode(bytes: Uint8Array): string {
  const wide = wideEncoding(bytes);
  if (wide) return new TextDecoder(wide).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes).replace(/[\u0080-\u009F]/gu, westernSign);
  }
}

function refused(what: string): FileKind {
  return { kind: 'foreign', because: `${what} Save the pattern as plain text or as a PDF first.` };
}

// Some decoders leave these to the devices that they once steered.
const WESTERN = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';

function westernSign(sign: string): string {
  return WESTERN[sign.charCodeAt(0) - 0x80]!;
}

// Without a byte order mark, every other byte of a western text in UTF-16 is 0.
function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const sample = bytes.subarray(0, 512);
  if (sample.length < 4 || bytes.length % 2 === 1) return null;
  const zeros = [0, 1].map((odd) => sample.filter((byte, index) => index % 2 === odd && byte === 0).length);
  const many = sample.length * 0.35;
  if (zeros[1]! > many && zeros[0] === 0) return 'utf-16le';
  return zeros[0]! > many && zeros[1] === 0 ? 'utf-16be' : null;
}
