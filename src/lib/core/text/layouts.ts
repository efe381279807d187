/** Stitches per needle as the text states them: 20-24-20; N1: 24 sts, N2: 24 sts; 16 sts on each of 4 needles. */

import type { Statement } from '../model/pattern.ts';
import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readNeedleNumber } from './needle-names.ts';

/** Stitches per needle in ring order, one entry per needle. */
export type Loads = readonly Sized<number>[];

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Most needles that a stated layout may have. */
const MOST_NEEDLES = 12;

/** Reads stated loads in any form; remembers how many needles there are. */
export function readLoads(at: Cursor): Loads | null {
  const loads =
    at.attempt(readDashed) ?? at.attempt(readNamedFirst) ?? at.attempt(readCountFirst) ?? at.attempt(readEach);
  if (loads) at.scope.needles = loads.length;
  return loads;
}

// 20-24-20, 16/16/32, 12 - 20 - 12. Two numbers are a range or a fraction as easily, unless a bracket closes behind them.
function readDashed(at: Cursor): Loads | null {
  const sign = at.text(1);
  if (sign !== '-' && sign !== '/') return null;
  const loads: Sized<number>[] = [];
  do {
    const load = at.kind('number');
    if (!load || !Number.isInteger(load.value)) return null;
    loads.push(everySize(load.value ?? 0));
  } while (at.take(sign));
  const enough = loads.length > 2 || (loads.length === 2 && at.peek()?.kind === 'close');
  return enough && loads.length <= MOST_NEEDLES ? loads : null;
}

// "N1: 24 sts, N2: 24 sts, N3: 20 sts".
function readNamedFirst(at: Cursor): Loads | null {
  return readList(at, () => {
    const needle = readNeedleNumber(at);
    if (needle === null) return null;
    at.skip(':', '-', '=', 'has', 'holds');
    const count = readCount(at);
    at.skip(...STITCH_WORDS);
    return count ? { needle, count } : null;
  });
}

// "24 on the first needle, 24 on the second and 20 on the third".
function readCountFirst(at: Cursor): Loads | null {
  return readList(at, () => {
    const count = readCount(at);
    at.skip(...STITCH_WORDS);
    if (!count || !at.take('on', 'onto')) return null;
    const needle = readNeedleNumber(at, { bare: true });
    return needle === null ? null : { needle, count };
  });
}

interface NeedleLoad {
  readonly needle: number;
  readonly count: Sized<number>;
}

function readList(at: Cursor, readOne: () => NeedleLoad | null): Loads | null {
  const loads: Sized<number>[] = [];
  for (let more = true; more && loads.length < MOST_NEEDLES;) {
    const load = at.attempt(() => {
      if (loads.length > 0) at.skip(',', ';', 'and', '&');
      return readOne();
    });
    more = load !== null && load.needle === loads.length + 1;
    if (load && more) loads.push(load.count);
    else if (load) return null;
  }
  return loads.length > 1 && at.atStop ? loads : null;
}

// "16 sts on each of 4 needles", "16 sts each needle", "14 sts on each needle".
function readEach(at: Cursor): Loads | null {
  const count = readCount(at);
  at.skip(...STITCH_WORDS);
  at.skip('on', 'per');
  if (!count || !(at.take('each', 'every') || at.peek(-1)?.text === 'per')) return null;
  const needles = at.take('of') ? (at.skip('the'), at.whole()) : at.scope.needles;
  if (!at.take('needle', 'needles', 'dpn', 'dpns', 'ndl', 'ndls')) return null;
  return needles !== null && needles >= 2 && needles <= MOST_NEEDLES
    ? new Array<Sized<number>>(needles).fill(count)
    : null;
}

/** Reads a sentence that lays the stitches on the needles. */
export function readLayout(at: Cursor): Statement | null {
  const first = at.at;
  readLead(at);
  const loads = readLoads(at);
  return loads && at.atStop ? { kind: 'layout', loads, span: at.span(first) } : null;
}

// "Divide the sts over 3 needles:", "Change to dpns:", "Arrange sts on dpns as follows:".
function readLead(at: Cursor): void {
  at.attempt(() => {
    if (!at.take('divide', 'distribute', 'change', 'arrange', 'place', 'put', 'split', 'switch')) return null;
    for (let words = 0; words < 12; words += 1) {
      if (at.take(':')) return true;
      if (at.looksLike(readLoads)) return true;
      if (at.atStop) return null;
      at.at += 1;
    }
    return null;
  });
}
