/** A knitted text in outline. */

import { lineFinder, type Fabric, type Stage, type Workpiece } from '$lib/core/index.ts';
import { countLines, kindsOfLines } from './counts.ts';
import { fixesFor } from './fixes.ts';
import { keyOf, namesIn, termsOf, type Term } from './glossary.ts';
import { Last } from './last.ts';
import type { Message, Piece, StageOutline } from './question.ts';

/** Longest title that is shown. */
const TITLE = 120;

/** Messages for which fixes are sought: the first ones, that a long list stays quick. */
const MENDED = 200;

/** The stitches of the last key: while other lines are written, they stay. */
const terms = new Last<readonly Term[]>();

/** What is shown of a workpiece in one of its sizes. */
export function outlinePiece(workpiece: Workpiece, size: number): Piece {
  const fabric = workpiece.fabrics[size]!;
  const key = keyOf(workpiece);
  const known = terms.of([key], () => termsOf(key));
  return {
    title: fabric.title.slice(0, TITLE),
    sizes: workpiece.pattern.sizes,
    size,
    messages: messagesOf(workpiece, known),
    counts: countLines(workpiece, size),
    kinds: kindsOfLines(workpiece),
    stages: outlineStages(fabric),
    glossary: { terms: known, ...namesIn(workpiece.pattern) }
  };
}

/** The stages of a fabric in outline. */
export function outlineStages(fabric: Fabric): StageOutline[] {
  return fabric.stages.map(outlineStage);
}

function outlineStage({ name, line, shape, entry, start, exit, rows }: Stage): StageOutline {
  return {
    name,
    line,
    flat: shape === 'flat',
    stitches: { entry: entry.stitches.length, start: start.stitches.length, exit: exit.stitches.length },
    rows: rows.map((row) => ({ label: row.label, line: row.line, side: row.side }))
  };
}

function messagesOf(workpiece: Workpiece, terms: readonly Term[]): Message[] {
  const lineOf = lineFinder(workpiece.text);
  return workpiece.diagnostics.map((found, index) => ({
    ...found,
    line: lineOf(found.span.from),
    fixes: index < MENDED ? fixesFor({ found, workpiece, terms }) : []
  }));
}
