/** Places, slips and removes markers, and moves the beginning of round. */

import type { Instruction } from '../model/pattern.ts';
import { BOR } from '../model/ring.ts';
import type { Outcome, Performance } from './work.ts';
import type { RowWork } from './row-work.ts';
import { sameName } from './targets.ts';

type MarkerInstruction = Extract<Instruction, { kind: 'marker' }>;

/** Performs pm, sm and rm. */
export function performMarker(at: Performance, instruction: MarkerInstruction): Outcome {
  if (instruction.action === 'place') return place(at, instruction);
  const index = nextMarker(at.work, instruction.name);
  if (index === null) return missing(at, instruction);
  if (index < 0) {
    if (instruction.action === 'remove' && at.work.done.length === 0) dropMarker(at.work, BOR);
    return 'worked';
  }
  at.work.pass(index + 1);
  if (instruction.action === 'remove') removeLast(at.work);
  return 'worked';
}

/** Hangs a locking marker in the stitch that was worked last. */
export function performLock(at: Performance, instruction: Extract<Instruction, { kind: 'locking-marker' }>): Outcome {
  const last = at.work.done.findLast((item) => item.kind === 'stitch');
  if (last?.kind === 'stitch') {
    at.context.locks.set(last.stitch.id, instruction.name ?? at.context.nextMarker());
  }
  return 'worked';
}

function place(at: Performance, instruction: MarkerInstruction): Outcome {
  const name = instruction.name ?? at.context.nextMarker();
  if (sameName(name, BOR)) return placeBor(at.work);
  dropMarker(at.work, name);
  at.work.done.push({ kind: 'marker', name });
  return 'worked';
}

/** The round begins here from now on: the old beginning, wherever it is, goes. */
export function placeBor(work: RowWork, options: { readonly marker: boolean } = { marker: true }): Outcome {
  const drop = (items: { kind: string; name?: string | null }[]) => {
    const index = items.findIndex((item) => item.kind === 'bor');
    if (index >= 0) items.splice(index, 1);
    return index;
  };
  const hung = dropMarker(work, BOR);
  drop(work.done);
  const ahead = drop(work.ahead);
  if (ahead >= 0 && ahead < work.next) work.next -= 1;
  work.limit = work.ahead.length;
  work.done.push({ kind: 'bor' });
  if (hung || options.marker) work.done.push({ kind: 'marker', name: BOR });
  return 'worked';
}

// A marker of the same name that still hangs somewhere is the same piece of metal.
function dropMarker(work: RowWork, name: string): boolean {
  const isIt = (item: { kind: string; name?: string | null }) => item.kind === 'marker' && item.name === name;
  const done = work.done.findIndex(isIt);
  if (done >= 0) work.done.splice(done, 1);
  const ahead = work.ahead.findIndex(isIt);
  if (ahead < work.next) return done >= 0;
  work.ahead.splice(ahead, 1);
  if (ahead < work.limit) work.limit -= 1;
  return true;
}

// Index of the marker in the present gap; -1 when it was passed already, or for the BOR at the end of the round; null when
// there is none here.
function nextMarker(work: RowWork, name: string | null): number | null {
  for (let index = work.next; index < work.ahead.length; index += 1) {
    const item = work.ahead[index]!;
    if (item.kind === 'stitch') break;
    if (item.kind === 'bor' && (name === null || sameName(name, BOR))) return -1;
    if (item.kind === 'marker' && (name === null || sameName(item.name, name))) return index;
  }
  return passedJustNow(work, name) ? -1 : null;
}

function passedJustNow(work: RowWork, name: string | null): boolean {
  for (const item of [...work.done].reverse()) {
    if (item.kind === 'stitch') return false;
    if (item.kind === 'marker' && (name === null || sameName(item.name, name))) return true;
  }
  return name === null ? startsBehindBor(work) : sameName(name, BOR);
}

// Before the first stitch of a round its marker is the one that was passed last.
function startsBehindBor(work: RowWork): boolean {
  const behind = work.tube.items[work.tube.hand - 1];
  return work.side === 'RS' && behind?.kind === 'marker' && sameName(behind.name, BOR);
}

function removeLast(work: RowWork): void {
  const index = work.done.findLastIndex((item) => item.kind === 'marker');
  if (index >= 0) work.done.splice(index, 1);
}

function missing(at: Performance, instruction: MarkerInstruction): Outcome {
  at.context.report('marker-missing', instruction.span, { about: instruction.name ?? '' });
  return 'worked';
}
