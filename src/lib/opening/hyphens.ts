/** Words and ranges that were broken at the end of a line. */

/** A hyphen at the end of a line, with the word before it. */
const BROKEN = /(\S*)([-\u2010\u00AD\u2013])$/u;

/** Halves that make a compound with any word before them, so that their hyphen stays: "short-rows", "set-up". */
const COMPOUND =
  /^(?:leaning|slanting|hand|handed|rows?|pointed|up|on|off|out|over|overs|needles?|st|sts|stitch|to|in|by|the|of|and|side|end|colou?r|wise)$/u;

/** Names of stitches; a hyphen behind one of them joins it to the next: "sl1-k1-psso". */
const STITCH =
  /^(?:k|p|sl|yo|yrn|ssk|ssp|skp|psso|tog|tbl|inc|dec|m|st|sts|rnd|rnds|rows?|cdd|sk2p|mb|wyif|wyib|bo|co)$/iu;

/**
 * Joins two lines when the first ends in a broken word or range.
 *
 * @param known - Words of the whole text in small letters: a compound that is printed elsewhere keeps its hyphen.
 * @returns The joined line, or `null` when the first line ends in no hyphen, or in a dash.
 */
export function joinBroken(before: string, after: string, known: ReadonlySet<string>): string | null {
  const broken = BROKEN.exec(before);
  const next = /^(?:[\p{L}\p{N}]+|\S+)/u.exec(after)?.[0];
  if (!broken || !next || broken[1] === '') return null;
  const [, word = '', sign = ''] = broken;
  if (sign === '\u2013') return /\d$/u.test(word) && /^\d/u.test(next) ? before + after : null;
  const keeps = sign !== '\u00AD' && keepsHyphen(word, next, known);
  return (keeps ? before : before.slice(0, -1)) + after;
}

/** The words of a text as `joinBroken()` wants them. */
export function wordsOf(lines: readonly string[]): Set<string> {
  return new Set(lines.flatMap((line) => line.toLowerCase().match(/[\p{L}\p{N}]+(?:[-\u2010][\p{L}\p{N}]+)*/gu) ?? []));
}

// Only small letters on both sides can be two halves of one word.
function keepsHyphen(word: string, next: string, known: ReadonlySet<string>): boolean {
  const half = /[\p{L}\p{N}]+$/u.exec(word)?.[0] ?? '';
  if (!/^\p{L}*\p{Ll}$/u.test(half) || !/^\p{Ll}+$/u.test(next)) return true;
  const [first, last] = [half.toLowerCase(), next.toLowerCase()];
  if (known.has(`${first}-${last}`)) return true;
  if (known.has(first + last)) return false;
  return STITCH.test(first) || STITCH.test(last) || COMPOUND.test(last);
}
