/** Lengths in centimetres, millimetres and inches, with fractions and with the other unit in brackets behind. */

import type { Sized } from '../model/sized.ts';
import { readSized } from './counts.ts';
import type { Cursor } from './cursor.ts';

/** Centimetres in one inch at the rate of the trade, which treats 4 in and 10 cm as equal (standards of gauge, yarn labels). */
export const CM_PER_INCH = 2.5;

const CM_PER_UNIT = { cm: 1, mm: 0.1, in: CM_PER_INCH } as const;

/** A measure as it stands in the text. */
export interface Measure {
  readonly value: Sized<number>;
  readonly unit: keyof typeof CM_PER_UNIT;
}

/** Reads a length, for one size or for each, in centimetres. */
export function readLength(at: Cursor): Sized<number> | null {
  const measure = readMeasure(at);
  if (!measure) return null;
  const cm = CM_PER_UNIT[measure.unit];
  return measure.value.map((entry) => (entry === null ? null : Math.round(entry * cm * 100) / 100));
}

/** Reads a number with a unit of length. */
export function readMeasure(at: Cursor): Measure | null {
  return at.attempt(() => {
    const value = readDecimal(at);
    if (!value) return null;
    at.skip('-');
    const unit = readUnit(at);
    if (unit === null) return null;
    skipConversion(at);
    return { value, unit };
  });
}

// 5 (6, 7); 2 1/2; 2,5 mm.
function readDecimal(at: Cursor): Sized<number> | null {
  const value = readSized(at);
  const [only] = value ?? [];
  if (value?.length !== 1 || only === null || only === undefined) return value;
  const half = at.attempt(() => readFraction(at)) ?? at.attempt(() => readDecimalComma(at));
  return half === null ? value : [only + half];
}

function readFraction(at: Cursor): number | null {
  const over = at.kind('number');
  if (!over || !at.take('/')) return null;
  const under = at.kind('number');
  return under?.value && over.value !== null ? over.value / under.value : null;
}

function readDecimalComma(at: Cursor): number | null {
  const comma = at.take(',');
  const digits = comma?.glued ? at.kind('number') : null;
  if (!digits?.glued || !/^\d+$/u.test(digits.text)) return null;
  return at.looksLike(readUnit) ? Number(`0.${digits.text}`) : null;
}

/** Reads a unit of length. */
export function readUnit(at: Cursor): Measure['unit'] | null {
  if (at.take('cm', 'cms', 'centimetres', 'centimeters')) return 'cm';
  if (at.take('mm', 'millimetres', 'millimeters')) return 'mm';
  if (at.phrase("' '")) return 'in';
  if (!at.take('"', 'in', 'ins', 'inch', 'inches')) return null;
  if (at.peek(-1)?.text === 'in' && at.text() === '.' && at.peek(1)?.capital === false) at.at += 1;
  return 'in';
}

// "(6.5 cm)", "[12.5 (15, 18) cm]", "/10 cm".
function skipConversion(at: Cursor): void {
  at.attempt(() => {
    if (at.take('/')) return readSized(at) && readUnit(at) !== null ? true : null;
    const end = at.partner;
    if (at.peek()?.kind !== 'open' || end < 0) return null;
    at.at += 1;
    const inner = readSized(at);
    if (!inner || readUnit(at) === null || at.at !== end) return null;
    at.at = end + 1;
    return true;
  });
}
