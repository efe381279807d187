/** Works earlier rows again: so many times, until a count is reached, or every so many rows. */

import type { Assertion } from '../model/pattern.ts';
import type { RowReference } from '../model/repeating.ts';
import { forSize } from '../model/sized.ts';
import { again, once, type Of, type Repeat, type RepeatRows } from './again.ts';
import { leaveOpen } from './even.ts';
import type { Knitter, ToldRow } from './knitter.ts';
import { untilAllWorked, untilCount, upToLength } from './repeat-until.ts';

/** Works the rows that a statement refers to. */
export function repeatRows(knitter: Knitter, statement: RepeatRows): void {
  const rows = findRows(knitter, statement.rows);
  if (!rows) {
    knitter.context.report('rows-missing', statement.span, { about: told(statement.rows) });
    return;
  }
  repeat(knitter, { statement, rows });
}

function repeat(knitter: Knitter, what: Repeat): void {
  const { extent, span } = what.statement;
  switch (extent.kind) {
    case 'times':
      return forTimes(knitter, what, extent);
    case 'until':
      return untilCount(knitter, { ...what, goal: extent });
    case 'rows':
      return forRows(knitter, what, extent);
    case 'all-worked':
      return untilAllWorked(knitter, what);
    case 'length':
      return upToLength(knitter, what, extent);
    case 'free':
      return leaveOpen(knitter, span);
  }
}

function forTimes(knitter: Knitter, what: Repeat, { count, meaning }: Of<'times'>): void {
  const times = forSize(count, knitter.context.size) ?? 0;
  if (meaning === 'unclear') return unclearTimes(knitter, what, times);
  const more = meaning === 'total' ? times - 1 : times;
  for (let time = 0; time < more; time += 1) once(knitter, what);
}

// "five times" after the rows: five in all or five more. The count printed behind decides where it can.
function unclearTimes(knitter: Knitter, what: Repeat, times: number): void {
  const { context } = knitter;
  const { span, assertions } = what.statement;
  const isPrinted = () => assertions.some((assertion) => agrees(knitter, assertion));
  const decide = (found: number) => context.report('repeats-decided', span, { about: String(times), found });
  const start = knitter.ring().stitches.length;
  for (let time = 1; time < times; time += 1) once(knitter, what);
  const before = knitter.ring().stitches.length;
  const changes = times === 1 || before !== start;
  if (isPrinted() && changes) return decide(times);
  once(knitter, what);
  context.where = knitter.stage.text.name;
  if (isPrinted() && changes) decide(times + 1);
  else if (!changes || assertions.length === 0)
    context.report('ambiguous-row-repeats', span, { found: times, expected: times + 1 });
}

function agrees(knitter: Knitter, assertion: Assertion): boolean {
  if (assertion.kind !== 'total' && assertion.kind !== 'rows') return false;
  const printed = forSize(assertion.count, knitter.context.size);
  return printed === (assertion.kind === 'total' ? knitter.ring().stitches : knitter.stage.rows).length;
}

// A total counts the rows of the first time.
function forRows(knitter: Knitter, { rows }: Repeat, extent: Of<'rows'>): void {
  const told = forSize(extent.count, knitter.context.size) ?? 0;
  const count = extent.meaning === 'total' ? told - rows.length : told;
  for (let row = 0; row < count; row += 1) again(knitter, rows[row % rows.length]!);
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
