/** Knits each kind of statement under a heading. */

import type { Statement } from '../model/pattern.ts';
import { BOR } from '../model/ring.ts';
import { forSize } from '../model/sized.ts';
import type { Stitch } from '../model/stitch.ts';
import { MOST_STITCHES } from '../model/limits.ts';
import { arrange } from './arrange.ts';
import { checkMultiple } from './claims.ts';
import { LimitReached, type Context } from './context.ts';
import { leaveOpen, workEven, workEvenUntil } from './even.ts';
import type { Item } from './items.ts';
import type { Knitter, ToldRow } from './knitter.ts';
import { goOn } from './progressions.ts';
import { repeatRows } from './repeat-rows.ts';
import type { Scheduled } from './schedule.ts';
import { Along, shapeRows } from './shape-rows.ts';
import { sameName } from './targets.ts';
import { tubeOf, withItems } from './tube.ts';

type Of<Kind extends Statement['kind']> = Extract<Statement, { kind: Kind }>;
type Other = Extract<Scheduled, { kind: 'other' }>['statement'];

/** Knits one scheduled statement. */
export function knitStatement(knitter: Knitter, scheduled: Scheduled): void {
  if (scheduled.kind === 'rows') {
    for (const row of scheduled.rows) workRow(knitter, row);
    return;
  }
  const { statement } = scheduled;
  knitter.context.where = knitter.stage.text.name;
  knitOther(knitter, statement);
  if ('assertions' in statement) for (const assertion of statement.assertions) knitter.check(assertion);
}

// Picking up stitches where none are on the needles begins a piece, as casting on does.
function workRow(knitter: Knitter, row: ToldRow): void {
  const [first] = row.text.body;
  const begins = first?.kind === 'pick-up' && row.text.body.length === 1 && knitter.ring().stitches.length === 0;
  if (!begins) return knitter.work(row, { remember: true });
  castOn(knitter, { kind: 'cast-on', count: first.count, assertions: [], span: first.span });
  for (const assertion of row.text.assertions) knitter.check(assertion);
}

/** The shaping that is told to go along with a statement, where the next one does so. */
export function alongWith(scheduled: Scheduled, next: Scheduled | undefined): Of<'shape-rows'> | null {
  const isBase = scheduled.kind === 'rows' || ['even', 'even-until', 'repeat-rows'].includes(scheduled.statement.kind);
  if (!isBase || next?.kind !== 'other' || next.statement.kind !== 'shape-rows') return null;
  return next.statement.during ? next.statement : null;
}

/** Knits a statement with the shaping that goes along with it. */
export function knitAlong(knitter: Knitter, scheduled: Scheduled, statement: Of<'shape-rows'>): void {
  const along = new Along(knitter, statement);
  knitter.along = along;
  knitStatement(knitter, scheduled);
  knitter.along = null;
  along.finish();
  for (const assertion of statement.assertions) knitter.check(assertion);
}

function knitOther(knitter: Knitter, statement: Other): void {
  switch (statement.kind) {
    case 'cast-on':
      return castOn(knitter, statement);
    case 'join':
      return join(knitter, statement);
    case 'sections':
      return nameSections(knitter, statement);
    case 'open':
      return castOn(knitter, { ...statement, kind: 'cast-on', assertions: [] });
    case 'resume':
      return resume(knitter, statement);
    case 'close':
      return close(knitter, statement);
    default:
      return tell(knitter, statement);
  }
}

// What is said between the rows.
function tell(knitter: Knitter, statement: Of<'layout' | 'arrange' | 'check' | 'multiple' | 'prose'> | Untold): void {
  switch (statement.kind) {
    case 'layout':
      return layOutAsTold(knitter, statement);
    case 'arrange':
      return arrangeAll(knitter, statement);
    case 'multiple':
      return checkMultiple(knitter, statement);
    case 'check':
      return knitter.check(statement.assertion);
    case 'prose':
      knitter.stage.notes.push(statement.text);
      return;
    default:
      return knitUntold(knitter, statement);
  }
}

type Untold = Of<'repeat-rows' | 'progression' | 'shape-rows' | 'even' | 'even-until' | 'free-stop'>;

// Rows that the text does not write out.
function knitUntold(knitter: Knitter, statement: Untold): void {
  switch (statement.kind) {
    case 'repeat-rows':
      return repeatRows(knitter, statement);
    case 'progression':
      return goOn(knitter, statement);
    case 'shape-rows':
      return shapeRows(knitter, statement);
    case 'even':
      return workEven(knitter, statement);
    case 'even-until':
      return workEvenUntil(knitter, statement);
    case 'free-stop':
      return leaveOpen(knitter, statement.span);
  }
}

function arrangeAll(knitter: Knitter, { actions, span }: Of<'arrange'>): void {
  if (knitter.ring().stitches.length === 0) return knitter.context.report('nothing-on-needles', span);
  for (const action of actions) {
    if (action.kind === 'work-flat') knitter.workFlat(action);
    else arrange(knitter.bench(), action);
  }
  knitter.noteLayout(null);
}

function layOutAsTold(knitter: Knitter, { loads, names, span }: Of<'layout'>): void {
  const { context } = knitter;
  const numbers = loads.map((load) => (load ? forSize(load, context.size) : null));
  const total = numbers.reduce<number>((sum, load) => sum + (load ?? 0), 0);
  const found = knitter.ring().stitches.length;
  if (found === 0) return context.report('nothing-on-needles', span);
  if (!numbers.includes(null) && total !== found) {
    context.report('count-mismatch', span, { expected: total, found, about: 'stitches on the needles' });
  }
  knitter.state({ loads: numbers, names });
}

function castOn(knitter: Knitter, statement: Of<'cast-on'>): void {
  const { context } = knitter;
  const count = forSize(statement.count, context.size) ?? 0;
  if (count > MOST_STITCHES) {
    context.report('too-many-stitches', statement.span, { expected: MOST_STITCHES });
    throw new LimitReached();
  }
  const stitches: Stitch[] = Array.from({ length: count }, () => ({
    id: context.nextId(),
    face: 'knit',
    loop: 'plain',
    parents: []
  }));
  knitter.tube = tubeOf(stitches, knitter.tubes);
  knitter.tubes += 1;
  knitter.rowsWorked = 0;
  knitter.joined = false;
}

// Joining with a marker hangs the marker of the BOR.
function join(knitter: Knitter, statement: Of<'join'>): void {
  knitter.goRound();
  const { tube } = knitter;
  if (!tube || !statement.marker) return;
  if (tube.items.some((item) => item.kind === 'marker' && sameName(item.name, BOR))) return;
  const items: Item[] = [...tube.items];
  items.splice(1, 0, { kind: 'marker', name: BOR });
  knitter.tube = withItems(tube, items, tube.hand <= 1 ? 1 : tube.hand + 1);
}

function nameSections(knitter: Knitter, statement: Of<'sections'>): void {
  const { tube, context } = knitter;
  if (!tube) return context.report('nothing-on-needles', statement.span);
  const runs = statement.runs.map((run) => ({ name: run.name, count: forSize(run.count, context.size) ?? 0 }));
  const total = runs.reduce((sum, run) => sum + run.count, 0);
  const found = knitter.ring().stitches.length;
  if (total !== found) context.report('sections-do-not-add-up', statement.span, { expected: total, found });
  const begins = new Map<number, string | null>();
  let at = 0;
  for (const run of runs) {
    if (run.count > 0) begins.set(at, run.name);
    at += run.count;
  }
  if (at < found) begins.set(at, null);
  setEdges(knitter, begins);
}

// An edge stands before its first stitch, behind the markers of the same gap.
function setEdges(knitter: Knitter, begins: ReadonlyMap<number, string | null>): void {
  const tube = knitter.tube!;
  const items: Item[] = [];
  let hand = 0;
  tube.items.forEach((item, index) => {
    if (item.kind === 'stitch' && begins.has(item.at)) items.push({ kind: 'edge', name: begins.get(item.at) ?? null });
    if (index === tube.hand) hand = items.length;
    if (item.kind !== 'edge') items.push(item);
  });
  knitter.tube = withItems(tube, items, tube.hand >= tube.items.length ? items.length : hand);
}

// By name; without one, the stitches whose number is told, or the first that were set aside.
function findHeld({ held, size }: Context, { name, count }: Of<'resume'>): number {
  if (name !== null) return held.findIndex((one) => sameName(one.name, name));
  const stitches = count ? forSize(count, size) : null;
  return Math.max(
    held.findIndex(({ ring }) => ring.stitches.length === stitches),
    0
  );
}

// A text that begins with stitches held elsewhere, like those of a sleeve, begins with them.
function resume(knitter: Knitter, statement: Of<'resume'>): void {
  const { context } = knitter;
  const index = findHeld(context, statement);
  const found = index >= 0 ? index : context.held.length - 1;
  const held = context.held[found];
  if (!held && statement.count && knitter.tube === null)
    return castOn(knitter, { kind: 'cast-on', count: statement.count, assertions: [], span: statement.span });
  if (!held) return context.report('held-missing', statement.span, { about: statement.name ?? '' });
  context.held.splice(found, 1);
  knitter.tube = tubeOf(held.ring.stitches, knitter.tubes);
  knitter.tubes += 1;
  knitter.rowsWorked = 0;
  knitter.joined = false;
  const count = statement.count;
  if (count) knitter.check({ kind: 'total', count, span: statement.span });
}

function close(knitter: Knitter, statement: Of<'close'>): void {
  const { context, tube } = knitter;
  const each = statement.count ? forSize(statement.count, context.size) : null;
  if (each !== null) {
    const total = statement.how === 'graft' ? each * 2 : each;
    knitter.check({ kind: 'total', count: [total], span: statement.span });
  }
  if (tube) knitter.tube = tubeOf([], tube.number);
}
