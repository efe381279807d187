/** Opens what people have: plain text, Markdown, a saved web page, or the text layer of a PDF. */

import { decode, kindOf } from './bytes.ts';
import { readMarkdown } from './markdown.ts';
import { pagesToText } from './pages-to-text.ts';
import { MOST_PAGES, readPdf, type Refusal } from './pdf.ts';
import { tidyPasted, tidyPlain } from './tidy.ts';
import type { Opened, Reading } from './types.ts';

/** A file as a browser gives it, or its name and bytes. */
export type GivenFile = Blob & { readonly name: string };
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Most bytes of a file that is read. */
const MOST_BYTES = 100_000_000;

const REFUSALS: Readonly<Record<Refusal, string>> = {
  locked: 'This PDF is locked with a password. Save it without one first.',
  broken: 'This PDF is damaged and cannot be read.'
};

const NO_TEXT =
  'Nothing in this file can be read as text: its pages are pictures. Type the pattern, or paste its text.';

/** Reads a file. Never throws for what is in it: a file without readable text gives an empty text and says why. */
export async function openFile(file: GivenFile | NamedBytes): Promise<Opened> {
  const size = 'arrayBuffer' in file ? file.size : file.bytes.length;
  if (size > MOST_BYTES)
    return { ...nothing('This file is larger than 100 MB, the most that is read.'), name: file.name };
  const bytes = 'arrayBuffer' in file ? new Uint8Array(await file.arrayBuffer()) : file.bytes;
  return { ...(await read(file.name, bytes)), name: file.name };
}

async function read(name: string, bytes: Uint8Array): Promise<Reading> {
  const kind = kindOf(name, bytes);
  switch (kind.kind) {
    case 'foreign':
      return nothing(kind.because);
    case 'pdf':
      return readPages(bytes);
    case 'markdown':
      return readMarkdown(tidyPlain(decode(bytes)));
    case 'page':
      return { text: tidyPasted(decode(bytes)), unread: [] };
    case 'text':
      return { text: tidyPlain(decode(bytes)), unread: [] };
  }
}

async function readPages(bytes: Uint8Array): Promise<Reading> {
  const pdf = await readPdf(bytes);
  if (typeof pdf === 'string') return nothing(REFUSALS[pdf]);
  const { text, unread } = pagesToText(pdf.pages);
  const more = pdf.count > MOST_PAGES ? [`Only the first ${MOST_PAGES} of ${pdf.count} pages were read.`] : [];
  return { text, unread: [...(text === '' ? [NO_TEXT] : []), ...more, ...unread] };
}

function nothing(because: string): Reading {
  return { text: '', unread: [because] };
}
