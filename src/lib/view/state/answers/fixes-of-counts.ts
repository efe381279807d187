/** Mends a printed count by what knitting gives. */

import type { Edit, Fix, Mistake } from './fixes.ts';

/** A number of the text, or the dash of a size that has none. */
interface Printed {
  readonly from: number;
  readonly to: number;
  readonly count: number | null;
}

/** Puts the knitted count in place of the printed one, in every size in which they differ. */
export function printKnitted(mistake: Mistake): readonly Fix[] {
  const { text, pattern } = mistake.workpiece;
  const { from, to } = mistake.found.span;
  const printed = numbersIn(text, from, to);
  const knitted = knittedBySize(mistake);
  const sizes = pattern.sizes.length;
  if (printed.length !== 1 && printed.length !== sizes) return [];
  const inSize = (size: number) => printed[printed.length === 1 ? 0 : size]!;
  if ([...knitted].some(([size, { expected }]) => inSize(size).count !== expected)) return [];
  if ([...knitted.values()].some(({ found }) => found === 0)) return [];
  const counts = pattern.sizes.map((_, size) => knitted.get(size)?.found ?? inSize(size).count);
  const edits = printed.length === 1 ? spreadOver(printed[0]!, counts) : replaceEach(printed, counts);
  return [{ words: `Print ${list(counts)}`, edits }];
}

function numbersIn(text: string, from: number, to: number): Printed[] {
  return [...text.slice(from, to).matchAll(/\d+|(?<=[\s([,])[-–—](?=[\s)\],])/gu)].map((found) => ({
    from: from + found.index,
    to: from + found.index + found[0].length,
    count: /\d/u.test(found[0]) ? Number(found[0]) : null
  }));
}

function knittedBySize({
  found,
  workpiece
}: Mistake): Map<number, { readonly expected: number; readonly found: number }> {
  const counts = new Map<number, { expected: number; found: number }>();
  workpiece.fabrics.forEach(({ diagnostics }, size) => {
    const one = diagnostics.find((other) => other.code === found.code && other.span.from === found.span.from);
    if (!one || one.found === null || one.expected === null) return;
    counts.set(size, { expected: one.expected, found: one.found });
  });
  return counts;
}

// One number stood for every size: it becomes a list where they differ now.
function spreadOver({ from, to }: Printed, counts: readonly (number | null)[]): Edit[] {
  return [{ from, to, insert: list(counts) }];
}

function replaceEach(printed: readonly Printed[], counts: readonly (number | null)[]): Edit[] {
  return printed.flatMap(({ from, to, count }, size) => {
    const knitted = counts[size] ?? null;
    return knitted === count || knitted === null ? [] : [{ from, to, insert: String(knitted) }];
  });
}

// "77 (88, 99)", or the one number that holds for all.
function list(counts: readonly (number | null)[]): string {
  const [first, ...others] = counts.map((count) => (count === null ? '–' : String(count)));
  return others.every((count) => count === first) ? first! : `${first} (${others.join(', ')})`;
}
