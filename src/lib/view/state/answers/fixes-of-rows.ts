/** Mends a row that leaves stitches unworked. */

import type { Diagnostic, Row, Workpiece } from '$lib/core/index.ts';
import type { Fix, Mistake } from './fixes.ts';
import { stepsIn, type ToldStep } from './told.ts';

/** Adds what works the rest of the row, or the turn that leaves it, behind the last thing told in it. */
export function finishRow({ found, workpiece }: Mistake): readonly Fix[] {
  const body = bodyAt(found, workpiece);
  if (!body) return [];
  const row = firstRow(workpiece, isAt(found));
  const endings = row?.shape === 'flat' ? [restOf(row, workpiece.text), 'turn'] : [restOf(row, workpiece.text)];
  return endings.map((words) => ({
    words: `Add "${words}"`,
    edits: [{ from: body.to, to: body.to, insert: `, ${words}` }]
  }));
}

function firstRow({ fabrics }: Workpiece, is: (row: Row) => boolean): Row | undefined {
  for (const { stages } of fabrics) {
    for (const { rows } of stages) {
      const found = rows.find(is);
      if (found) return found;
    }
  }
  return undefined;
}

function isAt({ span }: Diagnostic): (row: Row) => boolean {
  return (row) => row.span.from <= span.from && span.to <= row.span.to;
}

/**
 * Where the instructions stand of the row, or of the part of it over one section, that a message is about; `null` where
 * they are told elsewhere ("Rnd 5: as rnd 2").
 */
export function bodyAt({ span }: Diagnostic, { pattern }: Workpiece): Diagnostic['span'] | null {
  const stage = pattern.stages.find((one) => one.span.from <= span.from && span.to <= one.span.to);
  for (const told of stage?.statements ?? []) {
    if (told.kind !== 'row' || told.span.from > span.from || told.span.to < span.to) continue;
    const part = told.span.from === span.from ? told : [...stepsIn(told.body)].find(isOver(span));
    const spans = part && 'body' in part ? part.body.map((step) => step.span) : [];
    const [first, last] = [spans[0], spans.at(-1)];
    if (first && last && span.from <= first.from && last.to <= span.to) return { from: first.from, to: last.to };
  }
  return null;
}

function isOver(span: Diagnostic['span']): (step: ToldStep) => boolean {
  return (step) => step.kind === 'over' && step.span.from === span.from;
}

// A wrong side is purled back where the row purls; the verb is written out where the text does so.
function restOf(row: Row | undefined, text: string): string {
  const words = row ? text.slice(row.span.from, row.span.to) : '';
  const purls = row?.side === 'WS' && /\bp(?:url)?\b|\bp\d/iu.test(words);
  const isLong = /\b(?:knit|purl)\b/iu.test(words);
  return `${purls ? (isLong ? 'purl' : 'p') : isLong ? 'knit' : 'k'} to end`;
}
