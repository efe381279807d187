/** Patterns without their places in the text, so that two texts can be compared by what they say. */

import type { Fabric, Pattern } from '$lib/core/index.ts';
import type { Statement } from '$lib/core/model/pattern.ts';
import { countAfter } from './counts.ts';

/** What a pattern says: everything but places, lines and troubles. */
export function meaningOf(pattern: Pattern) {
  const { title, sizes, gauge, needles, introduction, stages } = pattern;
  return {
    title,
    sizes,
    gauge,
    needles,
    introduction: meaningOfStatements(introduction),
    stages: stages.map(({ name, over, statements }) => ({
      name,
      over: withoutPlaces(over),
      statements: meaningOfStatements(statements)
    }))
  };
}

// A lead-in without a move behind it ("Re-seat the sts:") does nothing.
function meaningOfStatements(statements: readonly Statement[]): unknown[] {
  return statements
    .filter((told) => !(told.kind === 'arrange' && told.actions.length === 0))
    .map((told) => (told.kind === 'prose' ? { kind: 'prose', text: plainProse(told.text) } : withoutPlaces(told)));
}

// Where lines end, and which full stops close a sentence or an abbreviation ("inc. 1 st. at"), is no part of what prose says.
function plainProse(text: string): string {
  return text.replaceAll(/\./gu, '').replaceAll(/\s+/gu, ' ').trim();
}

function withoutPlaces(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutPlaces);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== 'span')
      .map(([key, inner]) => [key, withoutPlaces(inner)])
  );
}

/** Stitches after every row of every stage, with the label of the row. */
export function countsOfRows(fabrics: readonly Fabric[]) {
  return fabrics.map(({ stages }) =>
    stages.map(({ name, rows }) => ({ name, rows: rows.map((row) => `${row.label}: ${countAfter(row)}`) }))
  );
}
