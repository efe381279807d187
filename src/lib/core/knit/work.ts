/** Works stitches: one operation so many times, up to a target, spread evenly, or several into one stitch. */

import type { Instruction, Target } from '../model/pattern.ts';
import type { Operation } from '../model/operation.ts';
import { forSize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import { missing } from './arrange.ts';
import { standard, type Context } from './context.ts';
import type { RowWork } from './row-work.ts';
import { reach } from './targets.ts';

/** How a row of instructions ended. `stopped`: a mistake was reported and the rest of the row was given up. */
export type Outcome = 'worked' | 'turned' | 'stopped';

/** One row being performed. */
export interface Performance {
  readonly work: RowWork;
  readonly context: Context;
  /** Whether the row may work on past the BOR: it moves the BOR, or does not begin there. */
  readonly mayPassBor: boolean;
  /** For "7 times" after an asterisk: how many times are added to the number. */
  readonly extraTimes: 0 | 1;
}

/** Works an operation (or the stitches as they present themselves, `null`) so many times. */
export function workTimes(
  at: Performance,
  operation: Operation | null,
  what: { readonly count: number; readonly span: Span }
): Outcome {
  const takes = operation?.takes ?? 1;
  for (let times = 0; times < what.count; times += 1) {
    if (!enough(at, takes)) return tooLong(at, takes * (what.count - times), what.span);
    at.context.countStep();
    at.work.perform(operation ?? asPresented(at.work), what.span);
  }
  return 'worked';
}

function enough(at: Performance, takes: number): boolean {
  if (takes === 0) return true;
  const { work } = at;
  return work.room() >= takes || (at.mayPassBor && work.room(work.ahead.length) >= takes);
}

function tooLong(at: Performance, needs: number, span: Span): Outcome {
  const { work } = at;
  const total = work.taken + work.room();
  at.context.report('row-too-long', span, { expected: work.taken + needs, found: total });
  return 'stopped';
}

/** Knit or purl, so that the next stitch goes on showing the face it shows. */
function asPresented(work: RowWork): Operation {
  const shows = work.peek()?.face ?? 'knit';
  return standard((shows === 'knit') === (work.side === 'RS') ? 'k' : 'p');
}

/** Works an operation up to a target. */
export function workTo(at: Performance, instruction: Extract<Instruction, { kind: 'work-to' }>): Outcome {
  const count = distance(at, instruction.target, instruction.span);
  if (count === null) return 'stopped';
  const takes = Math.max(instruction.operation?.takes ?? 1, 1);
  return workTimes(at, instruction.operation, { count: Math.floor(count / takes), span: instruction.span });
}

/** Stitches from here to a target; `null` when it is missing, which is reported. */
export function distance(at: Performance, target: Target, span: Span): number | null {
  const found = reach(at, target);
  if (found.kind === 'stitches') return found.count;
  if (found.what === 'needle') missing(at, { kind: 'named', name: found.name }, span);
  else at.context.report(`${found.what}-missing`, span, { about: found.name });
  return null;
}

/** The operation that works a body into one stitch. */
export function intoOne(instruction: Extract<Instruction, { kind: 'into-one' }>): Operation {
  const operations = instruction.body.flatMap((part) =>
    part.kind === 'work' ? new Array<Operation>(forSize(part.count, 0) ?? 1).fill(part.operation) : []
  );
  const faces = operations.flatMap((operation) => operation.faces);
  const name = `(${operations.map((operation) => `${operation.name}${operation.takes === 1 ? '1' : ''}`).join(', ')}) in 1`;
  return {
    name,
    words: `${operations.map((operation) => operation.words).join(', ')}, all in the next stitch`,
    family: 'increase',
    takes: 1,
    makes: faces.length,
    faces,
    leans: 'none',
    crosses: false
  };
}

/** Spreads increases or decreases over the rest of the row. */
export function performEvenly(at: Performance, instruction: Extract<Instruction, { kind: 'evenly' }>): Outcome {
  const { operation, span } = instruction;
  const count = forSize(instruction.count, at.context.size) ?? 0;
  const plain = at.work.room() - count * operation.takes;
  if (plain < 0) return tooLong(at, count * operation.takes, span);
  for (let place = 0; place < count; place += 1) {
    const stretch = Math.floor(((place + 1) * plain) / count) - Math.floor((place * plain) / count);
    workTimes(at, null, { count: stretch, span });
    workTimes(at, operation, { count: 1, span });
  }
  return 'worked';
}
