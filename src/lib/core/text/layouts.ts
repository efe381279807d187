/** Stitches per needle as the text states them: 20-24-20; N1: 24 sts, N2: 24 sts; 16 sts on each of 4 needles; evenly over 3. */

import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { NEEDLE_WORDS, readNeedleName, readNeedles } from './needle-names.ts';

/** Stitches per needle in ring order, and how the text calls the needles (`null`: it only lists them). */
export interface Loads {
  readonly loads: readonly Sized<number>[];
  readonly names: readonly string[] | null;
}

/** Words for a stitch. */
export const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Most needles that a stated layout may have. */
export const MOST_NEEDLES = 12;

/** Reads stated loads in any form. */
export function readLoads(at: Cursor): Loads | null {
  const loads =
    at.attempt(readDashed) ??
    at.attempt(readNamedFirst) ??
    at.attempt(readCountFirst) ??
    at.attempt(readGrouped) ??
    at.attempt(readHowMany) ??
    at.attempt(readEach);
  return loads;
}

// 20-24-20, 16/16/32, 12 - 20 - 12. Two numbers are a range or a fraction as easily, unless a bracket closes behind them.
function readDashed(at: Cursor): Loads | null {
  const sign = at.text(1);
  if (!['-', '/', ':'].includes(sign)) return null;
  const loads: Sized<number>[] = [];
  do {
    const load = at.kind('number');
    if (!load || !Number.isInteger(load.value)) return null;
    loads.push(everySize(load.value ?? 0));
  } while (at.take(sign));
  const enough = loads.length > 2 || (loads.length === 2 && at.peek()?.kind === 'close');
  return enough && loads.length <= MOST_NEEDLES ? { loads, names: null } : null;
}

interface NeedleLoad {
  readonly needle: string;
  readonly count: Sized<number>;
}

// "N1: 24 sts, N2: 24 sts, N3: 20 sts", "Left needle 22 (20), front needle 28 (26), right needle 22 (20)".
function readNamedFirst(at: Cursor): Loads | null {
  return readList(at, () => {
    const needle = readNeedleName(at);
    if (needle === null) return null;
    skipSideNote(at);
    at.skip(':', '-', '=', 'has', 'holds', 'with', 'carries');
    const count = readCount(at);
    if (count && at.scope.isSection(at.text())) at.at += 1;
    at.skip(...STITCH_WORDS);
    skipSideNote(at);
    return count ? { needle, count } : null;
  });
}

// "24 on the first needle, 24 on the second and 20 on the third", "8 left, 28 front, 8 right".
function readCountFirst(at: Cursor): Loads | null {
  return readList(at, () => {
    const count = readCount(at);
    if (count && at.scope.isSection(at.text()) && STITCH_WORDS.includes(at.text(1))) at.at += 1;
    at.skip(...STITCH_WORDS);
    if (!count) return null;
    const on = at.take('on', 'onto') ?? at.attempt(() => (at.phrase('on to') ? at.peek(-1) : null));
    const needle = on ? readNeedleName(at, { bare: true }) : readBareRole(at);
    skipSideNote(at);
    return needle === null ? null : { needle, count };
  });
}

function readBareRole(at: Cursor): string | null {
  return at.take('left', 'right', 'front', 'back')?.text ?? null;
}

// "(the old heel needle)", "(instep)".
function skipSideNote(at: Cursor): void {
  const end = at.partner;
  if (at.peek()?.kind !== 'open' || end < 0 || at.peek(1)?.kind === 'number') return;
  const words = at.source.tokens.slice(at.at + 1, end);
  if (words.length <= 6 && words.every(({ kind }) => kind === 'word')) at.at = end + 1;
}

function readList(at: Cursor, readOne: () => NeedleLoad | null): Loads | null {
  const found: NeedleLoad[] = [];
  for (let more = true; more && found.length < MOST_NEEDLES;) {
    const load = at.attempt(() => {
      if (found.length > 0) at.skip(',', ';', 'and', '&', '.');
      return readOne();
    });
    more = load !== null && isNext(load.needle, found);
    if (load && more) found.push(load);
    else if (load) return null;
  }
  if (found.length < 2 || !(at.atStop || at.text(-1) === '.')) return null;
  return { loads: found.map(({ count }) => count), names: found.map(({ needle }) => needle) };
}

// Numbers go up from 1; other names are all different.
function isNext(needle: string, before: readonly NeedleLoad[]): boolean {
  const last = before.at(-1)?.needle ?? '0';
  if (/^\d+$/u.test(needle)) return Number(needle) > Number(last) && (before.length > 0 || needle === '1');
  return !before.some((load) => load.needle === needle);
}

// "N1 and N3: 24 sts each, N2 and N4: 14 sts each", "24 sts each on needles 1 and 3 and 14 on needles 2 and 4".
function readGrouped(at: Cursor): Loads | null {
  const byNeedle = new Map<string, Sized<number>>();
  for (;;) {
    const more = at.attempt(() => {
      if (byNeedle.size > 0) at.skip(',', ';', 'and', '&', '.');
      return readGroupFirst(at) ?? readGroupLast(at);
    });
    if (!more) break;
    for (const needle of more.needles) byNeedle.set(needle, more.count);
  }
  const names = [...byNeedle.keys()].sort();
  const complete = names.length > 1 && names.every((name, index) => name === String(index + 1));
  return complete && at.atStop ? { loads: names.map((name) => byNeedle.get(name)!), names } : null;
}

interface Group {
  readonly needles: readonly string[];
  readonly count: Sized<number>;
}

function readGroupFirst(at: Cursor): Group | null {
  return at.attempt(() => {
    const needles = numbered(readNeedles(at));
    at.skip(':', '-', '=', 'has', 'have', 'hold', 'holds');
    const count = readCount(at);
    at.skip(...STITCH_WORDS, 'each');
    return needles && count ? { needles, count } : null;
  });
}

function readGroupLast(at: Cursor): Group | null {
  return at.attempt(() => {
    const count = readCount(at);
    at.skip(...STITCH_WORDS, 'each');
    if (!count || !at.take('on', 'onto')) return null;
    at.skip('each', 'of');
    const needles = numbered(readNeedles(at));
    at.skip('each');
    return needles ? { needles, count } : null;
  });
}

function numbered(needles: ReturnType<typeof readNeedles>): string[] | null {
  if (!needles || needles === 'each') return null;
  const names = needles.flatMap((needle) => (needle.kind === 'named' ? [needle.name] : []));
  return names.length > 0 && names.every((name) => /^\d$/u.test(name)) ? names : null;
}

// "13 on the first two needles, 14 on the last", "28 on two needles, 24 on one".
function readHowMany(at: Cursor): Loads | null {
  if (at.peek(-1)?.text === 'these') return null;
  const loads: Sized<number>[] = [];
  for (;;) {
    const more = at.attempt(() => {
      if (loads.length > 0) at.skip(',', ';', 'and');
      const count = readCount(at);
      at.skip(...STITCH_WORDS, 'each');
      if (!count || !at.take('on', 'onto')) return null;
      if (loads.length === 0 && at.looksLike(() => (at.skip('each', 'of', 'the'), at.take('other')))) return null;
      at.skip('each', 'of', 'the', 'first', 'next', 'other');
      const needles = at.take('last', 'third', 'fourth') ? 1 : (at.whole() ?? 0);
      at.skip(...NEEDLE_WORDS);
      return needles > 0 && needles < MOST_NEEDLES ? new Array<Sized<number>>(needles).fill(count) : null;
    });
    if (!more) break;
    loads.push(...more);
  }
  return loads.length > 1 && loads.length <= MOST_NEEDLES && at.atStop ? { loads, names: null } : null;
}

// "16 sts on each of 4 needles", "16 sts each needle", "14 sts on each needle".
function readEach(at: Cursor): Loads | null {
  const count = readCount(at);
  at.skip(...STITCH_WORDS);
  at.skip('on', 'per');
  if (!count || !(at.take('each', 'every') || at.peek(-1)?.text === 'per')) return null;
  const needles = at.take('of') ? (at.skip('the'), at.whole()) : at.scope.needlesTold;
  if (!at.take(...NEEDLE_WORDS)) return null;
  if (needles === null || needles < 2 || needles > MOST_NEEDLES) return null;
  return { loads: new Array<Sized<number>>(needles).fill(count), names: null };
}

/** Reads "12 sts, 12 sts, 8 sts" or "18, 15, 28, 15", where other words say what they are. */
export function readPlainList(at: Cursor): Loads | null {
  const loads: Sized<number>[] = [];
  for (;;) {
    const load = at.attempt(() => {
      if (loads.length > 0 && !at.skip(',', 'and', '&')) return null;
      const count = readCount(at);
      at.skip(...STITCH_WORDS);
      return count;
    });
    if (!load) break;
    loads.push(load);
  }
  return loads.length > 1 && loads.length <= MOST_NEEDLES ? { loads, names: null } : null;
}
