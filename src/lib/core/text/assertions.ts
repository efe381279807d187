/** Counts that a pattern prints for checking: "80 sts.", "(2 sts dec'd)", "18 heel sts rem", "(31 rows)", "(16-32-16)". */

import type { NeedleRefs } from '../model/needle-words.ts';
import type { Assertion } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readLoads, readPlainList } from './layouts.ts';
import { readNeedles } from './needle-names.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const FEWER = new Set(["dec'd", 'decd', 'decreased', 'dec', 'decs']);
const MORE = new Set(["inc'd", 'incd', 'increased', 'inc', 'incs']);

/** What may stand before a printed count. */
const LEADS = [
  ...['there are now', 'there are', 'there should be', 'there will be', 'you now have', 'you should have', 'you have'],
  ...[
    'you should now have',
    'you will have',
    'there should now be',
    'for a total of',
    'a total of',
    'totalling',
    'total of'
  ],
  ...['making', 'leaving', 'having', 'total', 'now', 'you will now have', 'there remain', 'which leaves']
].sort((left, right) => right.length - left.length);

/** What may stand after one without changing it. */
const TAILS = [
  ...['rem', 'remain', 'remains', 'remaining', 'left', 'are left', 'in all', 'in total', 'total', 'altogether', 'now'],
  ...[
    'on needles',
    'on the needles',
    'on needle',
    'on the needle',
    'on one needle for the heel',
    'on one needle',
    'for heel',
    'for the heel',
    'for instep',
    'worked'
  ],
  ...['in the rnd', 'in the round', 'live', 'in work']
].sort((left, right) => right.length - left.length);

/** Words that end the name of a part, or make it no printed count at all: "2 purl sts". */
const NO_NAME = /^(?:sts?|stitch(?:es)?|[kp]|knit|purl)$/u;

/** Words before "sts" that name no part. */
const NO_PART = new Set(['live', 'total', 'rem', 'remaining', 'working', 'more', 'new', 'held']);

/** Reads one or more printed counts that stand together, bare or in brackets; `null` when there are none here. */
export function readAssertions(at: Cursor): Assertion[] | null {
  return at.attempt(readBracketed) ?? at.attempt(readSentence);
}

function readBracketed(at: Cursor): Assertion[] | null {
  const end = at.partner;
  if (at.peek()?.kind !== 'open' || end < 0) return null;
  const inside = at.within(at.at + 1, end);
  const found = readSentence(inside);
  if (!found || !inside.done) return null;
  at.at = end + 1;
  return found;
}

// Counts in one sentence: "48 sts (12-24-12)", "8 sts dec'd - 56 sts", "24 sts to marker A, 32 instep sts".
function readSentence(at: Cursor): Assertion[] | null {
  const found: Assertion[] = [];
  at.skip('-', '=', '--');
  if (at.phrase(...LEADS)) at.skip(':');
  for (;;) {
    const next = at.attempt(() => {
      if (found.length > 0) skipBetween(at);
      return readOne(at) ?? (found.length > 0 ? readBracketed(at) : null);
    });
    if (!next) return found.length > 0 ? found : null;
    found.push(...next);
  }
}

function skipBetween(at: Cursor): void {
  at.skip(',', ':', ';', '-', 'and', '=');
  at.phrase(...LEADS);
}

function readOne(at: Cursor): Assertion[] | null {
  const first = at.at;
  const loads = at.attempt(() => {
    const read = readLoads(at) ?? (at.peek(-1)?.text === ':' ? readPlainList(at) : null);
    return read && (at.atStop || at.text(-1) === '.') ? read : null;
  });
  if (loads) return [{ kind: 'loads', ...loads, span: at.span(first) }];
  const assertion = at.attempt(readOnNeedles) ?? at.attempt(readChange) ?? at.attempt(readRows) ?? at.attempt(readPart);
  return assertion ? [assertion] : null;
}

// "12 sts on each needle", "13 of them on the third needle", "15 heel sts on the heel needle".
function readOnNeedles(at: Cursor): Assertion | null {
  const first = at.at;
  const named = at.attempt(readNeedleFirst);
  if (named) return { kind: 'on-needles', ...named, span: at.span(first) };
  const count = readCount(at);
  if (!count) return null;
  at.skip('of', 'them', 'heel', 'instep', ...STITCH_WORDS);
  at.phrase(...TAILS.filter((tail) => !tail.startsWith('on')));
  const on = at.skip('on', 'per');
  const needles = readNeedles(at);
  return needles && (on || needles === 'each') && endsHere(at)
    ? { kind: 'on-needles', needles, count, span: at.span(first) }
    : null;
}

// "N1: 23 sts", "heel needle: 31 sts".
function readNeedleFirst(at: Cursor): { readonly needles: NeedleRefs; readonly count: Sized<number> } | null {
  const needles = readNeedles(at);
  if (!needles || !at.take(':', '=')) return null;
  const count = readCount(at);
  at.skip(...STITCH_WORDS, 'each');
  return count && endsHere(at) ? { needles, count } : null;
}

// "(4 sts dec'd)", "2 sts inc'd", "1 st decreased", "(2 dec)".
function readChange(at: Cursor): Assertion | null {
  const first = at.at;
  const count = readCount(at);
  if (!count) return null;
  at.skip(...STITCH_WORDS);
  const word = at.text();
  if (!FEWER.has(word) && !MORE.has(word)) return null;
  at.at += 1;
  if (!endsHere(at)) return null;
  return { kind: 'change', count: FEWER.has(word) ? negative(count) : count, span: at.span(first) };
}

function negative(count: Sized<number>): Sized<number> {
  return count.map((entry) => (entry === null ? null : -entry));
}

// "(31 rows)", "25 rows worked".
function readRows(at: Cursor): Assertion | null {
  const first = at.at;
  const count = readCount(at);
  if (!count || !at.take('row', 'rows', 'rnd', 'rnds', 'round', 'rounds')) return null;
  at.phrase(...TAILS);
  return endsHere(at) ? { kind: 'rows', count, span: at.span(first) } : null;
}

// "80 sts rem", "18 heel sts rem", "24 sts to marker A", "16 sts after marker B".
function readPart(at: Cursor): Assertion | null {
  const first = at.at;
  const count = readCount(at);
  if (!count) return null;
  const part = readPartName(at);
  if (!at.take(...STITCH_WORDS)) return null;
  const place = at.take('unworked') ? 'unworked' : readPlace(at);
  while (at.phrase(...TAILS));
  if (!endsHere(at)) return null;
  const of = place ?? part;
  return of === '' ? { kind: 'total', count, span: at.span(first) } : { kind: 'part', of, count, span: at.span(first) };
}

function readPartName(at: Cursor): string {
  const words: string[] = [];
  while (words.length < 3 && at.peek()?.kind === 'word' && !NO_NAME.test(at.text())) {
    if (!NO_PART.has(at.text())) words.push(at.text());
    at.at += 1;
  }
  return words.join(' ');
}

// "to marker A", "after marker B", "between markers", "for instep".
function readPlace(at: Cursor): string | null {
  return at.attempt(() => {
    const first = at.at;
    if (!at.take('to', 'after', 'before', 'between')) return null;
    at.skip('the');
    if (!at.take('marker', 'markers', 'm')) return null;
    if (/^[a-z]$/u.test(at.text()) && at.peek()?.capital) at.at += 1;
    return at.written(first).replaceAll(/\s+/gu, ' ');
  });
}

function endsHere(at: Cursor): boolean {
  return at.atStop || at.peek()?.kind === 'open' || ['-', 'and', '='].includes(at.text());
}
