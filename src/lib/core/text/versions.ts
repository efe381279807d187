/** What is told once for the left and once for the right: "Left mitten: … Right mitten: …". One of them is worked. */

import type { Span } from '../model/span.ts';
import type { Cursor } from './cursor.ts';

// "Left:", "Right mitten:"; a needle is no version.
function readVersion(at: Cursor): 'left' | 'right' | null {
  return at.attempt(() => {
    const side = at.take('left', 'right')?.text;
    for (let words = 0; words < 2 && at.text() !== ':'; words += 1) {
      if (/^(?:needles?|hand|side|ndl)$/u.test(at.text()) || !at.kind('word')) return null;
    }
    if (side === undefined || !at.take(':') || at.done) return null;
    return side === 'left' ? 'left' : 'right';
  });
}

/**
 * Reads the beginning of a version. The one that the text tells first is worked: `null` says that it goes on here. The other
 * is skipped up to the next version or the end of the line; its place is given back.
 */
export function skipOtherVersion(at: Cursor): Span | null {
  const first = at.at;
  const version = readVersion(at);
  if (!version) return null;
  const { scope } = at;
  scope.version ??= version;
  if (scope.version === version) return null;
  while (!at.done && !(at.atSentence && at.at > first && at.looksLike(readVersion))) at.at += 1;
  const span = at.span(first);
  scope.report('other-side', span, { about: version });
  return span;
}
