/** Works earlier rows again: so many times, until a count is reached, or every so many rows. */

import type { Instruction, RowReference, Statement } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import { standard } from './context.ts';
import { stitchesOn } from './assertions.ts';
import type { Knitter, ToldRow } from './knitter.ts';
import { sectionRun } from './run.ts';

type RepeatRows = Extract<Statement, { kind: 'repeat-rows' }>;

/** Works the rows that a statement refers to. */
export function repeatRows(knitter: Knitter, statement: RepeatRows): void {
  const rows = findRows(knitter, statement.rows);
  if (!rows) {
    knitter.context.report('rows-missing', statement.span, { about: told(statement.rows) });
    return;
  }
  const { extent } = statement;
  if (extent.kind === 'until') return untilCount(knitter, { statement, rows, goal: extent });
  const count = forSize(extent.count, knitter.context.size) ?? 0;
  if (extent.kind === 'rows') return forRows(knitter, rows, count);
  const more = extent.meaning === 'total' ? count - 1 : count;
  for (let time = 0; time < more; time += 1) once(knitter, { statement, rows });
}

function told(reference: RowReference): string {
  if (reference.kind === 'numbers') return `row ${reference.numbers.join(', ')}`;
  return reference.kind === 'named' ? `"${reference.name}"` : `the last ${reference.count} rows`;
}

function findRows(knitter: Knitter, reference: RowReference): ToldRow[] | null {
  if (reference.kind === 'last') {
    const rows = knitter.history.slice(-reference.count);
    return rows.length === reference.count ? rows : null;
  }
  if (reference.kind === 'named') {
    const text = knitter.named.get(reference.name.toLowerCase());
    return text ? [{ text, number: null }] : null;
  }
  const rows = reference.numbers.map((number) => ({ number, text: knitter.numbered.get(number) }));
  if (rows.some((row) => row.text === undefined)) return null;
  return rows.map((row) => ({ number: row.number, text: row.text! }));
}

// Plain rows come first: the rows that are repeated have just been worked.
function once(knitter: Knitter, what: { readonly statement: RepeatRows; readonly rows: readonly ToldRow[] }): void {
  workPlainBetween(knitter, what.statement);
  for (const row of what.rows) knitter.work(withoutAssertions(row), { remember: false });
}

function workPlainBetween(knitter: Knitter, statement: RepeatRows): void {
  const body: Instruction[] = [
    { kind: 'work-to', operation: standard('k'), target: { kind: 'end' }, span: statement.span }
  ];
  for (let plain = 0; plain < statement.plainBetween; plain += 1) knitter.workPlain('Plain rnd', body, statement.span);
}

// A total printed after the first time does not hold after the others; a change does.
function withoutAssertions(row: ToldRow): ToldRow {
  const assertions = row.text.assertions.filter((assertion) => assertion.kind === 'change');
  return { ...row, text: { ...row.text, assertions } };
}

function forRows(knitter: Knitter, rows: readonly ToldRow[], count: number): void {
  for (let row = 0; row < count; row += 1) {
    knitter.work(withoutAssertions(rows[row % rows.length]!), { remember: false });
  }
}

interface Until {
  readonly statement: RepeatRows;
  readonly rows: readonly ToldRow[];
  readonly goal: Extract<RepeatRows['extent'], { kind: 'until' }>;
}

// Stops after the row that reaches the count. A repeat that brings no change, or that steps over the count, is a mistake.
function untilCount(knitter: Knitter, what: Until): void {
  const goal = forSize(what.goal.count, knitter.context.size);
  if (goal === null) return;
  const measure = () => counted(knitter, what.goal);
  const falling = measure() > goal;
  const beyond = () => (falling ? measure() < goal : measure() > goal);
  while (measure() !== goal) {
    const before = measure();
    workUntil(knitter, what, () => measure() === goal);
    if (measure() === goal) return;
    if (measure() === before || beyond()) {
      knitter.context.where = knitter.stage.text.name;
      knitter.context.report('unreachable-count', what.statement.span, { expected: goal, found: measure() });
      return;
    }
  }
}

function workUntil(knitter: Knitter, what: Until, reached: () => boolean): void {
  workPlainBetween(knitter, what.statement);
  for (const row of what.rows) {
    knitter.work(withoutAssertions(row), { remember: false });
    if (reached()) return;
  }
}

// "On each needle" is measured where most are left, so that all come down to the number.
function counted(knitter: Knitter, { of, on }: Until['goal']): number {
  const ring = knitter.ring();
  const onNeedles = on && knitter.tube ? stitchesOn(on, knitter.tube, knitter.context) : [];
  if (onNeedles.length > 0) return Math.max(...onNeedles);
  const run = of === null ? null : sectionRun(ring, of);
  return run ? run.to - run.from : ring.stitches.length;
}
