/** Puts the rows under a heading in the order of working: numbered rows that belong together are sorted by number. */

import type { Instruction, RowText, Statement } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';

/** One row in the order of working. */
export interface ScheduledRow {
  readonly text: RowText;
  /** Its number; `null` for a row without one. */
  readonly number: number | null;
}

/** Rows that are told together, or any other statement. */
export type Scheduled =
  | { readonly kind: 'rows'; readonly rows: readonly ScheduledRow[] }
  | { readonly kind: 'other'; readonly statement: Exclude<Statement, RowText> };

/**
 * Orders the statements of a stage for one size.
 *
 * "Rnd 1", "Rnd 3" and "All even rnds" make one block, worked 1, 2, 3 … A block ends before a statement of another kind,
 * and before a number that it already has.
 */
export function schedule(statements: readonly Statement[], size: number): Scheduled[] {
  const result: Scheduled[] = [];
  let block = new Map<number, RowText>();
  let parity: RowText[] = [];
  const close = () => {
    const rows = [...withParity(block, parity)].sort(([left], [right]) => left - right);
    if (rows.length > 0) result.push({ kind: 'rows', rows: rows.map(([number, text]) => ({ number, text })) });
    block = new Map();
    parity = [];
  };
  for (const statement of statements) {
    if (!isFor(statement, size)) continue;
    if (statement.kind === 'row' && statement.numbers.kind === 'parity') {
      parity.push(statement);
    } else if (statement.kind === 'row' && statement.numbers.kind === 'numbers') {
      if (statement.numbers.numbers.some((number) => block.has(number))) close();
      for (const number of statement.numbers.numbers) block.set(number, statement);
    } else {
      if (!isSilent(statement)) close();
      result.push(
        statement.kind === 'row'
          ? { kind: 'rows', rows: new Array<ScheduledRow>(timesOf(statement)).fill({ text: statement, number: null }) }
          : { kind: 'other', statement }
      );
    }
  }
  close();
  return result;
}

// "Next 7 rnds: K."
function timesOf({ numbers }: RowText): number {
  return numbers.kind === 'next' ? (numbers.times ?? 1) : 1;
}

function isFor(statement: Statement, size: number): boolean {
  if (statement.kind === 'row' && isDashed(statement, size)) return false;
  return !('sizes' in statement) || statement.sizes === null || statement.sizes.includes(size);
}

// "[k10 (-, 14), k2tog] 4 times. 44 (-, 60) sts": a dash in the printed count, or in every part of the row, leaves the size out.
function isDashed({ body, assertions }: RowText, size: number): boolean {
  const total = assertions.find(({ kind }) => kind === 'total');
  if (total?.kind === 'total') return total.count.length > 1 && forSize(total.count, size) === null;
  return body.length > 0 && body.every((part) => isDashedPart(part, size));
}

function isDashedPart(part: Instruction, size: number): boolean {
  if (part.kind === 'group') {
    const dashed = part.extent.kind !== 'to' && forSize(part.extent.count, size) === null;
    return dashed || part.body.some((inner) => isDashedPart(inner, size));
  }
  return part.kind === 'work' && forSize(part.count, size) === null;
}

// Prose between two rows does not part them.
function isSilent(statement: Statement): boolean {
  return statement.kind === 'prose';
}

// "All even rnds" reach as far as the numbers around them; alone, they give their first row.
function withParity(block: ReadonlyMap<number, RowText>, parity: readonly RowText[]): Map<number, RowText> {
  const rows = new Map(block);
  const most = Math.max(0, ...block.keys());
  for (const text of parity) {
    if (text.numbers.kind !== 'parity') continue;
    const first = text.numbers.from;
    for (let number = first; number <= Math.max(most, first); number += 2) {
      if (!rows.has(number)) rows.set(number, text);
    }
  }
  return rows;
}
