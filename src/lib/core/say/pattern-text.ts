/** Writes a pattern back in the usual wording of American patterns. */

import type { Pattern } from '../model/pattern.ts';
import { front } from './pattern-text/front.ts';
import { stages } from './pattern-text/stages.ts';

/**
 * The pattern as text. Reading it gives the same statements again, at other places; prose is kept as it stands, and a line
 * is added where the words name no sizes, gauge or needles. What was not understood is told again only where the pattern
 * keeps it as prose.
 */
export function writePattern(pattern: Pattern): string {
  const introduction = pattern.introduction.map((told) => (told.kind === 'prose' ? told.text : ''));
  const parts = [...introduction, ...stages(pattern)];
  return `${[...front(pattern, parts.join('\n')), ...parts].filter((part) => part !== '').join('\n\n')}\n`;
}
