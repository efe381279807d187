/** The stage in work, and what kind of row a told row is in it. */

import type { Row, StatedLayout } from '../model/fabric.ts';
import type { Instruction, RowText, StageText } from '../model/pattern.ts';
import type { Ring } from '../model/ring.ts';
import { everySize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import { standard } from './context.ts';
import { hasTurn } from './run.ts';
import { usesNeedles } from './told-needles.ts';
import { handGap, type Tube } from './tube.ts';

/** The stage in work. */
export interface StageInWork {
  readonly text: StageText;
  /** Whether rows are worked flat now. */
  flat: boolean;
  readonly entry: Ring;
  readonly rows: Row[];
  readonly stated: StatedLayout[];
  /** Whether the text under the heading speaks of needles. */
  readonly needleWords: boolean;
  readonly notes: string[];
  /** Whether the next heading starts flat work, so that the last round here may stop where that begins. */
  readonly flatNext: boolean;
}

/** A row to be knitted, and the text it was told in (`null` for a plain row that is not written out). */
export interface RowToKnit {
  readonly label: string;
  readonly span: Span;
  readonly body: readonly Instruction[];
  readonly text: RowText | null;
}

/** "Row 17: K13." as the last flat row leaves the yarn in the middle, where the round goes on. */
export function endsFlatWork(stage: StageInWork, text: RowText | null): boolean {
  const rows = stage.text.statements.filter(({ kind }) => kind === 'row' || kind === 'repeat-rows');
  if (text === null || text !== rows.at(-1) || stage.flatNext) return false;
  return text.body.length === 1 && text.body[0]!.kind === 'work';
}

/** An unnumbered row may be part of a round: after a flat stage, before one, or where the text calls it a row. */
export function mayStopShort(stage: StageInWork, text: RowText | null, tube: Tube): boolean {
  if (text === null || text.numbers.kind !== 'next' || hasTurn(text.body)) return false;
  return stage.flatNext || handGap(tube) !== 0 || /^row/iu.test(text.noun);
}

/** Rows of a stage as a text counts them: steps before the rows of a flat stage are none of them. */
export function rowsOf({ rows, flat }: StageInWork): number {
  if (!flat) return rows.length;
  const worked = rows.filter(({ shape }) => shape === 'flat');
  const numbered = worked.filter(({ label }) => /\d/u.test(label) && !/^set/iu.test(label));
  return (numbered.length > 0 ? numbered : worked).length;
}

/** "Turn, make a double stitch": the stitch that was worked last is pulled up as the first of the next row. */
export function dueAfter(body: readonly Instruction[]): Instruction[] {
  const turn = body.findLast((part) => part.kind === 'turn');
  if (turn?.kind !== 'turn' || turn.mark !== 'double') return [];
  return [{ kind: 'work', operation: standard('DS'), count: everySize(1), span: turn.span }];
}

/** "Knit the first 9 stitches of N1 on to the end of N3", "Next rnd: K to m" before the rows of a flat stage. */
export function isStepBefore(text: RowText | null): boolean {
  if (text === null || text.numbers.kind !== 'next' || text.side !== null) return false;
  return (usesNeedles(text.body) || /^r(?:nd|ound)/iu.test(text.noun)) && !hasTurn(text.body);
}
