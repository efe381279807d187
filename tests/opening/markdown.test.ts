import { describe, expect, test } from 'vitest';
import { knitText } from '$lib/core/index.ts';
import { openFile } from '$lib/opening/index.ts';

async function open(markdown: string) {
  return openFile({ name: 'sock.md', bytes: new TextEncoder().encode(markdown) });
}

/** The text of a Markdown text that follows a title, without the title. */
async function below(markdown: string): Promise<string> {
  const { text } = await open(`Title\n\n${markdown}`);
  return text.replace(/^Title\n\n/u, '').replace(/\n$/u, '');
}

describe('asterisks of a repeat survive', () => {
  test.each([
    '*k2, p2; rep from * to end',
    '*K2, p2; rep from *',
    '*K2, p2* twice, k1',
    '*K2, p2*',
    '*K2, p2*, rep from * to *',
    '*k2, p2*; rep to end',
    '**k1, *p2, k2; rep from * twice; rep from ** to end',
    '**K2, p1** 3 times',
    'K2, *p2, k2* around',
    'Rnd 1: K1, *yo, k2tog; rep from * to last st, k1.',
    '* k2, p2; rep from * to end',
    '* k2, p2;\nrep from * to end',
    '* K2, p2, repeat to end',
    '*[k2, p2] (4 times), k1; rep from *'
  ])('%s', async (line) => {
    expect(await below(line)).toBe(line);
  });

  test.each([
    ['escaped', '\\*k2, p2; rep from \\* to end', '*k2, p2; rep from * to end'],
    ['in code', '`*k2, p2* twice`', '*k2, p2* twice'],
    ['as an entity', '&ast;k2, p2; rep from &ast; to end', '*k2, p2; rep from * to end'],
    ['in an item of a list', '* Rnd 2: *k2, p2; rep from * to end', 'Rnd 2: *k2, p2; rep from * to end'],
    ['in an item, escaped', '* \\*k2, p2; rep from \\*', '*k2, p2; rep from *'],
    [
      'beside emphasis',
      '**Rnd 1:** *k2, p2; rep from * to end. *(56 sts)*',
      'Rnd 1: *k2, p2; rep from * to end. (56 sts)'
    ]
  ])('%s', async (_, from, to) => {
    expect(await below(from)).toBe(to);
  });
});

describe('marks of Markdown go', () => {
  test.each([
    ['a heading', '## Cuff ##\nK2', '# Cuff\nK2'],
    ['an underlined heading', 'Cuff\n----\nK2', '# Cuff\nK2'],
    ['a bold line is a heading', 'K2.\n\n**Heel flap**\n\nP2', 'K2.\n\n# Heel flap\n\nP2'],
    ['a bold count is none', '**56 sts**', '56 sts'],
    ['bold words', '**Rnd 1:** k2, __p2__', 'Rnd 1: k2, p2'],
    ['bold and slanted words', '***Note*** for *both* socks: _take care_', 'Note for both socks: take care'],
    ['a slanted sentence', '*Knit all sts.*', 'Knit all sts.'],
    ['underscores inside a word stay', 'chart_a_b', 'chart_a_b'],
    ['items', '- Rnd 1: k\n+ Rnd 2: p\n* Rnd 3: k', 'Rnd 1: k\nRnd 2: p\nRnd 3: k'],
    ['boxes', '- [ ] Cuff done\n- [x] Leg done', 'Cuff done\nLeg done'],
    ['quotations', '> Work loosely.\n> K2', 'Work loosely.\nK2'],
    ['rules', 'K2\n\n***\n\n* * *\n\nP2', 'K2\n\nP2'],
    ['breaks', 'Rnd 1: k2<br>Rnd 2: p2\\\nRnd 3: k2  \nRnd 4: p2', 'Rnd 1: k2\nRnd 2: p2\nRnd 3: k2\nRnd 4: p2'],
    ['entities', 'k2 &amp; p2, 2&frac12;"', 'k2 & p2, 2½"'],
    [
      'links',
      'See [the key](https://pattern.example/key "Key") or <https://pattern.example>',
      'See the key or https://pattern.example'
    ],
    ['named links', 'See [the key][1].\n\n[1]: https://pattern.example/key', 'See the key.'],
    ['fences', '```text\n*k2* _p2_ &amp;\n```', '*k2* _p2_ &amp;']
  ])('%s', async (_, from, to) => {
    expect(await below(from)).toBe(to);
  });

  test.each(['[k2, p2](4 times)', '[k2, p2](twice), k1', '[k2, p2] 4 times', '48[56:64] sts', 'k2 [p2]'])(
    'brackets of a pattern are no link: %s',
    async (line) => expect(await below(line)).toBe(line)
  );

  test('what stands before the text goes, and the title has no mark', async () => {
    expect((await open('---\nauthor: nobody\n---\n\n# Harbour sock\n\n## Cuff\n')).text).toBe(
      'Harbour sock\n\n# Cuff\n'
    );
  });
});

describe('tables become lines', () => {
  test('of rows with their counts', async () => {
    const table = '| Rnd | Work | Sts |\n|:--|---|--:|\n| 1 | *K2, p2; rep from * | 56 |\n| 2-4 | **Knit** |  |';
    expect(await below(table)).toBe('Rnd 1: *K2, p2; rep from * [56 sts]\nRnds 2-4: Knit');
  });

  test('of sizes', async () => {
    const table = 'Size | S | M | L\n--- | --- | --- | ---\nCast on | 56 | 64 | 72';
    expect(await below(table)).toBe('Sizes: S (M, L)\nCast on: 56 (64, 72)');
  });

  test('of anything else', async () => {
    expect(await below('| | |\n|---|---|\n| kfb | knit front<br>and back |')).toBe('kfb: knit front and back');
  });
});

test('what is left out is told', async () => {
  const { unread } = await open('![the *leg*](leg.png)\n\nK2 ~~p3~~ p2\n\n1. K2, p2\n2. Rnd 2: k\n');
  expect(unread).toEqual([
    'The picture “the *leg*” is not read.',
    'Crossed-out words were left out: “p3”.',
    'The numbers of lists were left out; write “Rnd 1:” where they count rounds.'
  ]);
});

test('a pattern in Markdown knits like the same pattern in plain text', async () => {
  const { text } = await open(
    '# Harbour sock\n\n## Cuff\n\nCO **56 sts**. Join in the rnd.\n\n* **Rnds 1-4:** \\*K2, p2; rep from \\* to end.\n* Rnd 5: *K5, k2tog; rep from * to end. *(48 sts)*\n'
  );
  // Five rounds are told; 56 / 7 = 8 decreases leave 48, which the text says itself.
  const { fabrics, diagnostics } = knitText(text);
  expect(diagnostics).toEqual([]);
  expect(fabrics[0]!.stages.map(({ name, rows }) => [name, rows.length])).toEqual([['Cuff', 5]]);
});
