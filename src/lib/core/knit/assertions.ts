/** Compares printed counts with what was knitted. */

import type { Row } from '../model/fabric.ts';
import type { NeedleRefs } from '../model/needle-words.ts';
import type { Assertion } from '../model/pattern.ts';
import { wrap, type Ring } from '../model/ring.ts';
import { forSize } from '../model/sized.ts';
import type { Context } from './context.ts';
import { sectionRun, type Run } from './run.ts';
import { sameName } from './targets.ts';
import { countOn, toldSegments } from './told-needles.ts';
import type { Tube } from './tube.ts';

/** What there is to compare with. */
export interface Knitted {
  readonly ring: Ring;
  /** The last row; `null` before the first. */
  readonly row: Row | null;
  /** The run in work, in the ring now; `null` in a round. */
  readonly run: Run | null;
  /** Stitches on the needles that the text worked on to or slipped to last. */
  readonly onNeedles: readonly number[];
  /** Whether a bare count may be that of one needle: flat work is being prepared. */
  readonly mayBePart: boolean;
  /** Rows worked under this heading. */
  readonly rows: number;
}

interface Comparison {
  readonly expected: number;
  readonly found: number;
  readonly about: string;
}

/** Keeps the last difference, so that one slip that runs through the following counts is told once. */
export class Counts {
  private lastDifference = 0;
  /** The row whose parts were told to differ: where one part has a stitch too many, another has one too few. */
  private wrongParts: Row | null = null;

  constructor(private readonly context: Context) {}

  /** Checks one printed count; a mismatch is reported unless it only repeats the difference reported before. */
  check(assertion: Assertion, knitted: Knitted): void {
    if (assertion.kind === 'on-needles') return;
    const comparison = compare(assertion, knitted, this.context.size);
    if (!comparison) return;
    const difference = comparison.found - comparison.expected;
    if (difference !== 0 && this.isNew(assertion, difference, knitted.row)) {
      this.context.report('count-mismatch', assertion.span, comparison);
    }
    if (difference !== 0 || assertion.kind === 'total') this.lastDifference = difference;
  }

  private isNew(assertion: Assertion, difference: number, row: Row | null): boolean {
    if (assertion.kind === 'change') return true;
    if (assertion.kind !== 'part') return difference !== this.lastDifference;
    const told = row !== null && this.wrongParts === row;
    this.wrongParts = row;
    return !told && difference !== this.lastDifference;
  }

  /** Checks a number printed for one needle, or for each of several. */
  checkNeedles(assertion: Extract<Assertion, { kind: 'on-needles' }>, tube: Tube): void {
    const expected = forSize(assertion.count, this.context.size);
    const found = stitchesOn(assertion.needles, tube, this.context).find((stitches) => stitches !== expected);
    if (expected === null || found === undefined) return;
    this.context.report('count-mismatch', assertion.span, { expected, found, about: 'stitches on a needle' });
  }
}

/** Stitches on each of some told needles; those that the text has not told of are left out. */
export function stitchesOn(needles: NeedleRefs, tube: Tube, context: Context): number[] {
  if (needles === 'each') return (toldSegments(tube) ?? []).map(({ stitches }) => stitches);
  return needles.flatMap((ref) => {
    const needle = context.needles.find(ref);
    return needle === null ? [] : [countOn(tube, needle)];
  });
}

function compare(
  assertion: Exclude<Assertion, { kind: 'on-needles' }>,
  knitted: Knitted,
  size: number
): Comparison | null {
  if (assertion.kind === 'loads') return compareLoads(assertion.loads, knitted, size);
  const expected = forSize(assertion.count, size);
  if (expected === null) return null;
  switch (assertion.kind) {
    case 'total':
      return compareTotal(expected, knitted);
    case 'change':
      return compareChange(expected, knitted);
    case 'rows':
      return { expected, found: knitted.rows, about: 'rows' };
    case 'part':
      return comparePart(expected, assertion.of, knitted);
  }
}

// In a flat stage a bare count may mean the run in work or the whole ring.
function compareTotal(expected: number, knitted: Knitted): Comparison {
  const ring = knitted.ring.stitches.length;
  const run = knitted.run ? knitted.run.to - knitted.run.from : ring;
  const onNeedle = knitted.onNeedles.includes(expected) && knitted.mayBePart ? expected : run;
  return { expected, found: expected === ring ? ring : onNeedle, about: 'stitches' };
}

function compareChange(expected: number, { row }: Knitted): Comparison | null {
  if (!row) return null;
  const change = row.after.stitches.length - row.before.stitches.length;
  const about = expected < 0 ? 'stitches decreased' : 'stitches increased';
  return { expected: Math.abs(expected), found: Math.abs(change), about };
}

function comparePart(expected: number, part: string, knitted: Knitted): Comparison | null {
  if (part === 'unworked') return compareUnworked(expected, knitted);
  if (part.includes('wrapped')) return null;
  if (part === 'between markers') return compareBetween(expected, knitted.ring);
  const marked = /^(to|after) marker (.+)$/u.exec(part);
  if (marked) return compareMarked(expected, { after: marked[1] === 'after', name: marked[2]! }, knitted.ring);
  const section = sectionRun(knitted.ring, part);
  const found = section ? lengthOfSection(knitted.ring, part) : likeliest(expected, knitted);
  return found === null ? null : { expected, found, about: `${part} stitches` };
}

// A part without a name of its own: the run in work, or a needle that the text has just worked on to.
function likeliest(expected: number, { run, onNeedles }: Knitted): number | null {
  const counts = [...(run ? [run.to - run.from] : []), ...onNeedles];
  return counts.includes(expected) ? expected : (counts[0] ?? null);
}

// "13 sts between markers": between one and the next.
function compareBetween(expected: number, ring: Ring): Comparison | null {
  const places = ring.markers.filter(({ kind }) => kind === 'ring').map(({ at }) => at);
  const lengths = places.map((at, index) => wrap((places[index + 1] ?? places[0]!) - at, ring.stitches.length));
  if (places.length < 2) return null;
  const found = lengths.includes(expected) ? expected : lengths[0]!;
  return { expected, found, about: 'stitches between markers' };
}

// "(4 sts unworked)": those ahead of the turn.
function compareUnworked(expected: number, { row }: Knitted): Comparison | null {
  if (!row) return null;
  const found = row.side === 'RS' ? row.unworked.after : row.unworked.before;
  return { expected, found, about: 'unworked stitches' };
}

// "24 sts to marker A" counts from the BOR, "24 sts after marker B" to it.
function compareMarked(
  expected: number,
  told: { readonly after: boolean; readonly name: string },
  ring: Ring
): Comparison | null {
  const marker = ring.markers.find((candidate) => candidate.kind === 'ring' && sameName(candidate.name, told.name));
  if (!marker) return null;
  const found = told.after ? ring.stitches.length - marker.at : marker.at;
  return { expected, found, about: `stitches ${told.after ? 'after' : 'to'} marker ${told.name}` };
}

function lengthOfSection(ring: Ring, name: string): number {
  const run = sectionRun(ring, name);
  return run ? run.to - run.from : 0;
}

function compareLoads(
  loads: Extract<Assertion, { kind: 'loads' }>['loads'],
  knitted: Knitted,
  size: number
): Comparison {
  const expected = loads.reduce((sum, load) => sum + (forSize(load, size) ?? 0), 0);
  return { expected, found: knitted.ring.stitches.length, about: 'stitches on the needles' };
}
