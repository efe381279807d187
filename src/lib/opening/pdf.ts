/** The pages of a PDF, with the text layer that stands on them. */

import type { PDFPageProxy } from 'pdfjs-dist';
import type { TextItem } from 'pdfjs-dist/types/src/display/api.js';
import type { Item, Page } from './types.ts';

type Reader = typeof import('pdfjs-dist/legacy/build/pdf.mjs');

/** Why a PDF gives no pages. */
export type Refusal = 'locked' | 'broken';

/** Most pages that are read. */
export const MOST_PAGES = 200;

/** The pages of a PDF in order, at most `MOST_PAGES`, and how many there are; or why there are none. The bytes are kept. */
export async function readPdf(
  bytes: Uint8Array
): Promise<{ readonly pages: readonly Page[]; readonly count: number } | Refusal> {
  const reader = await loadReader();
  // The reader takes the bytes away from whoever gives them.
  const loading = reader.getDocument({ data: bytes.slice(), disableFontFace: true, verbosity: 0 });
  try {
    const document = await loading.promise;
    const pages: Page[] = [];
    for (let number = 1; number <= Math.min(document.numPages, MOST_PAGES); number += 1) {
      pages.push(await readPage(await document.getPage(number), reader));
    }
    return { pages, count: document.numPages };
  } catch (error) {
    return error instanceof Error && error.name === 'PasswordException' ? 'locked' : 'broken';
  } finally {
    await loading.destroy();
  }
}

// The reader is large: it is fetched when the first PDF is opened. Node runs its worker by itself.
async function loadReader(): Promise<Reader> {
  const reader = await import('pdfjs-dist/legacy/build/pdf.mjs');
  if (typeof Worker === 'function') {
    const worker = await import('pdfjs-dist/legacy/build/pdf.worker.min.mjs?url');
    reader.GlobalWorkerOptions.workerSrc = worker.default;
  }
  return reader;
}

async function readPage(page: PDFPageProxy, reader: Reader): Promise<Page> {
  const { width, height, transform } = page.getViewport({ scale: 1 });
  const content = await page.getTextContent();
  const pictures = await countPictures(page, reader);
  const pieces = content.items.filter((item): item is TextItem => 'str' in item && item.str !== '');
  const placed = pieces.map((piece) => ({ piece, at: reader.Util.transform(transform, piece.transform) as number[] }));
  const upright = placed.filter(({ at }) => isUpright(at));
  return {
    width,
    height,
    items: upright.map(({ piece, at }) => toItem(piece, at, isBold(page, piece.fontName))),
    pictures,
    sideways: placed.filter(({ piece, at }) => !isUpright(at) && piece.str.trim() !== '').length
  };
}

function toItem(piece: TextItem, at: readonly number[], bold: boolean): Item {
  const fontSize = Math.hypot(at[2]!, at[3]!);
  return { text: piece.str, x: at[4]!, y: at[5]!, width: piece.width, height: piece.height, fontSize, bold };
}

function isUpright([a, b]: readonly number[]): boolean {
  return a! > 0 && Math.abs(b!) < 0.1 * a!;
}

// Also makes the names of the fonts known. A page whose drawing is broken still has its text.
async function countPictures(page: PDFPageProxy, { OPS }: Reader): Promise<number> {
  const painting = new Set<number>([OPS.paintImageXObject, OPS.paintInlineImageXObject, OPS.paintImageMaskXObject]);
  try {
    const { fnArray } = await page.getOperatorList();
    return fnArray.filter((step) => painting.has(step)).length;
  } catch {
    return 0;
  }
}

function isBold(page: PDFPageProxy, fontName: string): boolean {
  if (!page.commonObjs.has(fontName)) return false;
  const font = page.commonObjs.get(fontName) as {
    readonly name?: string;
    readonly bold?: boolean;
    readonly black?: boolean;
  };
  return font.bold === true || font.black === true || /bold|black|heavy/iu.test(font.name ?? '');
}
