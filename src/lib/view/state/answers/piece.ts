/** A knitted text in outline. */

import { lineFinder, type Fabric, type Stage, type Workpiece } from '$lib/core/index.ts';
import { countLines, kindsOfLines } from './counts.ts';
import type { Message, Piece, StageOutline } from './question.ts';

/** Longest title that is shown. */
const TITLE = 120;

/** What is shown of a workpiece in one of its sizes. */
export function outlinePiece(workpiece: Workpiece, size: number): Piece {
  const fabric = workpiece.fabrics[size]!;
  return {
    title: fabric.title.slice(0, TITLE),
    sizes: workpiece.pattern.sizes,
    size,
    messages: messagesOf(workpiece),
    counts: countLines(fabric),
    kinds: kindsOfLines(workpiece),
    stages: outlineStages(fabric)
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

function messagesOf({ text, diagnostics }: Workpiece): Message[] {
  const lineOf = lineFinder(text);
  return diagnostics.map((diagnostic) => ({ ...diagnostic, line: lineOf(diagnostic.span.from) }));
}
