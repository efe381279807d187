/** What holds for every text, however spoilt: places lie inside it, and every row keeps account of its stitches. */

import type { Fabric, Row, Span, Workpiece } from '$lib/core/index.ts';

/** Every span anywhere in a value. */
export function spansIn(value: unknown): Span[] {
  if (typeof value !== 'object' || value === null) return [];
  const inner = Object.values(value).flatMap(spansIn);
  const { from, to } = value as Record<string, unknown>;
  return typeof from === 'number' && typeof to === 'number' ? [{ from, to }, ...inner] : inner;
}

/** Laws that a workpiece breaks, in words; empty when it keeps them all. */
export function brokenLaws(workpiece: Workpiece): string[] {
  const { text, pattern, fabrics, diagnostics } = workpiece;
  const spans = [...spansIn(pattern), ...spansIn(diagnostics), ...fabrics.flatMap(spansOf)];
  return [
    ...spans
      .filter(({ from, to }) => !(from >= 0 && to >= from && to <= text.length))
      .map(({ from, to }) => `the span from ${from} to ${to} leaves the text of ${text.length}`),
    ...(pattern.sizes.length === fabrics.length ? [] : ['not every size was knitted']),
    ...fabrics.flatMap((fabric) => rowsOf(fabric).flatMap(wrongAccount)),
    ...fabrics
      .filter((fabric) => endsSilently(workpiece, fabric))
      .map(({ size }) => `stages of size "${size}" are lost`)
  ];
}

// Knitting may end early at a limit, but says so.
function endsSilently({ pattern }: Workpiece, { stages, diagnostics }: Fabric): boolean {
  return stages.length < pattern.stages.length && !diagnostics.some(({ code }) => code.startsWith('too-many-'));
}

function rowsOf({ stages }: Fabric): Row[] {
  return stages.flatMap(({ rows }) => rows);
}

// Runs and repeats of a row are told like spans, but in stitches.
function spansOf(fabric: Fabric): Span[] {
  return rowsOf(fabric).flatMap(({ span, steps }) => [span, ...steps.map((step) => step.span)]);
}

// before + made − taken − held = after. Held is what no step took and what is not there any more.
function wrongAccount(row: Row): string[] {
  const { before, after, steps, label } = row;
  const change = steps.reduce((sum, { makes, takes }) => sum + makes - takes, 0);
  const held = countHeld(row);
  const expected = before.stitches.length + change - held;
  return after.stitches.length === expected
    ? []
    : [
        `${label}: ${before.stitches.length} before, ${change} by steps, ${held} held, but ${after.stitches.length} after`
      ];
}

function countHeld({ before, after, steps }: Row): number {
  const { length } = before.stitches;
  const gone = new Set(before.stitches.map(({ id }) => id));
  for (const { id } of after.stitches) gone.delete(id);
  for (const { from, takes } of steps) {
    for (let offset = 0; offset < takes; offset += 1) gone.delete(before.stitches[(from + offset) % length]?.id ?? -1);
  }
  return gone.size;
}
