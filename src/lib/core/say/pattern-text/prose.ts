/** Prose as it was written, with its sentences closed. */

/** Prose among statements: a wrapped line is one line, and the last sentence ends with a full stop. */
export function sentences(text: string): string {
  const joined = withoutDots(text)
    .replaceAll(/(?<![.!?:)\]\s])[ \t]*\r?\n[ \t]*(?=\S)/gu, ' ')
    .trim();
  return /[.!?:;,]$/u.test(joined) ? joined : `${joined}.`;
}

/** Abbreviations that older prints close with a full stop, where no sentence ends. */
const DOTTED =
  /\b([KkPp]|[Ss]l?|sts?|[Rr]ep|tog|rem|[Ii]nc|[Dd]ec|beg|foll|[Cc]ont|[Rr]nds?|patt|alt)\.(?=\s*[a-z\d([*,;])/gu;

/** The text without them: rows are written without these full stops, so that here they would end the sentence. */
export function withoutDots(text: string): string {
  return text.replaceAll(DOTTED, '$1');
}

/** Which side a sentence of prose is for, where it tells the left and the right apart. */
export function sideOf(text: string): 'left' | 'right' | null {
  const found = /(?:^|[.;,]\s+)(left|right)(?:\s+(?!needle|hand\b|side\b|ndl)\p{L}+){0,2}\s*:/iu.exec(text);
  return found ? (found[1]!.toLowerCase() as 'left' | 'right') : null;
}
