/** PDFs made here with real fonts and read back. */
import { readdirSync, readFileSync } from 'node:fs';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { openFile } from '$lib/opening/index.ts';

type Drawing = (pdf: PDFKit.PDFDocument) => void;

const DOT = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==';

async function makePdf(draw: Drawing, options: PDFKit.PDFDocumentOptions = {}): Promise<Uint8Array> {
  const pdf = new PDFDocument({ size: 'A4', margin: 60, font: 'Helvetica', ...options });
  const chunks: Buffer[] = [];
  const ended = new Promise<void>((resolve) => pdf.on('end', resolve));
  pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
  draw(pdf);
  pdf.end();
  await ended;
  return Uint8Array.from(Buffer.concat(chunks));
}

async function open(draw: Drawing, options: PDFKit.PDFDocumentOptions = {}) {
  return openFile({ name: 'sock.pdf', bytes: await makePdf(draw, options) });
}

/** Sets lines one below the other. */
function set(pdf: PDFKit.PDFDocument, lines: readonly string[], [x, y]: readonly [number, number]): void {
  pdf.font('Helvetica').fontSize(11);
  lines.forEach((line, row) => pdf.text(line, x, y + row * 15, { lineBreak: false }));
}

const CUFF = [
  'CO 56 sts and join in the round.',
  'Rnds 1-16: *K2, p2; rep from * to end.',
  'Work until it is 2½" long – don’t stop.'
];
const LEFT = [
  'Rnd 1: K to the last 3 sts, k2tog,',
  'k1. Rep-',
  'eat this rnd, and work rnds 2-',
  '16 as told for the cuff.',
  'Rnd 17: Knit all stitches.'
];
const RIGHT = [
  'Row 1 (RS): *Sl 1, k1; rep from *',
  'to the end of the row, turn.',
  'Row 2 (WS): Sl 1, p to the end.',
  'Work these 2 rows 14 times.'
];
const JOINED = [
  'Rnd 1: K to the last 3 sts, k2tog,',
  'k1. Repeat this rnd, and work rnds 2-16 as told for the cuff.',
  'Rnd 17: Knit all stitches.'
];

describe('openFile() reads a PDF', () => {
  test('in one column, with headings', async () => {
    const opened = await open((pdf) => {
      pdf.font('Helvetica-Bold').fontSize(20).text('Harbour sock', 60, 80, { lineBreak: false });
      pdf.fontSize(11).text('Ribbed part', 60, 130, { lineBreak: false });
      set(pdf, CUFF, [60, 155]);
    });
    expect(opened).toEqual({
      text: `Harbour sock\n\n# Ribbed part\n\n${CUFF.join('\n')}\n`,
      name: 'sock.pdf',
      unread: []
    });
  });

  test('in two columns on two pages, without what stands on both', async () => {
    const opened = await open((pdf) => {
      for (const number of [1, 2]) {
        if (number > 1) pdf.addPage();
        set(pdf, ['Harbour sock'], [60, 36]);
        set(pdf, LEFT, [60, 120]);
        set(pdf, RIGHT, [320, 120]);
        pdf.page.margins.bottom = 0;
        set(pdf, [`Page ${number} of 2`], [270, 800]);
      }
    });
    const page = [...JOINED, '', ...RIGHT].join('\n');
    expect(opened.text).toBe(`${page}\n\n${page}\n`);
    expect(opened.unread).toEqual([
      'Left out as titles and numbers of the pages: “Harbour sock”, “Page 1 of 2” to “Page 2 of 2”.'
    ]);
  });

  test('whose columns the printer has broken and justified', async () => {
    const words =
      'Slip the first stitch of each needle and work the others as they appear, then turn the heel around them.';
    const { text } = await open((pdf) =>
      pdf.fontSize(11).text(`${words} `.repeat(4).trim(), { columns: 2, columnGap: 24, height: 100, align: 'justify' })
    );
    expect(text.replace(/\s+/gu, ' ').trim()).toBe(`${words} `.repeat(4).trim());
  });

  test('with bold labels inside a line', async () => {
    const { text } = await open((pdf) => {
      set(pdf, CUFF.slice(0, 1), [60, 120]);
      pdf.font('Helvetica-Bold').text('Rnd 1: ', 60, 135, { continued: true }).font('Helvetica').text('K2, p2.');
    });
    expect(text).toBe(`${CUFF[0]}\nRnd 1: K2, p2.\n`);
  });

  test('and tells of pages without text', async () => {
    const { text, unread } = await open((pdf) => {
      set(pdf, CUFF, [60, 120]);
      pdf.addPage().image(Buffer.from(DOT, 'base64'), 100, 100, { width: 200 });
      pdf.addPage().rect(100, 100, 50, 50).fill();
    });
    expect(text).toBe(`${CUFF.join('\n')}\n`);
    expect(unread).toEqual(['Page 2 holds a picture without text.', 'Page 3 has no text layer.']);
  });

  test('of pictures only, and says so', async () => {
    const { text, unread } = await open((pdf) => pdf.image(Buffer.from(DOT, 'base64'), 100, 100, { width: 200 }));
    expect(text).toBe('');
    expect(unread[0]).toMatch(/^Nothing in this file can be read as text/u);
  });

  test('and leaves out what runs sideways', async () => {
    const { text, unread } = await open((pdf) => {
      set(pdf, CUFF, [60, 120]);
      pdf.rotate(90, { origin: [40, 300] }).text('Printed in summer', 40, 300, { lineBreak: false });
    });
    expect(text).toBe(`${CUFF.join('\n')}\n`);
    expect(unread).toEqual(['Text that runs sideways was left out: Page 1.']);
  });
});

describe('openFile() gives no text', () => {
  test('of a PDF that is locked', async () => {
    const { text, unread } = await open((pdf) => set(pdf, CUFF, [60, 120]), {
      userPassword: 'wool',
      pdfVersion: '1.7'
    });
    expect([text, unread]).toEqual(['', ['This PDF is locked with a password. Save it without one first.']]);
  });

  test('of a PDF that is damaged', async () => {
    const { text, unread } = await openFile({ name: 'a.pdf', bytes: new TextEncoder().encode('%PDF-1.7\nwool') });
    expect([text, unread]).toEqual(['', ['This PDF is damaged and cannot be read.']]);
  });
});

const EXAMPLES = new URL('../../static/examples/', import.meta.url);
const PRINTED = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.txt'))
  .flatMap((name) => [1, 2].map((columns) => ({ name, columns })));

test.each(PRINTED)('$name printed in columns ($columns) knits like its text', async ({ name, columns }) => {
  const typed = readFileSync(new URL(name, EXAMPLES), 'utf8');
  const printed = await open((pdf) => pdf.fontSize(10).text(typed, { columns, columnGap: 20, lineGap: 1 }));
  expect(knitted(printed.text)).toEqual(knitted(typed));
});

function knitted(text: string) {
  const { pattern, fabrics, diagnostics } = knitText(text);
  const rows = fabrics.map(({ stages }) => stages.map((stage) => stage.rows.length));
  return { stages: pattern.stages.map(({ name }) => name), rows, messages: diagnostics.map(({ code }) => code) };
}

test('openFile() leaves the bytes it is given as they are', async () => {
  const bytes = await makePdf((pdf) => set(pdf, CUFF, [60, 120]));
  const length = bytes.length;
  await openFile({ name: 'sock.pdf', bytes });
  expect(bytes.length).toBe(length);
});
