/** Works rows of simple patterns that the text does not write out: so many, or up to a length. */

import type { Instruction, Side, Statement } from '../model/pattern.ts';
import type { PlainStitch } from '../model/plain-rows.ts';
import type { LengthStop } from '../model/repeating.ts';
import { everySize, forSize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import { standard } from './context.ts';
import type { Knitter } from './knitter.ts';
import { runOf } from './run.ts';
import { takesOf } from './takes.ts';

type Of<Kind extends Statement['kind']> = Extract<Statement, { kind: Kind }>;

/** Works so many rows. */
export function workEven(knitter: Knitter, statement: Of<'even'>): void {
  const count = forSize(statement.rows, knitter.context.size) ?? 0;
  for (let row = 0; row < count; row += 1) workOne(knitter, statement, row);
}

/** Works up to a length, and one row more where the text ends with the other side. */
export function workEvenUntil(knitter: Knitter, statement: Of<'even-until'>): void {
  const count = rowsToGo(knitter, statement, statement.span);
  if (count === null) return;
  for (let row = 0; row < count; row += 1) workOne(knitter, statement, row);
  if (!endsOn(knitter, statement.lastSide)) workOne(knitter, statement, count);
}

/** Rows that are left up to a length; `null`, and a word about it, when they cannot be counted. */
export function rowsToGo(knitter: Knitter, { lengthCm, from }: LengthStop, span: Span): number | null {
  const { context, pattern } = knitter;
  const length = forSize(lengthCm, context.size);
  if (length === null) return null;
  const { rowsPer10cm } = pattern.gauge;
  if (rowsPer10cm === null) {
    context.report('needs-row-gauge', span);
    return null;
  }
  const worked = from === 'cast-on' ? knitter.rowsWorked : knitter.stage.rows.length;
  return Math.max(0, Math.round((length * rowsPer10cm) / 10) - worked);
}

/** Whether the row worked last is of a side; in the round, and where none is told, it always is. */
export function endsOn(knitter: Knitter, side: Side | null): boolean {
  const last = knitter.stage.rows.at(-1);
  return side === null || last?.shape !== 'flat' || last.side === side;
}

/** Says that the text leaves the length to the knitter. */
export function leaveOpen(knitter: Knitter, span: Span): void {
  knitter.context.report('free-stop', span);
}

function workOne(knitter: Knitter, what: PlainStitch & { readonly span: Span }, row: number): void {
  const noun = knitter.stage.flat ? 'Row' : 'Rnd';
  knitter.workPlain(`${noun} ${row + 1}`, bodyOf(knitter, what, row), what.span);
}

type Plain = PlainStitch & { readonly span: Span };

function bodyOf(knitter: Knitter, { as, unit, span }: Plain, row: number): Instruction[] {
  if (as === 'seed') return repeated(knitter, isTurned(knitter, row) ? [...unit].reverse() : unit, span);
  if (as === 'rib' && row === 0) return repeated(knitter, unit, span);
  return toEnd(operationOf(knitter, as, row), span);
}

function operationOf(knitter: Knitter, as: PlainStitch['as'], row: number): 'k' | 'p' | null {
  switch (as) {
    case 'knit':
      return 'k';
    case 'purl':
      return 'p';
    case 'stockinette':
      return nextSide(knitter) === 'WS' ? 'p' : 'k';
    case 'garter':
      return isTurned(knitter, row) ? 'p' : 'k';
    default:
      return null;
  }
}

// Every other round shows the back of what a flat row would show.
function isTurned(knitter: Knitter, row: number): boolean {
  return row % 2 === 1 && !knitter.stage.flat;
}

function toEnd(name: 'k' | 'p' | null, span: Span): Instruction[] {
  const operation = name === null ? null : standard(name);
  return [{ kind: 'work-to', operation, target: { kind: 'end' }, span }];
}

function nextSide(knitter: Knitter): Side {
  if (!knitter.stage.flat) return 'RS';
  return knitter.stage.rows.at(-1)?.side === 'RS' ? 'WS' : 'RS';
}

// A flat piece may end with the beginning of the unit, so that both edges match.
function repeated(knitter: Knitter, unit: readonly Instruction[], span: Span): Instruction[] {
  const takes = takesOf(unit, knitter.context.size) ?? 0;
  const whole: Instruction[] = [{ kind: 'group', body: unit, extent: { kind: 'to', target: { kind: 'end' } }, span }];
  if (!knitter.stage.flat || !knitter.tube || takes === 0) return whole;
  const run = runOf(knitter.tube);
  const stitches = run ? run.to - run.from : knitter.ring().stitches.length;
  const times = everySize(Math.floor(stitches / takes));
  return [
    { kind: 'group', body: unit, extent: { kind: 'times', count: times }, span },
    ...start(unit, stitches % takes)
  ];
}

function start(unit: readonly Instruction[], stitches: number): Instruction[] {
  let left = stitches;
  return unit.flatMap((part) => {
    if (part.kind !== 'work' || left === 0) return [];
    const count = Math.min(left, forSize(part.count, 0) ?? 0);
    left -= count;
    return [{ ...part, count: everySize(count) }];
  });
}
