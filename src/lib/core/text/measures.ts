/** Gauge and needles as a pattern states them. */

import type { Gauge, NeedleText } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import type { Cursor } from './cursor.ts';
import { CM_PER_INCH, readMeasure, readUnit, type Measure } from './lengths.ts';

const CM: Readonly<Record<Measure['unit'], number>> = { cm: 1, mm: 0.1, in: CM_PER_INCH };

/** Reads "32 sts and 44 rnds = 10 cm", "7.5 sts per inch", "about 32 sts to 10 cm". */
export function readGauge(at: Cursor): Gauge {
  const gauge: { stitchesPer10cm: number | null; rowsPer10cm: number | null } = {
    stitchesPer10cm: null,
    rowsPer10cm: null
  };
  let waiting: { readonly key: keyof Gauge; readonly value: number }[] = [];
  while (!at.done) {
    const cm = readOver(at);
    if (cm !== null) {
      for (const { key, value } of waiting) gauge[key] ??= Math.round((value * 1000) / cm) / 100;
      waiting = [];
      continue;
    }
    const counted = at.attempt(readCounted);
    if (counted) waiting.push(counted);
    else at.at += 1;
  }
  return gauge;
}

// "10 cm", "1"", "per inch".
function readOver(at: Cursor): number | null {
  const measure = readMeasure(at);
  if (measure) {
    const value = forSize(measure.value, 0);
    return value ? value * CM[measure.unit] : null;
  }
  return at.attempt(() => {
    if (!at.take('per', 'to', 'the')) return null;
    at.skip('the', 'one');
    const unit = readUnit(at);
    return unit ? CM[unit] : null;
  });
}

function readCounted(at: Cursor): { readonly key: keyof Gauge; readonly value: number } | null {
  const value = at.number();
  if (value === null) return null;
  if (at.take('st', 'sts', 'stitches')) return { key: 'stitchesPer10cm', value };
  return at.take('rnd', 'rnds', 'row', 'rows', 'rounds') ? { key: 'rowsPer10cm', value } : null;
}

/** Reads "2.5 mm, 15 cm long", "5 mm 16" circular and a set of 4 dpns". */
export function readNeedles(at: Cursor): NeedleText {
  let thicknessMm: number | null = null;
  let lengthCm: number | null = null;
  while (!at.done) {
    const measure = readMeasure(at);
    const value = measure ? forSize(measure.value, 0) : null;
    if (!measure || value === null) at.at += 1;
    else if (measure.unit === 'mm') thicknessMm ??= value;
    else lengthCm ??= Math.round(value * CM[measure.unit] * 100) / 100;
  }
  return { thicknessMm, lengthCm };
}

/** How many needles of a set hold stitches: 4 for "a set of 5 dpns", "five double-pointed needles"; 0 when none is named. */
export function readSetOf(at: Cursor): number {
  for (; !at.done; at.at += 1) {
    const needles = at.attempt(() => {
      const count = at.whole();
      at.skip('short', 'double', '-', 'pointed');
      return count !== null && at.take('needles', 'dpns', 'dpn', 'dps') ? count : null;
    });
    if (needles === 4 || needles === 5) return needles - 1;
  }
  return 0;
}
