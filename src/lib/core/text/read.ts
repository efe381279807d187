/** Pattern text to pattern. */

import { MOST_TEXT } from '../model/limits.ts';
import type { Pattern } from '../model/pattern.ts';
import { Cursor } from './cursor.ts';
import { meantLines, type MeantLine } from './lines.ts';
import { readCastOn } from './beginnings.ts';
import { readLabel } from './labels.ts';
import { readDiagnostic } from './messages.ts';
import { Scope } from './scope.ts';
import { inferSizes, readSizesLine } from './sizes.ts';
import { StageReader } from './stages.ts';
import { tokenize, type TokenText } from './tokens.ts';

/**
 * Reads a pattern text. Never throws, whatever the text: troubles are diagnostics, and what gives no instruction is prose.
 *
 * Spans are UTF-16 code units of the text as given, half-open; lines count from 1. Time grows with the length of the text.
 */
export function readPattern(text: string): Pattern {
  if (text.length > MOST_TEXT) return refused(text);
  const source = tokenize(text);
  const scope = new Scope(findSizes(source));
  const lines = meantLines(source, scope);
  const { title, rest } = splitTitle(source, scope, lines);
  const reader = new StageReader(source, scope);
  for (const line of rest) reader.read(line);
  const { stages, introduction } = reader.finish();
  const { gauge, needles } = reader;
  const { sizes, diagnostics } = scope;
  return { title, sizes, gauge, needles, introduction, stages, diagnostics: inOrder(diagnostics) };
}

function inOrder(diagnostics: Pattern['diagnostics']): Pattern['diagnostics'] {
  return [...diagnostics].sort((left, right) => left.span.from - right.span.from);
}

function refused(text: string): Pattern {
  const facts = { expected: MOST_TEXT, found: text.length };
  return {
    title: '',
    sizes: [''],
    gauge: { stitchesPer10cm: null, rowsPer10cm: null },
    needles: { thicknessMm: null, lengthCm: null },
    introduction: [],
    stages: [],
    diagnostics: [readDiagnostic('text-too-long', { from: 0, to: text.length }, facts)]
  };
}

// The sizes must be known before any number is read, so they are looked for first.
function findSizes(source: TokenText): string[] {
  const scope = new Scope(['']);
  for (const line of source.lines) {
    const names = readSizesLine(new Cursor(source, scope, { from: line.first, end: line.end }));
    if (names) return names;
  }
  return inferSizes(source, scope);
}

// The first line is the title, unless knitting begins there.
function splitTitle(
  source: TokenText,
  scope: Scope,
  lines: readonly MeantLine[]
): { readonly title: string; readonly rest: readonly MeantLine[] } {
  const [first] = lines;
  if (!first) return { title: '', rest: [] };
  const at = new Cursor(source, scope, { from: first.first, end: first.end });
  if (at.looksLike(readLabel) || at.looksLike(readCastOn)) return { title: '', rest: lines };
  at.skip('#');
  const start = at.at;
  at.at = first.end;
  const title = at.at > start ? at.written(start).replace(/\s*:$/u, '').trim() : '';
  return { title, rest: lines.slice(1) };
}
