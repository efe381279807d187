/** Turns an SVG into PNG and PDF. The renderers are loaded only when they are used. */

import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';

const resolve = createRequire(import.meta.url).resolve;

/** Width of a PNG in pixels. */
const PNG_WIDTH = 1600;

/** Files of the drawing's typeface: resvg and pdfkit draw no text without them. */
function fontFiles(): { readonly regular: string; readonly bold: string } {
  const folder = '@expo-google-fonts/atkinson-hyperlegible';
  return {
    regular: resolve(`${folder}/400Regular/AtkinsonHyperlegible_400Regular.ttf`),
    bold: resolve(`${folder}/700Bold/AtkinsonHyperlegible_700Bold.ttf`)
  };
}

/** The picture as PNG, 1600 pixels wide. */
export async function toPng(svg: string): Promise<Uint8Array> {
  const { Resvg } = await import('@resvg/resvg-js');
  const { regular, bold } = fontFiles();
  const font = { fontFiles: [regular, bold], loadSystemFonts: false, defaultFontFamily: 'Atkinson Hyperlegible' };
  return new Resvg(svg, { fitTo: { mode: 'width', value: PNG_WIDTH }, font }).render().asPng();
}

/** The picture as one vector page of its own size, text as text. */
export async function toPdf(svg: string): Promise<Uint8Array> {
  const { default: PDFDocument } = await import('pdfkit');
  const { default: drawSvg } = await import('svg-to-pdfkit');
  const { regular, bold } = fontFiles();
  const [width, height] = sizeOf(svg);
  const page = new PDFDocument({ size: [width, height], margin: 0, font: regular });
  page.registerFont('regular', readFileSync(regular));
  page.registerFont('bold', readFileSync(bold));
  const finished = collect(page);
  drawSvg(page, svg, 0, 0, { assumePt: true, fontCallback: (_family, isBold) => (isBold ? 'bold' : 'regular') });
  page.end();
  return finished;
}

function collect(page: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((done, failed) => {
    const parts: Uint8Array[] = [];
    page.on('data', (part: Uint8Array) => parts.push(part));
    page.on('error', failed);
    page.on('end', () => done(Buffer.concat(parts)));
  });
}

function sizeOf(svg: string): [number, number] {
  const found = /viewBox="[\d.-]+ [\d.-]+ ([\d.]+) ([\d.]+)"/u.exec(svg);
  if (!found) throw new RangeError('toPdf() takes an SVG with a viewBox');
  return [Number(found[1]), Number(found[2])];
}
