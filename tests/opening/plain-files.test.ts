import { describe, expect, test } from 'vitest';
import { openFile, tidyPasted } from '$lib/opening/index.ts';

const PATTERN = 'Harbour sock\nRnd 1: *K2, p2; rep from * to end.\nWork until 2½" – no more.\n';

async function open(bytes: readonly number[] | Uint8Array, name = 'sock.txt') {
  return openFile({ name, bytes: Uint8Array.from(bytes) });
}

/** UTF-16 of a text, low byte first or last. */
function wide(text: string, first: 'low' | 'high'): number[] {
  return [...text].flatMap((sign) => {
    const [low, high] = [sign.charCodeAt(0) & 255, sign.charCodeAt(0) >> 8];
    return first === 'low' ? [low, high] : [high, low];
  });
}

describe('openFile() reads plain text', () => {
  test.each<[string, readonly number[] | Uint8Array]>([
    ['in UTF-8', new TextEncoder().encode(PATTERN)],
    ['in UTF-8 with a byte order mark', new TextEncoder().encode(`\uFEFF${PATTERN}`)],
    ['in UTF-16 with a mark, low byte first', [0xff, 0xfe, ...wide(PATTERN, 'low')]],
    ['in UTF-16 with a mark, high byte first', [0xfe, 0xff, ...wide(PATTERN, 'high')]],
    ['in UTF-16 without a mark, low byte first', wide(PATTERN, 'low')],
    ['in UTF-16 without a mark, high byte first', wide(PATTERN, 'high')],
    ['with line ends of Windows', new TextEncoder().encode(PATTERN.replaceAll('\n', '\r\n'))],
    ['with line ends of old machines', new TextEncoder().encode(PATTERN.replaceAll('\n', '\r'))]
  ])('%s', async (_, bytes) => {
    expect(await open(bytes)).toEqual({ text: PATTERN, name: 'sock.txt', unread: [] });
  });

  test('in the older western encoding', async () => {
    expect((await open([0x32, 0xbd, 0x22, 0x20, 0x96, 0x20, 0x93, 0x6b, 0x94])).text).toBe('2½" – “k”');
  });

  test('from a file of the browser', async () => {
    expect(await openFile(new File(['k2\r\np2'], 'a.txt'))).toEqual({ text: 'k2\np2', name: 'a.txt', unread: [] });
  });

  test('with a form feed as a line end, so that a row may go on over the page', async () => {
    expect((await open(new TextEncoder().encode('K2, p2,\n\fk3.\fP1'))).text).toBe('K2, p2,\nk3.\nP1');
  });

  test('and leaves angle brackets and ampersands alone', async () => {
    expect((await open(new TextEncoder().encode('k <b> & &amp;'))).text).toBe('k <b> & &amp;');
  });

  test('that is empty', async () => {
    expect(await open([])).toEqual({ text: '', name: 'sock.txt', unread: [] });
  });
});

describe('openFile() says what it cannot read', () => {
  test.each<[string, readonly number[]]>([
    ['This is a word processor’s file or an archive.', [0x50, 0x4b, 3, 4, 20, 0]],
    ['This is a word processor’s file.', [...'{\\rtf1'].map((sign) => sign.charCodeAt(0))],
    ['This is a picture.', [0x89, 0x50, 0x4e, 0x47, 13, 10]],
    ['This is not a text file.', [1, 0, 0, 0, 7, 9, 3]]
  ])('%s', async (sentence, bytes) => {
    const { text, unread } = await open(bytes);
    expect(text).toBe('');
    expect(unread).toEqual([`${sentence} Save the pattern as plain text or as a PDF first.`]);
  });
});

test('openFile() reads a saved web page', async () => {
  const html = '<html><head><title>x</title></head><body><h1>Harbour sock</h1>\n<p>K2, p2<br>k1</p></body></html>';
  expect((await open(new TextEncoder().encode(html), 'sock.html')).text.trim()).toBe('Harbour sock\n\nK2, p2\nk1');
});

describe('tidyPasted()', () => {
  test.each([
    ['drops soft hyphens', 're\u00ADpeat', 'repeat'],
    ['joins a word at a soft hyphen that ends a line', 're\u00AD\npeat from *', 'repeat from *'],
    ['drops signs without width', 'k\u200B2, \u2060p2\uFEFF', 'k2, p2'],
    ['drops marks of writing direction', '\u200Ek2\u202A', 'k2'],
    ['keeps curly quotes, dashes and fixed blanks', '“k2\u00A0– don’t”', '“k2\u00A0– don’t”'],
    ['takes ligatures apart', 'ﬁnish oﬀ', 'finish off'],
    ['writes fractions plainly', '2¹⁄₂" and 21⁄2" and 3⁄4" and ½"', '2 1/2" and 2 1/2" and 3/4" and ½"'],
    ['keeps whole numbers before a slash sign', '15⁄16 and 10⁄4', '15/16 and 10/4'],
    ['ends lines in one way', 'k\r\np\rk\u2028p', 'k\np\nk\np'],
    ['drops blanks at line ends', 'k2, \t\np2\u00A0', 'k2,\np2'],
    ['breaks lines at tags', 'K2<br/>p2<br>\nk1</p><p class="x">P1', 'K2\np2\nk1\n\nP1'],
    ['takes tags off words', '<b>Rnd 1:</b> <span style="a">k2</span>', 'Rnd 1: k2'],
    ['reads entities', 'k2 &amp; p2 &frac12; &#189; &#xBD; &nope;', 'k2 & p2 ½ ½ ½ &nope;'],
    ['keeps what only looks like a tag', 'work <k2, p2> and 3 < 5', 'work <k2, p2> and 3 < 5'],
    ['drops scripts and comments', 'k2<!-- no --><script>alert(1)</script>, p2', 'k2, p2'],
    ['puts cells of a row behind each other', '<tr><td>Rnd 1</td><td>k2</td></tr>', '\nRnd 1 k2\n'],
    ['keeps a repeat', '*k2, p2; rep from * to end', '*k2, p2; rep from * to end']
  ])('%s', (_, from, to) => {
    expect(tidyPasted(from)).toBe(to.replace(/^\n/u, ''));
  });
});
