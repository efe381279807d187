/** Works told rows another time. */

import type { Instruction, Statement } from '../model/pattern.ts';
import type { RowExtent } from '../model/repeating.ts';
import { standard } from './context.ts';
import type { Knitter, ToldRow } from './knitter.ts';

/** A sentence that repeats rows. */
export type RepeatRows = Extract<Statement, { kind: 'repeat-rows' }>;

/** One way of telling when repeating stops. */
export type Of<Kind extends RowExtent['kind']> = Extract<RowExtent, { kind: Kind }>;

/** The sentence and the rows that it repeats. */
export interface Repeat {
  readonly statement: RepeatRows;
  readonly rows: readonly ToldRow[];
}

/** Works all rows once more. Plain rows come first: the rows that are repeated have just been worked. */
export function once(knitter: Knitter, what: Repeat): void {
  workPlainBetween(knitter, what.statement);
  for (const row of what.rows) again(knitter, row);
}

/** Works one row again. A total printed after the first time does not hold after the others; a change does. */
export function again(knitter: Knitter, row: ToldRow): void {
  const assertions = row.text.assertions.filter((assertion) => assertion.kind === 'change');
  knitter.work({ ...row, text: { ...row.text, assertions } }, { remember: false });
}

/** Works the plain rows that stand between two repeats. */
export function workPlainBetween(knitter: Knitter, { plainBetween, span }: RepeatRows): void {
  const body: Instruction[] = [{ kind: 'work-to', operation: standard('k'), target: { kind: 'end' }, span }];
  for (let plain = 0; plain < plainBetween; plain += 1) knitter.workPlain('Plain rnd', body, span);
}
