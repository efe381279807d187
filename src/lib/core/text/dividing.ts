/** Sentences that lay the stitches on the needles: "Divide over 3 needles: 20-24-20", "divide evenly over 4 needles". */

import type { Statement } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { MOST_NEEDLES, readLoads, readPlainList, STITCH_WORDS } from './layouts.ts';
import { NEEDLE_WORDS } from './needle-names.ts';

/** Longest way from the verb to the numbers, in tokens. */
const MOST_LEAD = 24;

/** Reads a sentence that lays the stitches on the needles. */
export function readLayout(at: Cursor): Statement | null {
  const first = at.at;
  at.scope.needlesTold = null;
  const even = at.attempt(readEvenly);
  if (even) return { kind: 'layout', loads: even, names: null, span: at.span(first) };
  const led = readLead(at);
  const told = readLoads(at) ?? (led ? at.attempt(readPlainList) : null);
  if (led) skipTail(at);
  return told && (at.atStop || at.text(-1) === '.') ? { kind: 'layout', ...told, span: at.span(first) } : null;
}

const DIVIDE = [
  ...['slide', 'slip', 'sl'],
  'divide',
  'distribute',
  'change',
  'arrange',
  'place',
  'put',
  'split',
  'switch',
  'dividing',
  'spread'
];

// "Divide the sts over 3 needles:", "Change to dpns:", "Arrange sts on dpns as follows:", "with".
// "Divide on to four needles with …" tells how many there are.
function noteNeedles(at: Cursor): void {
  at.looksLike(() => {
    const needles = at.whole();
    if (needles !== null && needles < MOST_NEEDLES && NEEDLE_WORDS.includes(at.text())) at.scope.needlesTold = needles;
  });
}

// "(15-16-15-16) over four needles".
function skipTail(at: Cursor): void {
  at.attempt(() => {
    at.skip(...STITCH_WORDS);
    if (!at.take('over', 'on', 'onto', 'between', 'among')) return null;
    at.skip('the');
    return at.whole() !== null && at.take(...NEEDLE_WORDS) ? true : null;
  });
}

function readLead(at: Cursor): boolean {
  return (
    at.attempt(() => {
      at.skip('and');
      at.skip(',');
      if (at.take('with', 'having') || at.phrase('that is to say', 'that is')) return true;
      if (!at.take(...DIVIDE)) return null;
      return skipToLoads(at);
    }) === true
  );
}

// Up to a colon or the loads themselves; what is said of "the other" stitches is something else.
function skipToLoads(at: Cursor): true | null {
  for (let words = 0; words < MOST_LEAD; words += 1) {
    if (at.take(':', 'as')) return at.skip('follows', ':') || true;
    noteNeedles(at);
    if (at.looksLike(readLoads)) return true;
    if (isOfOthers(at) || (at.atStop && at.text() !== ',')) return null;
    at.at += 1;
  }
  return null;
}

function isOfOthers(at: Cursor): boolean {
  return ['other', 'rest', 'rem', 'remaining'].includes(at.text()) && at.text(-2) !== 'of';
}

// "Divide evenly over 4 needles", "distribute sts evenly onto three dpns", "divided equally between 2 needles".
function readEvenly(at: Cursor): (Sized<number> | null)[] | null {
  const first = at.at;
  at.skip('and');
  if (!at.take(...DIVIDE, 'divided', 'arranged')) return null;
  at.skip('the', 'all');
  if (at.take('these')) readCount(at);
  at.skip(...STITCH_WORDS, 'evenly', 'equally', 'out');
  if (!at.take('over', 'between', 'onto', 'among', 'on', 'across') && !at.phrase('on to')) return null;
  at.skip('the');
  const needles = at.whole() ?? at.scope.holding;
  if (needles < 2 || needles > 6 || !at.take(...NEEDLE_WORDS)) return null;
  const isEven = at.source.tokens.slice(first, at.at).some(({ text }) => /^(?:evenly|equally)$/u.test(text));
  if (!isEven && !at.take('evenly', 'equally') && !/^[.;]?$/u.test(at.text())) return null;
  const each = at.attempt(() => readEachBehind(at));
  return new Array<Sized<number> | null>(needles).fill(each);
}

// "(16 sts per needle)", ", 16 sts each".
function readEachBehind(at: Cursor): Sized<number> | null {
  const bracket = at.peek()?.kind === 'open' ? at.partner : -1;
  if (bracket >= 0) at.at += 1;
  at.skip(',', 'with', '=', '-');
  const count = readCount(at);
  at.skip(...STITCH_WORDS, 'on', 'per');
  if (!count || (!at.take('each', 'needle') && at.text(-1) !== 'per')) return null;
  at.skip(...NEEDLE_WORDS);
  if (bracket >= 0) at.at = bracket + 1;
  return count;
}
