/** Works rows that are shaped every so often: on their own, or along with the rows told just before. */

import type { Instruction, RowText } from '../model/pattern.ts';
import type { ShapeRows } from '../model/shaping.ts';
import { forSize } from '../model/sized.ts';
import type { Knitter, ToldRow } from './knitter.ts';
import { counted } from './repeat-until.ts';

/** Longest that shaping goes on without coming to the count that ends it, in shaped rows. */
const MOST_SHAPED = 500;

/** Shaping that goes along with other rows. Mutable: counts the rows as they are worked. */
export class Along {
  private rows = 0;
  private shaped = 0;

  constructor(
    private readonly knitter: Knitter,
    private readonly statement: ShapeRows
  ) {}

  /** The body of the next row: shaped when its turn has come; as it presents itself once the stitches no longer fit the text. */
  next(body: readonly Instruction[]): readonly Instruction[] {
    this.rows += 1;
    const { plainBetween, atOnce, span } = this.statement;
    const from = atOnce ? 1 : plainBetween + 1;
    const isDue = this.rows >= from && (this.rows - from) % (plainBetween + 1) === 0 && !this.done();
    if (isDue) {
      this.shaped += 1;
      return shapedRow(this.knitter, this.statement).text.body;
    }
    if (this.shaped === 0) return body;
    return [{ kind: 'work-to', operation: null, target: { kind: 'end' }, span }];
  }

  private done(): boolean {
    return isDone(this.knitter, this.statement, this.shaped);
  }

  /** Works what is left when the other rows are at an end. */
  finish(): void {
    if (this.statement.extent !== null) workShaped(this.knitter, this.statement, this.shaped);
  }
}

/** Works the shaped rows with the plain ones between them. */
export function shapeRows(knitter: Knitter, statement: ShapeRows): void {
  workShaped(knitter, statement, 0);
}

function workShaped(knitter: Knitter, statement: ShapeRows, before: number): void {
  const row = shapedRow(knitter, statement);
  for (let shaped = before; !isDone(knitter, statement, shaped) && shaped < MOST_SHAPED; shaped += 1) {
    const count = knitter.ring().stitches.length;
    if (shaped > 0 || !statement.atOnce) workPlain(knitter, statement);
    knitter.work(row, { remember: false });
    if (statement.extent?.kind === 'until' && knitter.ring().stitches.length === count) break;
  }
  reportMissed(knitter, statement);
}

function isDone(knitter: Knitter, { extent, change }: ShapeRows, shaped: number): boolean {
  const size = knitter.context.size;
  if (extent === null) return false;
  if (extent.kind === 'times') return shaped >= (forSize(extent.count, size) ?? 0);
  if (extent.kind !== 'until') return true;
  const goal = forSize(extent.count, size);
  const found = counted(knitter, extent);
  return goal === null || (change === 'dec' ? found <= goal : found >= goal);
}

function reportMissed(knitter: Knitter, { extent, span }: ShapeRows): void {
  if (extent?.kind !== 'until') return;
  const expected = forSize(extent.count, knitter.context.size);
  const found = counted(knitter, extent);
  if (expected !== null && found !== expected) knitter.context.report('unreachable-count', span, { expected, found });
}

function workPlain(knitter: Knitter, { plainBetween, span }: ShapeRows): void {
  const body: Instruction[] = [{ kind: 'work-to', operation: null, target: { kind: 'end' }, span }];
  for (let plain = 0; plain < plainBetween; plain += 1) knitter.workPlain('Plain rnd', body, span);
}

// A row that the stage names for its shaping is meant, else the one that the sentence itself tells.
function shapedRow(knitter: Knitter, statement: ShapeRows): ToldRow {
  const long = statement.change === 'dec' ? 'decrease' : 'increase';
  const named = [...knitter.named].find(([name]) => new RegExp(`^(?:${statement.change}|${long}) r`, 'u').test(name));
  const isBare = statement.body[0]?.kind === 'evenly';
  if (named && isBare) return { text: { ...named[1], assertions: [] }, number: null };
  return { text: rowOf(knitter, statement), number: null };
}

function rowOf(knitter: Knitter, { change, body, span }: ShapeRows): RowText {
  const noun = knitter.stage.flat ? 'Row' : 'Rnd';
  return {
    kind: 'row',
    noun,
    numbering: 'noun',
    numbers: { kind: 'next' },
    name: `${change === 'dec' ? 'Dec' : 'Inc'} ${noun.toLowerCase()}`,
    purpose: null,
    side: null,
    sizes: null,
    body,
    assertions: [],
    span
  };
}
