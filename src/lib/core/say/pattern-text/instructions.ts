/** The instructions of one row: clauses joined by commas, with a sentence of its own for each stretch that a prefix names. */

import type { Extent, Instruction } from '../../model/pattern.ts';
import { arrangement } from './arrangements.ts';
import { atEdge, type AtEdge } from './edges.ts';
import { needle, needles } from './needles.ts';
import { capital, stitches, times } from './numbers.ts';
import { cable, shape, shapeEvenly, work } from './stitches.ts';
import { target } from './targets.ts';

/** A clause, and whether a sentence must end before or behind it. */
interface Clause {
  readonly text: string;
  readonly begins: boolean;
  readonly ends: boolean;
}

/** Where a body stands: `depth` tells how many groups hold it. */
interface Place {
  readonly depth: number;
}

type TakeNeedle = Extract<Instruction, { kind: 'take-needle' }>;
type OverTarget = Extract<Instruction, { kind: 'over-target' }>;
type Single = Exclude<Instruction, TakeNeedle | OverTarget>;

/** The instructions of a row, without a full stop at their end. */
export function rowBody(body: readonly Instruction[]): string {
  const [only] = body;
  if (body.length === 1 && only?.kind === 'work-to' && only.target.kind === 'end') {
    if (only.operation?.name === 'k') return 'Knit';
    if (only.operation?.name === 'p') return 'Purl';
  }
  return sentences(clauses(body, { depth: 0 }));
}

/** Whether what follows the last sentence of a body still goes on to a needle that the sentence names. */
export function endsOnNeedle(body: readonly Instruction[]): boolean {
  const last = body.findLast((part): part is TakeNeedle => part.kind === 'take-needle');
  return last !== undefined && last.needle !== null;
}

function sentences(list: readonly Clause[]): string {
  return list.reduce((text, clause, index) => {
    const before = list[index - 1];
    if (!before) return capital(clause.text);
    return before.ends || clause.begins ? `${text}. ${capital(clause.text)}` : `${text}, ${clause.text}`;
  }, '');
}

function inner(body: readonly Instruction[], place: Place): string {
  return clauses(body, { depth: place.depth + 1 })
    .map(({ text }) => text)
    .join(', ');
}

function clauses(body: readonly Instruction[], place: Place): Clause[] {
  const list: Clause[] = [];
  for (let index = 0; index < body.length;) {
    const { clause, parts } = clauseAt(body, index, place);
    list.push(...clause);
    index += parts;
  }
  return list;
}

interface Told {
  readonly clause: readonly Clause[];
  /** How many instructions it tells. */
  readonly parts: number;
}

function clauseAt(body: readonly Instruction[], index: number, place: Place): Told {
  const part = body[index]!;
  if (part.kind === 'take-needle') return taken(body, index, place);
  const crossing = part.kind === 'work' ? cable(body.slice(index)) : null;
  if (crossing) return { clause: [plain(crossing.text)], parts: crossing.parts };
  if (part.kind === 'over-target') return stretch(part, body[index + 1], place);
  const isPrefix = part.kind === 'over' || part.kind === 'over-needles';
  const text = instruction(part, place);
  return { clause: [{ text, begins: isPrefix, ends: isPrefix || part.kind === 'move-bor' }], parts: 1 };
}

function plain(text: string): Clause {
  return { text, begins: false, ends: false };
}

// "k9 onto N3" tells the needle for one instruction, "with N3 k9, p2." for the rest of its sentence.
function taken(body: readonly Instruction[], index: number, place: Place): Told {
  const { needle: ref } = body[index] as TakeNeedle;
  const [next, after] = [body[index + 1], body[index + 2]];
  if (ref === null) return { clause: [], parts: 1 };
  if (next && after?.kind === 'take-needle' && after.needle === null && isReceived(next))
    return { clause: [plain(`${instruction(next, place)} onto ${needle(ref)}`)], parts: 3 };
  const end = body.findIndex((part, at) => at > index && part.kind === 'take-needle');
  const upTo = end < 0 ? body.length : end;
  const list = clauses(body.slice(index + 1, upTo), place);
  const led = list.map((clause, at) => (at === 0 ? { ...clause, text: `with ${needle(ref)} ${clause.text}` } : clause));
  const ends = (body[upTo] as TakeNeedle | undefined)?.needle === null;
  const closed = led.map((clause, at) => (ends && at === led.length - 1 ? { ...clause, ends } : clause));
  return { clause: closed, parts: upTo - index };
}

// "work next 15 sts (this is now N2): k2, p2": a name that the needle gets stands before the colon.
function stretch(part: OverTarget, after: Instruction | undefined, place: Place): Told {
  const { target: to, body } = part;
  const isNamed = after?.kind === 'name-needle' && after.needle.kind === 'same';
  const lead = to.kind === 'next' ? `work next ${stitches(to.count)}` : `work in patt ${target(to)}`;
  const text = `${lead}${isNamed ? ` (${arrangement(after)})` : ''}: ${inner(body, place)}`;
  return { clause: [{ text, begins: false, ends: true }], parts: isNamed ? 2 : 1 };
}

function isReceived(part: Instruction): part is Single {
  return !['group', 'into-one', 'over', 'over-needles', 'over-target', 'take-needle'].includes(part.kind);
}

function instruction(part: Single, place: Place): string {
  switch (part.kind) {
    case 'work':
      return work(part.operation, part.count);
    case 'work-to':
      return workTo(part);
    case 'work-as-set':
      return `work ${stitches(part.count)} as set`;
    case 'group':
      return group(part, place);
    case 'into-one':
      return `(${inner(part.body, place)}) in next st`;
    case 'evenly':
      return shapeEvenly(part);
    case 'shape':
      return shape(part);
    case 'over':
      return `${part.section.replace(/ half$/u, ' half of rnd')}: ${inner(part.body, place)}`;
    case 'over-needles':
      return `${needles(part.needles).replace(/^the /u, '')}: ${inner(part.body, place)}`;
    default:
      return isAtEdge(part) ? atEdge(part) : arrangement(part);
  }
}

function workTo({ operation, target: to }: Extract<Instruction, { kind: 'work-to' }>): string {
  return `${operation ? operation.name : 'work in patt'} ${target(to)}`;
}

const EDGE_KINDS: ReadonlySet<Instruction['kind']> = new Set<AtEdge['kind']>([
  ...(['marker', 'remove-markers', 'locking-marker', 'pick-up', 'cast-on-here', 'bind-off'] as const),
  ...(['hold', 'waste-yarn', 'turn'] as const)
]);

function isAtEdge(part: Instruction): part is AtEdge {
  return EDGE_KINDS.has(part.kind);
}

// An asterisk for a repeat of the row, square brackets for a repeat inside another.
function group({ body, extent }: Extract<Instruction, { kind: 'group' }>, place: Place): string {
  const isStarred = extent.kind === 'unclear-times' || (extent.kind === 'to' && place.depth === 0);
  const text = inner(body, place);
  if (!isStarred) return `[${text}] ${often(extent)}`;
  const sign = '*'.repeat(place.depth + 1);
  const gap = text.startsWith('*') ? ' ' : '';
  return `${sign}${gap}${text}; rep from ${sign} ${often(extent)}`;
}

function often(extent: Extent): string {
  return extent.kind === 'to' ? target(extent.target) : times(extent.count);
}
