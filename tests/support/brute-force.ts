/**
 * Prices every layout of a small ring by knitting it: each stitch carries the needle it lies on from row to row, and what a
 * row costs is read off the hands' work. Written apart from the solver, from the rules alone.
 */

import type { Row, Stage, Step } from '$lib/core/model/fabric.ts';
import { arrangementsOf } from './rings.ts';

/** The needles of a question. */
export interface Needles {
  readonly count: number;
  /** Stitches that lie at ease on one. */
  readonly usable: number;
}

/** A layout with its price; Infinity when it cannot be. */
export interface Tried {
  readonly breaks: readonly number[];
  readonly price: number;
}

/** Every layout of a round stage, in the total order of the solver's contract, the impossible ones last. */
export function tryAll(stage: Stage, needles: Needles): Tried[] {
  const stitches = stage.start.stitches.length;
  const tried = arrangementsOf(stitches, needles.count).map((breaks) => ({
    breaks,
    price: priceOf(stage, breaks, needles)
  }));
  const facts = ({ breaks, price }: Tried) => [
    price === Infinity ? Number.MAX_SAFE_INTEGER : price,
    breaks[0] === 0 ? 0 : 1,
    ...breaks.map((from, index) => -((breaks[index + 1] ?? breaks[0]! + stitches) - from)),
    ...breaks
  ];
  return tried.sort((left, right) => {
    const [a, b] = [facts(left), facts(right)];
    const at = a.findIndex((fact, index) => fact !== b[index]);
    return at < 0 ? 0 : a[at]! - b[at]!;
  });
}

function priceOf(stage: Stage, breaks: readonly number[], needles: Needles): number {
  const stitches = stage.start.stitches.length;
  const last = breaks.length - 1;
  let owners = Array.from({ length: stitches }, (_, at) => {
    const found = breaks.findLastIndex((gap) => gap <= at);
    return found < 0 ? last : found;
  });
  const full = (load: number) => load >= 1.5 * needles.usable;
  if (loadsOf(owners, needles.count).some((load) => load < 2 || full(load))) return Infinity;
  let price = 0;
  for (const row of stage.rows) {
    price += ends(owners).reduce((sum, gap) => sum + endPrice(row, gap), ends(owners).includes(0) ? 0 : 37);
    owners = knit(row, owners);
    const loads = loadsOf(owners, needles.count);
    if (loads.some(full)) return Infinity;
    price += loads.reduce((sum, load) => sum + needlePrice(load, owners.length, needles), 0);
    if (owners.length === stitches) {
      price += ends(owners).filter((gap, index) => gap !== breaks[index]).length;
    }
  }
  return price;
}

function loadsOf(owners: readonly number[], count: number): number[] {
  return Array.from({ length: count }, (_, needle) => owners.filter((owner) => owner === needle).length);
}

/** The gaps where one needle ends and the next begins. */
function ends(owners: readonly number[]): number[] {
  return owners.flatMap((owner, at) => (owner !== owners.at(at - 1) ? [at] : []));
}

// What a step makes lies on the needle of the first stitch it takes; what is made in a gap, on that of the next stitch; at
// the end of the round, on the last needle.
function knit(row: Row, owners: readonly number[]): number[] {
  return row.steps.flatMap((step) => {
    const owner = step.takes === 0 && step.from === owners.length ? owners.at(-1)! : owners[step.from]!;
    return new Array<number>(step.makes).fill(owner);
  });
}

function needlePrice(load: number, stitches: number, { count, usable }: Needles): number {
  const fair = Math.floor(stitches / count);
  const shares = Math.max(0, load - Math.floor(0.6 * stitches + 1e-9), Math.ceil(0.15 * stitches - 1e-9) - load);
  const few = load < 2 && stitches >= 4 ? 1000 : 4 * Math.max(0, 4 - load);
  return (load - fair) * (load - fair - 1) + shares + few + Math.max(0, load - usable);
}

/** What one row pays for a needle end in a gap. */
function endPrice(row: Row, gap: number): number {
  const stitches = row.before.stitches.length;
  const covers = (at: number) => row.steps.find((step) => step.from <= at && at < step.from + step.takes)!;
  const [before, after] = [covers((gap + stitches - 1) % stitches), covers(gap)];
  if (before === after && gap !== after.from) return Infinity;
  const made = row.steps.filter((step) => step.takes === 0);
  const first = made.find((step) => step.from === gap) ?? after;
  const trailing = gap === 0 ? made.findLast((step) => step.from === stitches) : undefined;
  const grows = [first.operation.family, trailing?.operation.family ?? 'knit'].filter(isGrowth).length;
  const last = before.operation.family === 'increase' ? 1 : 0;
  return 4 * (grows + last) + patternPrice(row, gap, [before, first]) + pairPrice(row, gap);
}

function isGrowth(family: string): boolean {
  return family === 'increase' || family === 'yarn-over';
}

function patternPrice(row: Row, gap: number, [last, first]: readonly [Step, Step]): number {
  const purls = [last, first].map((step) => step.operation.family === 'purl');
  const stretch = row.repeats
    .filter(({ from, to, unit }) => unit > 1 && to - from >= 2 * unit && from <= gap && gap < to)
    .sort((left, right) => right.to - right.from - (left.to - left.from))[0];
  if (!stretch) return purls[1] && !purls[0] ? 1 : 0;
  const names = row.steps
    .filter((step) => step.takes > 0 && step.from >= stretch.from && step.from < stretch.from + stretch.unit)
    .map((step) => step.operation.name);
  const word = [...new Set(names)].sort().join('');
  if (word === 'kp' && stretch.unit <= 8) return purls[1] || !purls[0] ? stretch.unit ** 2 : 0;
  const isPlain = word.length === 1 && names.length === stretch.unit;
  return (gap - stretch.from) % stretch.unit === 0 || isPlain ? 0 : stretch.unit ** 2;
}

// k2tog, at most two plain stitches, ssk, with the needle end somewhere between.
function pairPrice(row: Row, gap: number): number {
  const word = row.steps.flatMap((step) =>
    step.from === gap && step.takes > 0 ? ['|', letter(step)] : [letter(step)]
  );
  return gap > 0 && /R(?:\||-\||\|-|--\||-\|-|\|--)L/u.test(word.join('')) ? 4 : 0;
}

function letter({ operation: { family, leans, takes } }: Step): string {
  if (family === 'decrease') return { right: 'R', left: 'L', none: 'N' }[leans];
  return takes === 1 ? '-' : 'x';
}
