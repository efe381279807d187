/** The readers of single instructions, in the order in which they are asked. */

import type { Instruction } from '../model/pattern.ts';
import { readArrangement } from './arrangements.ts';
import { readAsSet } from './as-set.ts';
import type { Body, BodyOptions } from './body.ts';
import { readChart } from './charts.ts';
import { operationNamed } from '../model/operations.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readEdge } from './edges.ts';
import { readIntoOne } from './into-one.ts';
import { readMarker } from './markers.ts';
import { readReceiver } from './needle-names.ts';
import { readGroup } from './repeats.ts';
import { readSizedCable } from './sized-cables.ts';
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
  readEllipsis,
  readArrangement,
  readTakenNeedle,
  readMarker,
  readEdge,
  readEvenly,
  readShape,
  readAsSet,
  readStitch
];

/** Reads one instruction; several when the text says them as one, none when it only moves the yarn. */
export function readInstruction(at: Cursor, readInner: ReadInner): readonly Instruction[] | null {
  const group = readIntoOne(at, readInner) ?? readSizedCable(at) ?? readGroup(at, readInner);
  if (group) return group;
  const found = at.attempt(() => readFirst(at));
  if (!found) return null;
  if (found.kind === 'work' && NO_STITCH.has(found.operation.name)) return [];
  return withReceiver(at, found);
}

// "k the first 9 sts onto N3": only these stitches go on to it.
function withReceiver(at: Cursor, found: Instruction): readonly Instruction[] {
  const first = at.at;
  if (found.kind === 'take-needle' || !/^on(?:to)?$/u.test(at.text())) return [found];
  const needle = readReceiver(at);
  if (!needle) return [found];
  const span = at.span(first);
  return [{ kind: 'take-needle', needle, span }, found, { kind: 'take-needle', needle: null, span }];
}

// "With an empty needle, …", "with the same needle …".
function readTakenNeedle(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.looksLike(() => at.take('with', 'using'))) return null;
  const needle = readReceiver(at);
  return needle ? { kind: 'take-needle', needle, span: at.span(first) } : null;
}

// "k 8 sts on to one needle and the other 8 on to a second needle": the verb is told once.
function readEllipsis(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.skip('the') || !at.take('other', 'rem', 'remaining', 'last', 'next')) return null;
  const count = readCount(at);
  at.skip('st', 'sts', 'stitches');
  if (!count || !at.looksLike(() => /^on(?:to)?$/u.test(at.text()) && readReceiver(at))) return null;
  return { kind: 'work', operation: operationNamed('k')!, count, span: at.span(first) };
}

function readFirst(at: Cursor): Instruction | null {
  for (const reader of READERS) {
    const found = at.attempt(reader);
    if (found) return found;
  }
  return null;
}
