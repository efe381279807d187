import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { READ_MESSAGES } from '$lib/core/text/messages.ts';
import { readPattern } from '$lib/core/text/read.ts';
import { frame } from './frame.ts';

const samples = new URL('./samples/', import.meta.url);
const names = readdirSync(samples);
const read = (name: string, file: string) => readFileSync(new URL(`${name}/${file}`, samples), 'utf8');

test('frame() marks the place in its line', () => {
  const diagnostic = {
    severity: 'warning',
    code: 'some-code',
    span: { from: 7, to: 10 },
    message: 'No.',
    remedy: 'Do.'
  } as const;
  expect(frame('one\nk2 foo\n', { ...diagnostic, expected: null, found: null, sizes: [] })).toBe(
    'warning[some-code] No.\n  2 | k2 foo\n    |    ^^^\n  Do.'
  );
});

// The expected messages were written by hand: one mistake, one message, with the place and a remedy.
describe('readPattern() tells of each mistake once', () => {
  test.each(names)('samples/%s', (name) => {
    const text = read(name, 'input.txt');
    const frames = readPattern(text).diagnostics.map((diagnostic) => frame(text, diagnostic));
    expect(`${frames.join('\n\n')}\n`).toBe(read(name, 'expected.txt'));
  });

  test('groups that lie too deep are told', () => {
    const deep = `${'['.repeat(14)}k1${'] twice'.repeat(14)}`;
    const { diagnostics } = readPattern(`Example\n\nLEG\nRnd 1: ${deep}.`);
    expect(diagnostics.map(({ code }) => code)).toEqual(['too-deep']);
  });

  test('every message has a sample or a test of its own', () => {
    const told = names.flatMap((name) =>
      [...read(name, 'expected.txt').matchAll(/^\w+\[([\w-]+)\]/gmu)].map(([, code]) => code)
    );
    const elsewhere = ['text-too-long', 'too-deep'];
    expect(Object.keys(READ_MESSAGES).filter((code) => !told.includes(code) && !elsewhere.includes(code))).toEqual([]);
  });
});
