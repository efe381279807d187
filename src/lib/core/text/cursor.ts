/** A place in the tokens, and the small questions that readers ask there. A question that fails leaves the place as it was. */

import type { Span } from '../model/span.ts';
import type { Scope } from './scope.ts';
import type { Token, TokenText } from './tokens.ts';

const SEPARATORS = new Set([',', ';', '.']);

const phraseWords = new Map<string, readonly string[]>();

// Phrases are written in the source, so that this never grows with the texts that are read.
function wordsOf(phrase: string): readonly string[] {
  const known = phraseWords.get(phrase);
  if (known) return known;
  const words = phrase.split(' ');
  phraseWords.set(phrase, words);
  return words;
}

/** A cursor over a stretch of tokens. */
export class Cursor {
  /** Index of the next token. */
  at: number;

  /** @param end - Index after the last token that may be read. */
  constructor(
    readonly source: TokenText,
    readonly scope: Scope,
    readonly range: { readonly from: number; readonly end: number }
  ) {
    this.at = range.from;
  }

  /** True when every token has been read. */
  get done(): boolean {
    return this.at >= this.range.end;
  }

  /** The token so many places on, or `null` beyond the end. */
  peek(offset = 0): Token | null {
    const index = this.at + offset;
    return index >= this.range.from && index < this.range.end ? this.source.tokens[index]! : null;
  }

  /** Text of the token so many places on, "" beyond the end. */
  text(offset = 0): string {
    return this.peek(offset)?.text ?? '';
  }

  /** A cursor over an inner stretch. */
  within(from: number, end: number): Cursor {
    return new Cursor(this.source, this.scope, { from, end });
  }

  /** Runs a reader; when it gives `null`, the place and the troubles are put back. */
  attempt<T>(read: (at: this) => T | null): T | null {
    const { at, scope } = this;
    const troubles = scope.diagnostics.length;
    const result = read(this);
    if (result === null) {
      this.at = at;
      scope.forget(troubles);
    }
    return result;
  }

  /** Whether a reader would succeed here; nothing is read. */
  looksLike(read: (at: this) => unknown): boolean {
    const { at, scope } = this;
    const troubles = scope.diagnostics.length;
    const result = read(this);
    this.at = at;
    scope.forget(troubles);
    return result !== null && result !== false;
  }

  /** Takes one of these words or marks. */
  take(...texts: readonly string[]): Token | null {
    const token = this.peek();
    if (!token || !texts.includes(token.text)) return null;
    this.at += 1;
    return token;
  }

  /** Takes a phrase of several words and marks, told with blanks between: "rep from *". */
  phrase(...phrases: readonly string[]): boolean {
    return phrases.some((phrase) => this.onePhrase(wordsOf(phrase)));
  }

  private onePhrase(texts: readonly string[]): boolean {
    if (texts.some((text, offset) => this.text(offset) !== text)) return false;
    this.at += texts.length;
    return true;
  }

  /** Takes any number of these words, and tells whether there were any. */
  skip(...texts: readonly string[]): boolean {
    const before = this.at;
    while (this.take(...texts));
    return this.at > before;
  }

  /** Takes one token of a kind. */
  kind(kind: Token['kind']): Token | null {
    const token = this.peek();
    if (token?.kind !== kind) return null;
    this.at += 1;
    return token;
  }

  /** Takes a number in digits or words: 7, seven, twenty-four. */
  number(): number | null {
    const token = this.peek();
    if (!token || token.value === null || token.kind === 'ordinal') return null;
    this.at += 1;
    const unit = this.text() === '-' && token.kind === 'word' ? this.peek(1) : null;
    const isUnit = unit?.kind === 'word' && unit.value !== null && unit.value < 10 && token.value >= 20;
    if (!isUnit) return token.value;
    this.at += 2;
    return token.value + (unit.value ?? 0);
  }

  /** Takes a whole number. */
  whole(): number | null {
    return this.attempt(() => {
      const value = this.number();
      return value !== null && Number.isInteger(value) ? value : null;
    });
  }

  /** Skips commas, semicolons and full stops. */
  separators(): void {
    while (SEPARATORS.has(this.text())) this.at += 1;
  }

  /** True at the beginning, and after a full stop. */
  get atSentence(): boolean {
    if (this.at <= this.range.from) return true;
    return this.source.tokens[this.at - 1]?.text === '.';
  }

  /** True at a separator, a closing bracket, an asterisk or the end: here an instruction may stop. */
  get atStop(): boolean {
    const token = this.peek();
    return !token || SEPARATORS.has(token.text) || token.kind === 'close' || token.text === ':';
  }

  /** Index of the bracket that closes the one at the present place, or -1 when it does not close in this stretch. */
  get partner(): number {
    const partner = this.source.partners[this.at] ?? -1;
    return partner > this.at && partner < this.range.end ? partner : -1;
  }

  /** The span from a token to the one just read. */
  span(first: number): Span {
    const { tokens } = this.source;
    const from = tokens[Math.min(first, tokens.length - 1)]?.from ?? 0;
    const to = tokens[Math.max(this.at - 1, first)]?.to ?? from;
    return { from, to: Math.max(from, to) };
  }

  /** The text from a token to the one just read, as written. */
  written(first: number): string {
    const { from, to } = this.span(first);
    return this.source.text.slice(from, to);
  }
}
