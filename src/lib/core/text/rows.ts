/** Rows: a label and its instructions, rows "as row 2", and instructions that stand without a label. */

import type { Assertion, Instruction, RowText, Statement } from '../model/pattern.ts';
import type { Span } from '../model/span.ts';
import { readBody, type Body, type BodyOptions } from './body.ts';
import { mentionsChart } from './charts.ts';
import type { Cursor } from './cursor.ts';
import { readTimes } from './times.ts';
import { toEnd } from './whole-rows.ts';
import { readLabel, readNoun, readNumbers, readOrdinals, type RowLabel } from './labels.ts';

/** Reads a row with a label. */
export function readRow(at: Cursor, isOther: BodyOptions['isOther']): Statement[] | null {
  const first = at.at;
  const label = at.attempt(readLabel);
  if (!label) return null;
  at.scope.row = labelWords(label);
  at.scope.rowFrom = at.span(first).from;
  const same = at.attempt((inner) => readSameAs(inner, { label, first }));
  const rows = same ?? readBodies(at, { label, first, isOther });
  for (const row of rows) if (row.kind === 'row') remember(at, row);
  at.scope.row = '';
  return rows;
}

// The numbers of a label share one body, unless each works another row of a chart.
function readBodies(at: Cursor, told: RowTask): Statement[] {
  const { label, first, isOther } = told;
  const { numbers } = label;
  const worked = () => withRemarks(at, rowOf(at, { label, first, body: readBody(at, { isOther, place: 'label' }) }));
  if (numbers.kind !== 'numbers' || !mentionsChart(at)) return worked();
  const from = at.at;
  const rows = numbers.numbers.map((number, turn): Statement[] => {
    at.at = from;
    Object.assign(at.scope, { chartRow: number, chartTurn: turn });
    const one: RowLabel = { ...label, numbers: { kind: 'numbers', numbers: [number] } };
    return withRemarks(at, rowOf(at, { label: one, first, body: readBody(at, { isOther, place: 'label' }) }));
  });
  Object.assign(at.scope, { chartRow: null, chartTurn: 0 });
  return rows.flat();
}

interface RowTask {
  readonly label: RowLabel;
  readonly first: number;
  readonly isOther: BodyOptions['isOther'];
}

function labelWords({ noun, numbers, name }: RowLabel): string {
  if (numbers.kind === 'numbers') return `${noun} ${numbers.numbers[0]}`;
  return (
    name ?? (numbers.kind === 'parity' ? `${numbers.parity} ${noun.toLowerCase()}s` : `Next ${noun.toLowerCase()}`)
  );
}

interface ReadRow {
  readonly row: RowText;
  readonly remarks: readonly Span[];
}

function rowOf(at: Cursor, told: { readonly label: RowLabel; readonly first: number; readonly body: Body }): ReadRow {
  const { label, first, body } = told;
  return {
    row: {
      kind: 'row',
      ...label,
      sizes: at.scope.onlySizes,
      body: body.instructions,
      assertions: body.failed ? [] : body.assertions,
      span: at.span(first)
    },
    remarks: body.remarks
  };
}

function withRemarks(at: Cursor, { row, remarks }: ReadRow): Statement[] {
  return [row, ...remarks.map((span) => prose(at, span))];
}

/** Prose that is kept. */
export function prose(at: Cursor, span: Span): Statement {
  return { kind: 'prose', text: at.source.text.slice(span.from, span.to).trim(), span };
}

function remember(at: Cursor, row: RowText): void {
  if (row.numbers.kind !== 'numbers') return;
  for (const number of row.numbers.numbers) at.scope.rows.set(number, row);
}

// "Rnds 4-6: As rnd 2.", "Rows 3-10: as rows 1 and 2.", "Rnd 5: Rep rnd 2."
function readSameAs(at: Cursor, told: { readonly label: RowLabel; readonly first: number }): Statement[] | null {
  const from = at.at;
  if (!at.take('as', 'same') && !at.take('rep', 'repeat', 'work')) return null;
  at.skip('as', 'for', 'given');
  const references = readReferences(at);
  if (!references || !at.atStop || told.label.numbers.kind === 'parity') return null;
  const numbers = told.label.numbers.kind === 'numbers' ? told.label.numbers.numbers : [null];
  const span = at.span(told.first);
  const rows = references.map((reference) => at.scope.rows.get(reference));
  if (rows.some((row) => row === undefined)) {
    at.scope.report('row-not-found', at.span(from), { about: at.written(from) });
    const body: Instruction[] = [{ kind: 'work-to', operation: null, target: { kind: 'end' }, span }];
    return [copyOf(at, { ...told.label, body }, { numbers, span })];
  }
  return rows.map((row, index) => {
    const mine = numbers.filter((_, place) => place % rows.length === index);
    return copyOf(at, { ...told.label, body: row!.body, side: told.label.side ?? row!.side }, { numbers: mine, span });
  });
}

// "rows 1 and 2", "1st and 2nd rows, 4 times more": the numbers of the label say how often.
function readReferences(at: Cursor): readonly number[] | null {
  const numbers = at.attempt(readOrdinals)?.numbers ?? at.attempt(() => (readNoun(at) ? readNumbers(at) : null));
  at.attempt(() => (at.skip(','), readTimes(at)));
  return numbers;
}

function copyOf(
  at: Cursor,
  row: RowLabel & { readonly body: readonly Instruction[] },
  told: { readonly numbers: readonly (number | null)[]; readonly span: Span }
): Statement {
  const numbers = told.numbers.filter((number) => number !== null);
  return {
    kind: 'row',
    noun: row.noun,
    numbering: row.numbering,
    numbers: numbers.length > 0 ? { kind: 'numbers', numbers } : row.numbers,
    name: row.name,
    purpose: row.purpose,
    side: row.side,
    sizes: at.scope.onlySizes,
    body: row.body,
    assertions: [],
    span: told.span
  };
}

/** Reads instructions without a label: a part of a row, or the row that comes next. */
export function readFreeRow(at: Cursor, isOther: BodyOptions['isOther']): Statement[] | null {
  const first = at.at;
  return at.attempt(() => {
    at.skip('then', 'now');
    const body = readBody(at, { isOther, place: 'free' });
    if (body.instructions.every(({ kind }) => kind === 'locking-marker')) return null;
    const label: RowLabel = {
      noun: 'Row',
      numbering: 'noun',
      numbers: { kind: 'next' },
      name: null,
      purpose: null,
      side: null
    };
    const only = body.instructions.length === 1 ? body.instructions[0] : undefined;
    if (only && isWholeWord(at, only)) body.instructions[0] = toEnd(only);
    return withRemarks(at, rowOf(at, { label, first, body: { ...body, failed: false } }));
  });
}

function isWholeWord(at: Cursor, instruction: Instruction): boolean {
  return /^(?:knit|purl|k|p)$/iu.test(at.source.text.slice(instruction.span.from, instruction.span.to));
}

/** Adds printed counts to a row or another statement that takes them; `null` when it takes none. */
export function withAssertions(statement: Statement | undefined, assertions: readonly Assertion[]): Statement | null {
  if (!statement || !('assertions' in statement)) return null;
  return { ...statement, assertions: [...statement.assertions, ...assertions] };
}
