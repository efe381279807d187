/** Items of Markdown lists, told apart from a repeat that begins a line. */

import { countStars, startsWithStitches, withoutEmphasis } from './emphasis.ts';

const ITEM = /^\s*(?:[-+*]|\d{1,3}[.)])[ \t]+(?:\[[ xX]\][ \t]+)?(?=\S)/u;

/** True when a line begins like an item of a list. */
export function isListItem(line: string): boolean {
  return ITEM.test(line);
}

/** The words of an item without its mark. */
export function itemText(text: string): string {
  return text.replace(ITEM, '');
}

/**
 * True when the asterisk before an item is no mark of a list but begins a repeat: "* k2, p2; rep from * to end".
 *
 * @param text - The item with all its lines.
 */
export function isRepeatMark(text: string): boolean {
  if (!/^\s*\*/u.test(text)) return false;
  const content = itemText(text);
  if (/^(?:\W*)(?:rnds?|rounds?|rows?)\b/iu.test(content)) return false;
  const stars = countStars(withoutEmphasis(content));
  // Without the first, the others pair up: each repeat has one that begins it and one it is told from.
  if (stars % 2 === 1) return true;
  return stars === 0 && startsWithStitches(content) && /\brep(?:eat)?\b/iu.test(content);
}
