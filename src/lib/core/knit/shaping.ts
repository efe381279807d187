/** Increases and decreases at places of a row: its ends, or either side of markers. */

import type { Operation } from '../model/operation.ts';
import { operationNamed } from '../model/operations.ts';
import type { Side } from '../model/pattern.ts';
import { BOR } from '../model/ring.ts';
import type { Shape } from '../model/shaping.ts';
import { forSize } from '../model/sized.ts';
import { workTimes, type Outcome, type Performance } from './work.ts';
import type { RowWork } from './row-work.ts';
import { sameName } from './targets.ts';

/** One place: so many stitches before it is reached, and on which side of it the stitches are made or taken. */
interface Place {
  readonly ahead: number;
  readonly side: 'before' | 'after';
}

// A decrease leans away from the edge or marker that it stands beside, seen on the right side. Common practice, no source.
const DECREASES = { RS: { before: 'k2tog', after: 'ssk' }, WS: { before: 'ssp', after: 'p2tog' } } as const;
const INCREASES = { RS: { before: 'm1', after: 'm1' }, WS: { before: 'm1p', after: 'm1p' } } as const;
const AT_EDGES = { RS: 'kfb', WS: 'pfb' } as const;

/** Shapes one row; what lies between the places is worked as it presents itself. */
export function performShape(at: Performance, instruction: Shape): Outcome {
  const { work, context } = at;
  const { span } = instruction;
  const count = forSize(instruction.count, context.size) ?? 0;
  const start = work.taken;
  const places = placesOf(work, instruction);
  if (places.length === 0) context.report('marker-missing', span, { about: '' });
  for (const place of places) {
    const operation = operationAt(work.side, instruction, place);
    const takes = place.side === 'before' ? operation.takes * count : 0;
    const plain = Math.max(place.ahead - takes - (work.taken - start), 0);
    const outcome = workTimes(at, null, { count: plain, span });
    if (outcome !== 'worked') return outcome;
    if (place.side === 'after') passMarker(work);
    const shaped = workTimes(at, operation, { count, span });
    if (shaped !== 'worked') return shaped;
  }
  return workTimes(at, null, { count: work.room(), span });
}

function operationAt(side: Side, { change, places }: Shape, place: Place): Operation {
  const atEdge = change === 'inc' && places !== 'markers' && places !== 'pair';
  const table = change === 'dec' ? DECREASES : INCREASES;
  return operationNamed(atEdge ? AT_EDGES[side] : table[side][place.side])!;
}

function placesOf(work: RowWork, { places, markers }: Shape): Place[] {
  const beginning: Place = { ahead: 0, side: 'after' };
  const end: Place = { ahead: work.room(), side: 'before' };
  switch (places) {
    case 'ends':
      return [beginning, end];
    case 'beginning':
      return [beginning];
    case 'end':
      return [end];
    case 'markers':
      return withBor(work, markers).flatMap((ahead) => aroundMarker(ahead, work.room()));
    case 'pair':
      return outside(markersAhead(work));
  }
}

function markersAhead(work: RowWork): number[] {
  const found: number[] = [];
  for (let index = work.next; index < work.limit; index += 1) {
    const item = work.ahead[index]!;
    if (item.kind === 'marker' && !sameName(item.name, BOR)) found.push(work.room(index));
  }
  return found;
}

// When more markers are told than hang in the row, that of the beginning of round is one of them.
function withBor(work: RowWork, told: number | null): number[] {
  const ahead = markersAhead(work);
  if (told === null) return ahead;
  return told === ahead.length + 1 ? [0, ...ahead, work.room()] : ahead.slice(0, told);
}

// At the beginning of round one side lies at the start of the round, the other at its end.
function aroundMarker(ahead: number, room: number): Place[] {
  if (ahead === 0) return [{ ahead, side: 'after' }];
  if (ahead === room) return [{ ahead, side: 'before' }];
  return [
    { ahead, side: 'before' },
    { ahead, side: 'after' }
  ];
}

function outside([first, second]: readonly number[]): Place[] {
  if (first === undefined || second === undefined) return [];
  return [
    { ahead: first, side: 'before' },
    { ahead: second, side: 'after' }
  ];
}

function passMarker(work: RowWork): void {
  const next = work.find((item) => item.kind === 'stitch');
  work.pass(next < 0 ? work.limit : next);
}
