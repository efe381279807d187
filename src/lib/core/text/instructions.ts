/** The readers of single instructions, in the order in which they are asked. */

import type { Instruction } from '../model/pattern.ts';
import { readAsSet } from './as-set.ts';
import type { Body, BodyOptions } from './body.ts';
import { readChart } from './charts.ts';
import type { Cursor } from './cursor.ts';
import { readEdge } from './edges.ts';
import { readIntoOne } from './into-one.ts';
import { readMarker } from './markers.ts';
import { readGroup } from './repeats.ts';
import { readEvenly, readShape } from './shaping.ts';
import { readStitch } from './stitches.ts';
import { readTurn } from './turns.ts';
import { readWasteYarn } from './waste-yarn.ts';

/** Reads the body of a group. */
export type ReadInner = (at: Cursor, isOther: BodyOptions['isOther']) => Body;

/** Positions of the yarn that make no stitch. */
const NO_STITCH = new Set(['yb', 'yf']);

type Reader = (at: Cursor) => Instruction | null;

// A new kind of instruction is one more reader here.
const READERS: readonly Reader[] = [
  readWasteYarn,
  readChart,
  readTurn,
  readMarker,
  readEdge,
  readEvenly,
  readShape,
  readAsSet,
  readStitch
];

/** Reads one instruction; several when the text says them as one, none when it only moves the yarn. */
export function readInstruction(at: Cursor, readInner: ReadInner): readonly Instruction[] | null {
  const group = readIntoOne(at, readInner) ?? readGroup(at, readInner);
  if (group) return group;
  const found = at.attempt(() => readFirst(at));
  if (!found) return null;
  return found.kind === 'work' && NO_STITCH.has(found.operation.name) ? [] : [found];
}

function readFirst(at: Cursor): Instruction | null {
  for (const reader of READERS) {
    const found = at.attempt(reader);
    if (found) return found;
  }
  return null;
}
