/** Goes on with the rows worked last, where one number of theirs changes from row to row. */

import type { Instruction, RowText } from '../model/pattern.ts';
import type { Progression } from '../model/shaping.ts';
import { forSize, type Sized } from '../model/sized.ts';
import type { Knitter, ToldRow } from './knitter.ts';
import { counted, unworked } from './repeat-until.ts';
import { hasTurn } from './run.ts';

/** Most shaped rows that one such sentence may stand for. */
const MOST_SHAPED = 300;

const SHAPED = new Set(['decrease', 'increase', 'yarn-over']);

/** Where the changing number stands: indices into the body and the bodies of its groups. */
type Path = readonly number[];

/** The rows that go on. */
interface Course {
  /** Shaped rows, the last told ones first; new ones are added as they are worked. */
  readonly shaped: ToldRow[];
  /** Plain rows between two shaped ones, and how many of them have been worked since the last. */
  readonly plain: readonly ToldRow[];
  done: number;
  readonly step: number;
}

/** Works the rows until the count is reached, or until nothing is left unworked. */
export function goOn(knitter: Knitter, statement: Progression): void {
  const course = courseOf(knitter, statement);
  if (!course)
    return knitter.context.report('rows-missing', statement.span, { about: 'the shaped rows to go on with' });
  if (statement.step === null && course.step !== 0) knitter.context.report('step-missing', statement.span);
  for (let row = 0; row < MOST_SHAPED && !isAtEnd(knitter, statement); row += 1) {
    const before = progressOf(knitter, statement);
    workPlain(knitter, course);
    workShaped(knitter, statement, course);
    if (progressOf(knitter, statement) === before || isBeyond(knitter, statement)) break;
  }
  if (!isAtEnd(knitter, statement)) reportMissed(knitter, statement);
}

// Without a step the last two shaped rows show one; a single shaped row is repeated as it is, with the plain ones behind it.
function courseOf(knitter: Knitter, { step }: Progression): Course | null {
  const { history } = knitter;
  const places = history.flatMap(({ text }, index) => (hasShaping(text.body) ? [index] : []));
  const [last, previous] = [places.at(-1), places.at(-2)];
  if (last === undefined || (step !== null && !changing(history[last]!.text.body))) return null;
  const shaped = places.slice(-2).map((place) => history[place]!);
  const plain = previous === undefined ? history.slice(last + 1) : history.slice(previous + 1, last);
  return { shaped, plain, done: history.length - 1 - last, step: step ?? shownStep(shaped) };
}

function shownStep([previous, last]: readonly ToldRow[]): number {
  if (!previous || !last || !changing(previous.text.body) || !changing(last.text.body)) return 0;
  return (forSize(valueOf(last.text), 0) ?? 0) - (forSize(valueOf(previous.text), 0) ?? 0);
}

function hasShaping(body: readonly Instruction[]): boolean {
  return body.some(
    (part) => isShaped(part) || part.kind === 'shape' || (part.kind === 'group' && hasShaping(part.body))
  );
}

function workPlain(knitter: Knitter, course: Course): void {
  for (const row of course.plain.slice(course.done)) knitter.work(renumbered(row, course), { remember: false });
  course.done = 0;
}

// In turning rows the two sides take turns: the row before last is the one of the same side.
function workShaped(knitter: Knitter, { extent }: Progression, course: Course): void {
  const last = course.shaped.at(-1)!;
  const turns = hasTurn(last.text.body);
  const model = (turns ? course.shaped.at(-2) : undefined) ?? last;
  const body = course.step === 0 ? model.text.body : stepped(model.text, last.text, course.step);
  const number = last.number === null ? null : last.number + 1 + course.plain.length;
  const row: ToldRow = { number, text: { ...model.text, body, assertions: [] } };
  const before = knitter.context.diagnostics.length;
  knitter.work(row, { remember: false });
  if (extent.kind === 'all-worked' && unworked(knitter) === 0) knitter.context.forgive('row-too-long', before);
  course.shaped.push(row);
}

function stepped(model: RowText, last: RowText, step: number): readonly Instruction[] {
  const place = changing(model.body);
  if (!place || !changing(last.body)) return model.body;
  const value = valueOf(last).map((entry) => (entry === null ? null : Math.max(entry + step, 0)));
  return withValue(model.body, place, value);
}

function renumbered(row: ToldRow, course: Course): ToldRow {
  const last = course.shaped.at(-1)?.number ?? null;
  const place = course.plain.indexOf(row) + 1;
  const number = row.number === null || last === null ? row.number : last + place;
  return { number, text: { ...row.text, assertions: [] } };
}

/** The place of the plain stitches that change: those of a group come first, then those between two shaped ones, then the most. */
function changing(body: readonly Instruction[]): Path | null {
  for (const [index, part] of body.entries()) {
    const inner = part.kind === 'group' ? changing(part.body) : null;
    if (inner) return [index, ...inner];
  }
  const beside = body.flatMap((part, index) => {
    const [before, after] = [isShaped(body.at(index - 1)), isShaped(body[(index + 1) % body.length])];
    return isPlain(part) && (before || after) ? [{ index, isBetween: before && after, count: countOf(part) }] : [];
  });
  const between = beside.filter(({ isBetween }) => isBetween);
  const [found] = (between.length > 0 ? between : beside).sort((left, right) => right.count - left.count);
  return found ? [found.index] : null;
}

function countOf(part: Instruction): number {
  return part.kind === 'work' ? (forSize(part.count, 0) ?? 0) : 0;
}

function isPlain(part: Instruction): boolean {
  return part.kind === 'work' && (part.operation.name === 'k' || part.operation.name === 'p');
}

function isShaped(part: Instruction | undefined): boolean {
  return part?.kind === 'work' && SHAPED.has(part.operation.family);
}

function valueOf({ body }: RowText): Sized<number> {
  return valueAt(body, changing(body)!);
}

function valueAt(body: readonly Instruction[], [index, ...rest]: Path): Sized<number> {
  const part = body[index!]!;
  if (part.kind === 'group') return valueAt(part.body, rest);
  return part.kind === 'work' ? part.count : [];
}

function withValue(body: readonly Instruction[], [index, ...rest]: Path, count: Sized<number>): Instruction[] {
  return body.map((part, place) => {
    if (place !== index) return part;
    if (part.kind === 'group') return { ...part, body: withValue(part.body, rest, count) };
    return part.kind === 'work' ? { ...part, count } : part;
  });
}

function progressOf(knitter: Knitter, { extent }: Progression): number {
  return extent.kind === 'until' ? counted(knitter, extent) : unworked(knitter);
}

function isAtEnd(knitter: Knitter, statement: Progression): boolean {
  return progressOf(knitter, statement) === goalOf(knitter, statement);
}

function goalOf(knitter: Knitter, { extent }: Progression): number {
  return extent.kind === 'until' ? (forSize(extent.count, knitter.context.size) ?? 0) : 0;
}

// The count moves away from the goal, or past it, when the rows do not lead there.
function isBeyond(knitter: Knitter, statement: Progression): boolean {
  const last = knitter.stage.rows.at(-1);
  if (!last || statement.extent.kind !== 'until') return false;
  const falls = last.after.stitches.length < last.before.stitches.length;
  const [found, goal] = [progressOf(knitter, statement), goalOf(knitter, statement)];
  return falls ? found < goal : found > goal;
}

function reportMissed(knitter: Knitter, statement: Progression): void {
  const [expected, found] = [goalOf(knitter, statement), progressOf(knitter, statement)];
  const code = statement.extent.kind === 'until' ? 'unreachable-count' : 'never-all-worked';
  knitter.context.report(code, statement.span, { expected, found });
}
