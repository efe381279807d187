/** The text as a list of tokens: words, numbers, brackets and marks, each with its place, whatever signs were typed for them. */

import type { SyntaxNodeRef } from '@lezer/common';
import { patternLanguage } from './language.ts';
import { digitsValue, ordinalValue, wordValue } from './numbers.ts';

/** What a token is. An ordinal is "first" or "3rd"; a mark is any sign that is no bracket and no asterisk. */
export type TokenKind = 'word' | 'number' | 'ordinal' | 'open' | 'close' | 'asterisk' | 'mark';

/** One token. Places are UTF-16 code units of the original text, half-open. */
export interface Token {
  readonly kind: TokenKind;
  /** In small letters, with plain quotes, hyphens and "x" for the signs printers use. */
  readonly text: string;
  readonly from: number;
  readonly to: number;
  /** What a number, a number word or an ordinal counts; `null` for everything else. */
  readonly value: number | null;
  /** True when nothing stands between this token and the one before. */
  readonly glued: boolean;
  /** True when the word begins with a capital. */
  readonly capital: boolean;
  /** True for a long dash, which is read like a hyphen. */
  readonly isDash: boolean;
}

/** A printed line. */
export interface Line {
  readonly from: number;
  readonly to: number;
  /** Index of its first token, and the index after its last. */
  readonly first: number;
  readonly end: number;
  /** From 1. */
  readonly number: number;
}

/** A text in tokens. */
export interface TokenText {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly lines: readonly Line[];
  /** For each token, the index of the bracket that closes or opens it, or -1. */
  readonly partners: readonly number[];
}

const KINDS: Readonly<Record<string, TokenKind>> = {
  Number: 'number',
  Open: 'open',
  Close: 'close',
  Asterisk: 'asterisk',
  Mark: 'mark'
};

const SIGNS: Readonly<Record<string, string>> = {
  '–': '-',
  '—': '-',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '‒': '-',
  '×': 'x',
  '“': '"',
  '”': '"',
  '″': '"',
  '‘': "'",
  '’': "'",
  '′': "'",
  '{': '(',
  '}': ')'
};

/** What letters look like after scanning: read by machine from paper in stored copies of printed lists (standards A12). */
const MISREAD: Readonly<Record<string, string>> = { foil: 'foll', si: 'sl' };

/** Splits a text into lines of tokens. Never fails; signs that mean nothing become marks. */
export function tokenize(text: string): TokenText {
  const tokens: Token[] = [];
  const lines: Line[] = [];
  let end = -1;
  patternLanguage.parse(text).iterate({
    enter: (node) => {
      if (node.name === 'Line') return startLine(text, node, { lines, first: tokens.length });
      if (node.name === 'PatternText') return true;
      if (node.type.isError) return false;
      for (const token of split(text, node, end)) add(tokens, token);
      end = node.to;
      return false;
    },
    leave: (node) => {
      const last = lines.at(-1);
      if (node.name === 'Line' && last) lines[lines.length - 1] = { ...last, end: tokens.length };
    }
  });
  return withPartners(text, isDotted(text) ? withoutDots(tokens, lines) : { tokens, lines });
}

function withPartners(
  text: string,
  { tokens, lines }: { readonly tokens: readonly Token[]; readonly lines: readonly Line[] }
): TokenText {
  return { text, tokens, lines: withNumbers(text, lines), partners: findPartners(tokens) };
}

// "K. 2, p. 2" is the style of the text when most stitches are written so; else a full stop ends the row: "K. 64 sts."
function isDotted(text: string): boolean {
  const dotted = text.match(/\b[kp]\.\s?\d/giu)?.length ?? 0;
  const plain = text.match(/\b[kp]\s?\d/giu)?.length ?? 0;
  return dotted > 2 && dotted > plain;
}

/** Words that a dotted style shortens with a full stop. */
const DOTTED = new Set([
  ...[
    'k',
    'p',
    's',
    'o',
    'n',
    'sl',
    'st',
    'sts',
    'rep',
    'tog',
    'rem',
    'inc',
    'dec',
    'beg',
    'foll',
    'cont',
    'rnd',
    'rnds'
  ],
  ...[
    'patt',
    'alt',
    'no',
    'nos',
    'ndl',
    'ndls',
    'ins',
    'in',
    'oz',
    'mm',
    'cm',
    'tbl',
    'psso',
    'skpo',
    'approx',
    'pwise',
    'kwise'
  ]
]);

// The full stop of an abbreviation goes, unless a sentence ends with it: a capital follows, or nothing on the line.
function withoutDots(
  tokens: readonly Token[],
  lines: readonly Line[]
): { readonly tokens: Token[]; readonly lines: Line[] } {
  const ends = new Set(lines.map(({ end }) => end - 1));
  const isDot = (token: Token, index: number) =>
    token.text === '.' &&
    token.glued &&
    DOTTED.has(tokens[index - 1]?.text ?? '') &&
    !endsSentence(tokens, index, ends);
  const kept = tokens.map((token, index) => !isDot(token, index));
  const before = [0];
  for (const keep of kept) before.push(before.at(-1)! + (keep ? 1 : 0));
  return {
    tokens: tokens.filter((_, index) => kept[index]),
    lines: lines.map((line) => ({ ...line, first: before[line.first]!, end: before[line.end]! }))
  };
}

function endsSentence(tokens: readonly Token[], index: number, ends: ReadonlySet<number>): boolean {
  const next = tokens[index + 1];
  const isStitch = /^[kps]$/u.test(tokens[index - 1]!.text);
  if (ends.has(index)) return !next || next.capital || next.kind === 'ordinal';
  return (isStitch && next?.kind === 'ordinal') || (next?.kind === 'word' && next.capital);
}

function startLine(text: string, node: SyntaxNodeRef, at: { readonly lines: Line[]; readonly first: number }): boolean {
  at.lines.push({ from: node.from, to: node.to, first: at.first, end: at.first, number: 0 });
  return true;
}

function withNumbers(text: string, lines: readonly Line[]): Line[] {
  let at = 0;
  let number = 1;
  return lines.map((line) => {
    for (; at < line.from; at += 1) {
      const sign = text[at];
      if (sign === '\n' || (sign === '\r' && text[at + 1] !== '\n')) number += 1;
    }
    return { ...line, number };
  });
}

// "k2tog" is told apart into k, 2 and tog, so that "k 2 tog" and "k2 tog" are the same.
function split(text: string, node: SyntaxNodeRef, end: number): Token[] {
  const raw = text.slice(node.from, node.to);
  const kind = KINDS[node.name];
  if (kind && kind !== 'mark') return [make(kind, raw, { from: node.from, glued: node.from === end })];
  if (kind === 'mark') return [mark(raw, node.from, node.from === end)];
  const parts: Token[] = [];
  for (const part of raw.matchAll(/\d+|\D+/gu)) {
    const from = node.from + part.index;
    const glued = part.index > 0 || node.from === end;
    const digits = /^\d/u.test(part[0]);
    parts.push(make(digits ? 'number' : 'word', part[0], { from, glued }));
  }
  return parts;
}

// "3rd" is one ordinal, not three stitches of a kind; ".—" behind a heading is the colon of older prints.
function add(tokens: Token[], token: Token): void {
  const last = tokens.at(-1);
  if (last?.text === '.' && token.glued && token.text === '-' && token.isDash) {
    tokens[tokens.length - 1] = { ...last, text: ':', to: token.to };
    return;
  }
  if (last?.kind === 'number' && token.glued && /^(?:st|nd|rd|th)$/u.test(token.text)) {
    tokens[tokens.length - 1] = { ...last, kind: 'ordinal', text: `${last.text}${token.text}`, to: token.to };
  } else tokens.push(token);
}

function mark(raw: string, from: number, glued: boolean): Token {
  const sign = SIGNS[raw] ?? raw;
  const token = make(sign === 'x' ? 'word' : 'mark', sign, { from, glued, length: raw.length });
  return { ...token, isDash: raw === '—' || raw === '–' };
}

function make(
  kind: TokenKind,
  raw: string,
  at: { readonly from: number; readonly glued: boolean; readonly length?: number }
): Token {
  const text = kind === 'word' ? wordText(raw) : (SIGNS[raw] ?? raw);
  const ordinal = kind === 'word' ? ordinalValue(text) : null;
  return {
    kind: ordinal === null ? kind : 'ordinal',
    text,
    from: at.from,
    to: at.from + (at.length ?? raw.length),
    value: kind === 'number' ? digitsValue(raw) : kind === 'word' ? (ordinal ?? wordValue(text)) : null,
    glued: at.glued,
    capital: /^\p{Lu}/u.test(raw),
    isDash: false
  };
}

/** Words of older prints for which there is a plainer one. */
const OLD_WORDS: Readonly<Record<string, string>> = { upon: 'on', backwards: 'back', forwards: 'forth' };

function wordText(raw: string): string {
  const text = raw.normalize('NFKC').replaceAll('’', "'").toLowerCase();
  return MISREAD[text] ?? OLD_WORDS[text] ?? text;
}

function findPartners(tokens: readonly Token[]): number[] {
  const partners = new Array<number>(tokens.length).fill(-1);
  const open: number[] = [];
  tokens.forEach((token, index) => {
    if (token.kind === 'open') open.push(index);
    if (token.kind !== 'close') return;
    const from = open.at(-1);
    if (from === undefined || !closes(tokens[from]!.text, token.text)) return;
    open.pop();
    partners[from] = index;
    partners[index] = from;
  });
  return partners;
}

function closes(opening: string, closing: string): boolean {
  return (opening === '[') === (closing === ']');
}
