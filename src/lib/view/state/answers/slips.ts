/** Slips of the pen. */

/** Whether one slip turns a word into the other: a letter added, dropped, changed, or swapped with its neighbour. */
export function isOneSlip(one: string, other: string): boolean {
  if (one === other || Math.abs(one.length - other.length) > 1) return false;
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  let at = 0;
  while (at < short.length && short[at] === long[at]) at += 1;
  const rest = (word: string, skipped: number) => word.slice(at + skipped);
  if (short.length < long.length) return rest(short, 0) === rest(long, 1);
  const isSwapped = short[at] === long[at + 1] && short[at + 1] === long[at];
  return rest(short, 1) === rest(long, 1) || (isSwapped && rest(short, 2) === rest(long, 2));
}
