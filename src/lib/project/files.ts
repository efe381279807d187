/** Texts that come from outside, and saving the pattern as a file. */

import { MOST_TEXT } from '$lib/core/index.ts';

/** Most bytes of a file that is opened: pages with pictures are larger than their text. */
const MOST_BYTES = 60_000_000;

/** The text of a file, or why it is not taken. */
export type FileOutcome =
  { readonly kind: 'text'; readonly text: string } | { readonly kind: 'refused'; readonly because: string };

/** Said when a text is longer than what is read. */
export const TOO_LONG = `This text is longer than ${MOST_TEXT.toLocaleString('en')} characters, the most that is read. The pattern that was open is unchanged.`;

/** Whether a file is larger than any pattern, even as a PDF with pictures. */
export function isTooLarge(file: Blob): boolean {
  return file.size > MOST_BYTES;
}

/** Takes a text that came from outside, with the line ends and blanks of this program. */
export function acceptText(raw: string): FileOutcome {
  const text = raw.replace(/^\uFEFF/u, '').replace(/\r\n?/gu, '\n');
  return text.length > MOST_TEXT ? { kind: 'refused', because: TOO_LONG } : { kind: 'text', text };
}

/** A file name from the title of a pattern: "Harbour Steps sock" → "harbour-steps-sock.txt". */
export function fileName(title: string): string {
  const words = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .match(/[\p{Letter}\p{Number}]+/gu);
  return `${(words ?? ['pattern']).join('-').slice(0, 80)}.txt`;
}

/** Hands a text to the browser to be saved as a file. */
export function saveTextFile(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/plain;charset=utf-8' }));
  const link = Object.assign(document.createElement('a'), { href: address, download: name });
  link.click();
  URL.revokeObjectURL(address);
}
