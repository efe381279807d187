import { describe, expect, test } from 'vitest';
import { pagesToText, type Item, type Page } from '$lib/opening/index.ts';
import { lines, page, piece } from './layout.ts';

function textOf(...items: readonly (Item | readonly Item[])[]): string {
  return pagesToText([page(...items)]).text;
}

const LEFT = [
  'Rnd 1: Knit all stitches.',
  'Rnd 2: *K2, p2; repeat from',
  '* to the end of the round.',
  'Rnd 3: Knit all stitches.'
];
const RIGHT = [
  'Work as for the left sock',
  'until the heel is turned,',
  'then pick up 14 stitches',
  'along the edge of the flap.'
];

describe('lines', () => {
  test('are put together from pieces in any order', () => {
    expect(textOf(lines(['K2, p2, k2', 'p2, k2']).toReversed())).toBe('K2, p2, k2\np2, k2\n');
  });

  test('pieces that touch are one word', () => {
    expect(textOf(piece('k2', { x: 50 }), piece('tog', { x: 60 }))).toBe('k2tog\n');
  });

  test('a blank that is printed counts, however narrow', () => {
    const blank = { ...piece(' ', { x: 60 }), width: 0.5 };
    expect(textOf(piece('k2', { x: 50 }), blank, piece('p2', { x: 60.5 }))).toBe('k2 p2\n');
  });

  test('baselines may differ a little', () => {
    expect(textOf(piece('k2,', { y: 200 }), piece('p2', { x: 70, y: 201.5 }))).toBe('k2, p2\n');
  });

  test('what is printed twice to look bold is read once', () => {
    expect(textOf(piece('k2', { x: 50 }), piece('k2', { x: 50.4 }))).toBe('k2\n');
  });

  test('ligatures and odd blanks are written plainly', () => {
    expect(textOf(piece('ﬁnish\u2009oﬀ\u00A0the\u200B ﬂap'))).toBe('finish off the flap\n');
  });

  test('a small fraction is a fraction', () => {
    const small = [piece('1', { x: 56, y: 196, fontSize: 6 }), piece('⁄', { x: 59, y: 199, fontSize: 6 })];
    const half = [...small, piece('2', { x: 62, y: 201, fontSize: 6 })];
    expect(textOf(piece('2'), half, piece('cm', { x: 68 }))).toBe('2 1/2 cm\n');
  });

  test('a fraction behind a whole number stays apart from it', () => {
    expect(textOf(piece('2'), piece('1/2', { x: 55, fontSize: 7 }))).toBe('2 1/2\n');
  });

  test('a small high figure stays apart from the stitches', () => {
    expect(textOf(piece('k2'), piece('1', { x: 60, y: 196, fontSize: 6 }))).toBe('k2¹\n');
  });

  test('a wide gap parts cells', () => {
    expect(textOf(piece('Cast on'), piece('56', { x: 200 }))).toBe('Cast on   56\n');
  });
});

describe('paragraphs', () => {
  test('begin after a larger distance', () => {
    expect(textOf(lines(['k2,', 'p2', '', 'k3,', 'p3']))).toBe('k2,\np2\n\nk3,\np3\n');
  });

  test('broken words are joined', () => {
    expect(textOf(lines(['Rep-', 'eat rnds 1-', '16 once.']))).toBe('Repeat rnds 1-16 once.\n');
  });

  test('a line goes on before a capital when the word did not fit', () => {
    const column = ['*K2, p2; rep from * to last 4 sts, then', 'K2tog, k2.', 'Knit 2 rounds.', 'Rnd 5: Purl.'];
    expect(textOf(lines(column))).toBe(`${column[0]} K2tog, k2.\nKnit 2 rounds.\nRnd 5: Purl.\n`);
  });

  test('a row that is told part by part goes on with its next part', () => {
    const column = [
      'Rnd 1: Front: k1, ssk, k to last 3 sts.',
      'Back: k1, ssk, k to end.',
      'Rnd 2: Knit.',
      'Note: Take care.'
    ];
    expect(textOf(lines(column))).toBe(`${column[0]} ${column.slice(1).join('\n')}\n`);
  });

  test('a line that fills half the column does not, however long the next word is', () => {
    const column = ['Yarn of two hundred metres, two.', 'Needles of 2.5 mm,', 'Circumferences of 20 cm', 'Markers'];
    expect(textOf(lines(column))).toBe(`${column.join('\n')}\n`);
  });

  test('a short line does not', () => {
    const column = ['*K2, p2; rep from * to last 4 sts, then k', 'k2tog,', 'K2.', 'Rnd 5: Purl.'];
    expect(textOf(lines(column))).toBe(`${column.join('\n')}\n`);
  });
});

describe('headings', () => {
  const body = ['CO 56 sts and join in the round.', 'Rnd 1: Knit all stitches.'];

  test.each([
    ['larger letters', { fontSize: 14 }],
    ['bold letters', { bold: true }]
  ])('%s', (_, dress) => {
    const items = [lines(['Harbour sock'], { y: 150, fontSize: 20 }), lines(['Cuff part'], { y: 180, ...dress })];
    expect(textOf(items.flat(), lines(body, { y: 196 }))).toBe(`Harbour sock\n\n# Cuff part\n\n${body.join('\n')}\n`);
  });

  test.each(['Rnd 1: K2', 'Rnd 1', 'Knit 5 rounds', '56 sts', '*K2, p2*', 'Knit to the end.'])(
    'a bold instruction is none: %s',
    (bold) => {
      const items = lines([bold], { y: 213, bold: true });
      expect(textOf(lines(['Harbour sock']), items, lines(body, { y: 226 }))).not.toContain('#');
    }
  );

  test('a large heading of two lines is one', () => {
    const items = lines(['Heel turn and', 'gusset'], { y: 240, fontSize: 14 });
    expect(textOf(lines(body), items, lines(body, { y: 290 }))).toContain('\n\n# Heel turn and gusset\n\n');
  });

  test('bold tells nothing where all is bold', () => {
    expect(textOf(lines(['Harbour', 'Knit all', 'Purl all'], { bold: true }))).toBe('Harbour\nKnit all\nPurl all\n');
  });
});

describe('columns', () => {
  test('are read one after the other', () => {
    const { text } = pagesToText([page(lines(LEFT), lines(RIGHT, { x: 320 }))]);
    expect(text).toBe(`${LEFT.join('\n')}\n\n${RIGHT.join('\n')}\n`);
  });

  test('their baselines need not agree', () => {
    const { text } = pagesToText([page(lines(LEFT), lines(RIGHT, { x: 320, y: 206 }))]);
    expect(text).toBe(`${LEFT.join('\n')}\n\n${RIGHT.join('\n')}\n`);
  });

  test('what runs across parts them', () => {
    const across = 'The second sock is worked like the first one, but with the heel on the other needles.';
    const items = [lines(LEFT), lines(RIGHT, { x: 320 }), lines([across], { y: 280 })];
    const below = [lines(LEFT, { y: 320 }), lines(RIGHT, { x: 320, y: 320 })];
    const once = [...LEFT, '', ...RIGHT, ''];
    const { text } = pagesToText([page(...items, ...below)]);
    expect(text).toBe(`${[...once, across, '', ...once].join('\n').trimEnd()}\n`);
  });

  test('there may be three', () => {
    const [a, b, c] = [LEFT, RIGHT, LEFT].map((column) => column.map((line) => line.slice(0, 24)));
    const { text } = pagesToText([page(lines(a!), lines(b!, { x: 230 }), lines(c!, { x: 410 }))]);
    expect(text.split('\n').filter((line) => line !== '')).toEqual([...a!, ...b!, ...c!].map((line) => line.trim()));
  });

  test('a last page with one line in its second column has them too', () => {
    const full = page(lines(LEFT), lines(RIGHT, { x: 320 }));
    const last = page(lines(LEFT), lines(['Fasten off.'], { x: 320 }));
    expect(pagesToText([full, last]).text).toMatch(/Rnd 3: Knit all stitches\.\n\nFasten off\.\n$/u);
  });

  test('a table of figures has none', () => {
    const sizes = ['S', '18 cm', '56 sts', '22 cm'];
    const names = ['Size', 'Circumference', 'Cast on', 'Length of the foot'];
    expect(textOf(lines(names), lines(sizes, { x: 320 }))).toBe(
      'Size   S\nCircumference   18 cm\nCast on   56 sts\nLength of the foot   22 cm\n'
    );
  });
});

describe('running lines', () => {
  const header = (number: number) => [piece('Harbour sock', { y: 40 }), piece(`Page ${number}`, { x: 500, y: 40 })];
  const pages = [1, 2, 3].map((number) =>
    page(header(number), lines(LEFT, { y: 90 }), piece('knit.example', { x: 270, y: 770 }))
  );

  test('are left out and told', () => {
    const { text, unread } = pagesToText(pages);
    expect(text).toBe(`${[...LEFT, '', ...LEFT, '', ...LEFT].join('\n')}\n`);
    expect(unread).toEqual([
      'Left out as titles and numbers of the pages: “Harbour sock   Page 1” to “Harbour sock   Page 3”, “knit.example”.'
    ]);
  });

  test('may change sides from page to page', () => {
    const sides = [piece('Harbour sock', { x: 50, y: 40 }), piece('Harbour sock', { x: 490, y: 40 })];
    expect(pagesToText(sides.map((side) => page(side, lines(LEFT, { y: 90 })))).text).not.toContain('Harbour');
  });

  test('a number at the edge is one, even on a single page', () => {
    expect(pagesToText([page(lines(LEFT), piece('- 3 -', { x: 290, y: 770 }))]).text).toBe(`${LEFT.join('\n')}\n`);
  });

  test.each([
    ['rounds at the same place', [piece('Rnd 1: Knit.', { y: 40 })], [piece('Rnd 9: Knit.', { y: 40 })]],
    ['what stands at another place', [piece('Harbour', { y: 40 })], [piece('Harbour', { y: 80 })]],
    ['what stands close to the text', [piece('Harbour', { y: 78 })], [piece('Harbour', { y: 78 })]],
    ['what stands within the page', [piece('Harbour', { y: 400 })], [piece('Harbour', { y: 400 })]],
    ['what is on one page only', [piece('Harbour', { y: 40 })], []]
  ])('%s: none', (_, first, second) => {
    const { text, unread } = pagesToText([first, second].map((edge) => page(edge, lines(LEFT, { y: 90 }))));
    const kept = [...first, ...second].map((item) => item.text);
    for (const line of kept)
      expect(text.split('\n').filter((told) => told.includes(line.slice(0, 5))).length).toBeGreaterThan(0);
    expect(unread).toEqual([]);
  });
});

describe('what is unread', () => {
  const text = lines(['K2']);
  test.each<[string, readonly Partial<Page>[]]>([
    ['Page 2 holds a picture without text.', [{ items: text }, { pictures: 1 }]],
    ['Pages 1 and 3 hold pictures without text.', [{ pictures: 1 }, { items: text }, { pictures: 2 }]],
    ['Page 3 has no text layer.', [{ items: text }, { items: text }, {}]],
    ['Text that runs sideways was left out: Page 1.', [{ items: text, sideways: 3 }]],
    [
      'Page 1 also holds pictures; what is drawn in them, such as a chart, is not read.',
      [{ items: text, pictures: 1 }]
    ],
    ['Signs of a font of its own cannot be read and stand as “\uFFFD”: Page 1.', [{ items: lines(['K2 \uE012']) }]]
  ])('%s', (sentence, pages) => {
    expect(pagesToText(pages.map((given) => ({ ...page(), ...given }))).unread).toEqual([sentence]);
  });

  test('nothing, where there is nothing', () => {
    expect(pagesToText([])).toEqual({ text: '', unread: [] });
  });
});
