/** Asterisks and underscores that dress words in Markdown, told apart from asterisks that mark a repeat. */

// An opening mark stands before a word, a closing one behind it; the marks of a repeat mostly have a blank on one side.
const STARS = [1, 2, 3].map(
  (count) =>
    new RegExp(
      `(?<=^|[\\s("'“‘[_—–-])\\*{${count}}(?![*\\s])([^*]+?)(?<![*\\s])\\*{${count}}(?=$|[\\s.,;:!?)"'”’\\]_…—–-])`,
      'gu'
    )
);

const UNDERSCORES = /(?<![\p{L}\p{N}_])(_{1,3})(?![_\s])([^_]+?)(?<![_\s])\1(?![\p{L}\p{N}_])/gu;

const STITCHES =
  /^[\s([]*(?:\d+\s*)?(?:k|p|sl|yo|yrn|m1[lrp]?|ssk|ssp|skp|kfb|pfb|psso|cdd|mb|inc|dec|knit|purl|slip|wyi[fb]|[kpct]\d.*?)(?=[\s,;)\]\d]|$)/iu;

const TOLD_HOW_OFTEN =
  /^[\s,;:]*(?:rep|repeat|once|twice|thrice|to end|to last|around|across|until|[x×]\s*\d|[([]?\d+\s*(?:more\s+)?(?:times|x|×))/iu;

/** Takes the marks of emphasis off; those that mark a repeat stay: "*k2, p2; rep from *", "*k2, p2* twice". */
export function withoutEmphasis(text: string): string {
  const plain = text.replace(UNDERSCORES, '$2');
  return [...STARS, STARS[0]!].reduce((told, marks) => told.replace(marks, emphasised), plain);
}

/** True when a text begins as instructions do: "k2, p2", "Sl 1". */
export function startsWithStitches(text: string): boolean {
  return STITCHES.test(text);
}

/** How many single asterisks a text has. */
export function countStars(text: string): number {
  return text.match(/(?<!\*)\*(?!\*)/gu)?.length ?? 0;
}

function emphasised(whole: string, content: string, at: number, text: string): string {
  const after = text.slice(at + whole.length);
  return isRepeat(whole, content, after) || TOLD_HOW_OFTEN.test(after) ? whole : content;
}

// At the end of a line nothing says how often: only "*k2, p2*" is still more likely a repeat than dressed words.
function isRepeat(whole: string, content: string, after: string): boolean {
  if (!startsWithStitches(content) || /[.:!?]$/u.test(content)) return false;
  return /[^\s.,;:!?)]/u.test(after) || (content.includes(',') && !whole.startsWith('**'));
}
