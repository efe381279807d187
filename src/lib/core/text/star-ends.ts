/** Where a repeat that begins with an asterisk ends: at "rep from *", at another asterisk, or nowhere. */

import type { Cursor } from './cursor.ts';

/** Words that repeat. */
export const REPEAT = ['rep', 'repeat', 'rpt', 'repeating'];

/** How an asterisk group ends: with "rep from *", with another asterisk, or not at all. */
export interface StarEnd {
  readonly kind: 'repeat' | 'star' | 'none';
  /** Index after the last token of the body. */
  readonly end: number;
  /** Index of the first token that tells how often. */
  readonly after: number;
}

/** Finds the end of the group whose asterisk stands at the cursor. */
export function findStarEnd(at: Cursor): StarEnd {
  const { tokens } = at.source;
  const sign = at.text();
  for (let index = at.at + 1; index < at.range.end; index += 1) {
    if (tokens[index]!.text !== sign) continue;
    const verb = repeatVerb(at, index);
    if (verb < 0) return { kind: 'star', end: index, after: index + 1 };
    return upToSecond(at, { verb, star: index }) ?? { kind: 'repeat', end: verb, after: index + 1 };
  }
  return { kind: 'none', ...endOfSentence(at) };
}

// Index of "rep" in "rep from *" whose asterisk stands at the index, or -1.
function repeatVerb(at: Cursor, index: number): number {
  const { tokens } = at.source;
  for (let back = index - 1; back >= Math.max(index - 4, at.at + 1); back -= 1) {
    if (REPEAT.includes(tokens[back]!.text)) return back;
  }
  return tokens[index - 1]?.text === 'from' ? index - 1 : -1;
}

// "*k1, k2tog; ** rep from * to **": the body goes up to the second sign.
function upToSecond(at: Cursor, told: { readonly verb: number; readonly star: number }): StarEnd | null {
  const { tokens } = at.source;
  const second = tokens[told.star + 2];
  if (tokens[told.star + 1]?.text !== 'to' || second?.kind !== 'asterisk' || told.star + 2 >= at.range.end) return null;
  for (let index = at.at + 1; index < told.verb; index += 1) {
    if (tokens[index]!.text === second.text) return { kind: 'repeat', end: index, after: told.star + 3 };
  }
  return null;
}

function endOfSentence(at: Cursor): { readonly end: number; readonly after: number } {
  let end = at.at + 1;
  while (end < at.range.end && at.source.tokens[end]!.text !== '.') end += 1;
  return { end: Math.min(end, at.range.end), after: Math.min(end, at.range.end) };
}

/** Skips "rep between * and *" behind a group that ends with an asterisk, when a number of times follows. */
export function skipBetween(at: Cursor): boolean {
  return (
    at.attempt(() => {
      at.skip(',', ';');
      if (!at.take(...REPEAT) || !at.take('between', 'from')) return null;
      return at.kind('asterisk') && at.take('and', 'to') && at.kind('asterisk') ? true : null;
    }) === true
  );
}
