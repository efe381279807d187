/** Rows told by what happens at their beginning: "Cast off 6 sts at beg of next 2 rows", "Move marker 1 st to left". */

import type { Instruction, RowText, Statement } from '../model/pattern.ts';
import { operationNamed } from '../model/operations.ts';
import { everySize, forSize, type Sized } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readNoun } from './labels.ts';
import { readMarkerName } from './marker-names.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Most rows that one such sentence may stand for. */
const MOST_ROWS = 40;

/** Reads "BO 6 sts at beg of next row", "cast on 4 sts at the beg of next 2 rows". */
export function readEdgeRows(at: Cursor): Statement[] | null {
  const first = at.at;
  const off = at.phrase('bo', 'bind off', 'cast off');
  if (!off && !at.phrase('co', 'cast on')) return null;
  const count = readCount(at);
  at.skip(...STITCH_WORDS);
  if (!count || !at.take('at') || !at.skip('the', 'beg', 'beginning', 'start')) return null;
  if (!at.take('of')) return null;
  at.skip('the', 'next', 'foll', 'following');
  const rows = forSize(readCount(at) ?? everySize(1), 0) ?? 1;
  const noun = readNoun(at);
  if (!noun || !at.atStop || rows > MOST_ROWS) return null;
  const span = at.span(first);
  return Array.from({ length: rows }, () => rowOf(at, { noun, span, body: bodyOf({ off, count, span }) }));
}

function bodyOf(told: { readonly off: boolean; readonly count: Sized<number>; readonly span: Span }): Instruction[] {
  const { off, count, span } = told;
  return [
    { kind: off ? 'bind-off' : 'cast-on-here', count, span },
    { kind: 'work-to', operation: null, target: { kind: 'end' }, span }
  ];
}

/** Reads "Move BOR marker 1 st to left": one stitch is slipped, and the round begins behind it. */
export function readMovedMarker(at: Cursor): Statement[] | null {
  const first = at.at;
  if (!at.take('move', 'shift')) return null;
  const marker = readMarkerName(at);
  const count = readCount(at);
  at.skip(...STITCH_WORDS, 'to', 'the');
  if (!marker || !count || !at.take('left')) return null;
  const span = at.span(first);
  const body: Instruction[] = [
    { kind: 'work', operation: operationNamed('sl')!, count, span },
    { kind: 'marker', action: 'place', name: 'BOR', span }
  ];
  return [rowOf(at, { noun: 'Row', span, body })];
}

function rowOf(
  at: Cursor,
  told: { readonly noun: string; readonly span: Span; readonly body: Instruction[] }
): RowText {
  return {
    kind: 'row',
    ...told,
    numbering: 'noun',
    numbers: { kind: 'next' },
    name: null,
    side: null,
    sizes: at.scope.onlySizes,
    assertions: []
  };
}
