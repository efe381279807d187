/** Which words can stand alone on a line as a heading. */

/** Longest heading, in letters and in words. */
const MOST_LETTERS = 60;
const MOST_WORDS = 10;

/** True for a few words that name something; false for what reads as an instruction, a row or a count. */
export function mayBeHeading(text: string): boolean {
  if (text.length > MOST_LETTERS || text.split(' ').length > MOST_WORDS || !/\p{L}{2}/u.test(text)) return false;
  return !/[.,;]$|[*=]|:\s*\S|^[\d(]|^(?:rnds?|rows?|rounds?|next|rep|repeat)\b/iu.test(text);
}
