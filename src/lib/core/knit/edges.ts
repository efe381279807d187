/** Picks up, casts on, binds off and sets aside at the present position of a row. */

import type { Operation } from '../model/operation.ts';
import type { Instruction } from '../model/pattern.ts';
import { sectionAt } from '../model/ring.ts';
import { forSize } from '../model/sized.ts';
import type { Stitch } from '../model/stitch.ts';
import type { Outcome, Performance } from './work.ts';
import type { RowWork } from './row-work.ts';

type Of<Kind extends Instruction['kind']> = Extract<Instruction, { kind: Kind }>;

const PICK_UP: Operation = {
  name: 'pick up and k',
  words: 'pick up and knit',
  family: 'pick-up',
  takes: 0,
  makes: 1,
  faces: ['knit'],
  leans: 'none',
  crosses: false
};

const CAST_ON: Operation = { ...PICK_UP, name: 'CO', words: 'cast on', family: 'cast-on' };

const BIND_OFF: Operation = {
  ...PICK_UP,
  name: 'BO',
  words: 'bind off',
  family: 'bind-off',
  takes: 1,
  makes: 0,
  faces: []
};

/** Picks up stitches where the yarn hangs. */
export function pickUp(at: Performance, instruction: Of<'pick-up'>): Outcome {
  return makeHere(at, PICK_UP, instruction);
}

/** Casts on where the yarn hangs. */
export function castOnHere(at: Performance, instruction: Of<'cast-on-here'>): Outcome {
  return makeHere(at, CAST_ON, instruction);
}

// Stitches that come in from outside belong to no section until the text names them.
function makeHere(at: Performance, operation: Operation, instruction: Of<'pick-up' | 'cast-on-here'>): Outcome {
  const { work } = at;
  const named = work.before.sections.length > 0;
  if (named) openStretch(work);
  const times = forSize(instruction.count, at.context.size) ?? 0;
  const outcome = repeat(at, operation, { times, span: instruction.span });
  if (named) closeStretch(work);
  return outcome;
}

// On the right side an edge stands before its stretch, on the wrong side (where the list runs the other way) behind it.
function openStretch(work: RowWork): void {
  work.passEdges();
  const name = work.side === 'RS' ? null : sectionAt(work.before, work.gap() - 1);
  work.done.push({ kind: 'edge', name });
}

function closeStretch(work: RowWork): void {
  const name = work.side === 'RS' ? sectionAt(work.before, work.gap()) : null;
  work.done.push({ kind: 'edge', name });
}

/** Binds off the next stitches, or all that are left. */
export function bindOff(at: Performance, instruction: Of<'bind-off'>): Outcome {
  const room = at.work.room();
  const wanted = instruction.count === null ? room : (forSize(instruction.count, at.context.size) ?? 0);
  if (wanted > room) {
    at.context.report('row-too-long', instruction.span, {
      expected: at.work.taken + wanted,
      found: at.work.taken + room
    });
  }
  return repeat(at, BIND_OFF, { times: Math.min(wanted, room), span: instruction.span });
}

function repeat(
  at: Performance,
  operation: Operation,
  what: { readonly times: number; readonly span: Of<'pick-up'>['span'] }
): Outcome {
  for (let time = 0; time < what.times; time += 1) {
    at.context.countStep();
    at.work.perform(operation, what.span);
  }
  return 'worked';
}

/** Puts the next stitches on waste yarn: they leave the ring and wait under a name. */
export function hold(at: Performance, instruction: Of<'hold'>): Outcome {
  const { work, context } = at;
  const count = Math.min(forSize(instruction.count, context.size) ?? 0, work.room());
  const stitches: Stitch[] = [];
  while (stitches.length < count) {
    const item = work.ahead[work.next]!;
    if (item.kind === 'stitch') {
      work.ahead.splice(work.next, 1);
      work.limit -= 1;
      work.taken += 1;
      stitches.push(item.stitch);
    } else work.pass(work.next + 1);
  }
  const ordered = work.side === 'RS' ? stitches : stitches.reverse();
  context.held.push({
    name: instruction.name ?? 'held',
    ring: { stitches: ordered, markers: [], sections: [] }
  });
  return 'worked';
}
