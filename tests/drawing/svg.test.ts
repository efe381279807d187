import { describe, expect, test } from 'vitest';
import { between, drawMoment, SETUP_IDS, type Picture } from '$lib/core/index.ts';
import { svgText } from '$lib/drawing/render.ts';
import { momentOf, type MomentPlan } from '../support/moments.ts';

function drawn(plan: MomentPlan): Picture {
  return drawMoment(momentOf(plan), { mirrored: false, theme: 'light' });
}

/** Complains about the first thing that is not well-formed XML; `null` when all is. */
function trouble(xml: string): string | null {
  const open: string[] = [];
  const pieces = xml.matchAll(
    /<(?<close>\/?)(?<name>[\w:]+)(?<rest>(?:\s+[\w:-]+="[^"<]*")*)\s*(?<alone>\/?)>|(?<text>[^<]+)|(?<bad><)/gu
  );
  for (const { groups } of pieces) {
    if (groups!['bad']) return 'a stray <';
    const words = `${groups!['text'] ?? ''}${groups!['rest'] ?? ''}`;
    if (/&(?!(?:amp|lt|gt|quot|#\d+);)/u.test(words)) return `a bare & in ${words}`;
    const names = [...(groups!['rest'] ?? '').matchAll(/([\w:-]+)=/gu)].map((match) => match[1]);
    if (new Set(names).size < names.length) return `an attribute twice in ${groups!['name']}`;
    if (groups!['close']) {
      if (open.pop() !== groups!['name']) return `</${groups!['name']}> closes nothing`;
    } else if (groups!['name'] && !groups!['alone']) open.push(groups!['name']);
  }
  return open.length > 0 ? `<${open.at(-1)}> is left open` : null;
}

const NASTY: MomentPlan = {
  setup: 'dpn-5',
  loads: [9, 9, 9, 9],
  sections: '<b>"heel" & toe\'s 18, --><script> 18',
  markers: 'a&b 3, <m> 6, é編 12',
  stage: '<!-- & -->',
  row: '"Rnd 1"'
};

describe.each(SETUP_IDS)('svgText() on %s', (setup) => {
  const picture = drawn({
    setup,
    loads: setup === 'short-circular' ? [20] : [10, 10],
    faces: 'kpswdx',
    markers: 'm1 4, *m2 7'
  });

  test('is well-formed, with a namespace, and holds only numbers that are numbers', () => {
    const svg = svgText(picture);
    expect(trouble(svg)).toBeNull();
    expect(svg.slice(0, 200)).toMatch(
      /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" viewBox="0 0 [\d.]+ [\d.]+" role="img"/u
    );
    expect(/undefined|NaN|Infinity|null|\d[eE]-\d|<!--/u.exec(svg)?.[0]).toBeUndefined();
  });

  test('is the same every time', () => {
    expect(svgText(picture) === svgText(picture)).toBe(true);
  });

  test('uses only what every renderer understands', () => {
    const svg = svgText(picture);
    expect(/ style=| class=|var\(|oklch|hsl\(|filter|paint-order|vector-effect/u.exec(svg)?.[0]).toBeUndefined();
    expect([...svg.matchAll(/(?:fill|stroke)="([^"]+)"/gu)].map((match) => match[1]).every(isColour)).toBe(true);
    expect(/\d\.\d{4}/u.exec(svg)?.[0]).toBeUndefined();
  });

  test('gives no id twice, and puts the prefix before every one', () => {
    const ids = [...svgText(picture, { idPrefix: 'one-' }).matchAll(/ id="([^"]+)"/gu)].map((match) => match[1]!);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => id.startsWith('one-'))).toBe(true);
  });
});

function isColour(value: string | undefined): boolean {
  return value === 'none' || /^#[0-9a-f]{6}$/u.test(value ?? '');
}

test('svgText() escapes whatever the pattern calls things', () => {
  const svg = svgText(drawn(NASTY), { title: 'a <title> & "more"' });
  expect(trouble(svg)).toBeNull();
  expect(/<script|<b>|<m>/u.exec(svg)?.[0]).toBeUndefined();
  expect(svg.includes('a &lt;title> &amp; "more"')).toBe(true);
});

test('svgText() draws a picture on its way', () => {
  const from = drawn({ setup: 'dpn-5', loads: [9, 9, 9, 9] });
  const to = drawn({ setup: 'magic-loop', loads: [18, 18] });
  const svg = svgText(between(from, to, 0.5));
  expect(trouble(svg)).toBeNull();
  expect(svg.includes('opacity="0.5"')).toBe(true);
});

test('svgText() says what is to be seen', () => {
  const svg = svgText(drawn({ setup: 'dpn-5', loads: [9, 9, 9, 9], stage: 'Leg', row: 'Rnd 3' }));
  expect(svg.includes('>Leg, Rnd 3: set of five double-pointed needles</title>')).toBe(true);
  expect(svg.includes('N1, needle A, feeding, 9 stitches.')).toBe(true);
});
