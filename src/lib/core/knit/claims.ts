/** Checks what the text says about its rows and stitches in words: what a row is for, of what the stitches are a multiple. */

import type { RowText, Statement } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import type { Knitter } from './knitter.ts';

/** Warns of a row that is called an increase and loses stitches, or the other way round. */
export function checkPurpose(knitter: Knitter, text: RowText): void {
  const row = knitter.stage.rows.at(-1);
  if (!row || text.purpose === null) return;
  const [expected, found] = [row.before.stitches.length, row.after.stitches.length];
  const isOpposite = text.purpose === 'inc' ? found < expected : found > expected;
  const about = text.purpose === 'inc' ? 'an increase' : 'a decrease';
  if (isOpposite) knitter.context.report('purpose-differs', text.span, { expected, found, about });
}

/** Warns when neither the round nor one of its sections has such a number of stitches. */
export function checkMultiple(knitter: Knitter, statement: Extract<Statement, { kind: 'multiple' }>): void {
  const { size } = knitter.context;
  const [of, plus] = [forSize(statement.of, size), forSize(statement.plus, size) ?? 0];
  const { stitches, sections } = knitter.ring();
  if (!of || stitches.length === 0) return;
  const counts = [stitches.length, ...sections.map(({ from, to }) => to - from)];
  if (counts.some((count) => count % of === plus % of)) return;
  const about = plus > 0 ? `${of} plus ${plus}` : String(of);
  knitter.context.report('not-a-multiple', statement.span, { found: stitches.length, about });
}
