/** Rows that go on as the last ones did, with a number that changes: "Cont in this manner, working 1 fewer st between decs each time". */

import type { Statement } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readExtent } from './extents.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const MANNERS = [
  ...[
    'in this manner',
    'in this way',
    'in this fashion',
    'in the above manner',
    'in same manner',
    'in the same manner'
  ],
  ...['in the same way', 'in like manner', 'as set', 'as est', 'as established', 'as before', 'thus']
];
const SHAPING = ['decreasing', 'increasing', 'shaping', 'dec', 'inc', 'decs', 'incs'];

/** Reads such a sentence; one without a step counts only when it is worked until a number of stitches. */
export function readProgression(at: Cursor): Statement | null {
  const first = at.at;
  if (!at.take('cont', 'continue', 'keep', 'work', 'proceed')) return null;
  at.skip(...SHAPING, 'to', 'working');
  if (!at.phrase(...MANNERS)) return null;
  at.skip(...SHAPING);
  const step = at.attempt(readStep);
  at.skip(',');
  const extent = readExtent(at);
  if (extent?.kind !== 'until' && extent?.kind !== 'all-worked') return null;
  if (!at.atStop && at.peek()?.kind !== 'open') return null;
  return { kind: 'progression', step, extent, sizes: at.scope.onlySizes, assertions: [], span: at.span(first) };
}

// ", working 1 fewer st between decs each dec rnd".
function readStep(at: Cursor): number | null {
  at.skip(',', 'and', 'with', 'working', 'knitting', 'having', 'but');
  const count = readCount(at);
  const step = count ? forSize(count, 0) : null;
  const before = at.skip(...STITCH_WORDS);
  const word = at.take('fewer', 'less', 'more')?.text;
  if (!step || !word || !(at.take(...STITCH_WORDS) ?? before)) return null;
  while (at.peek() && !['until', 'to', ',', '.'].includes(at.text())) at.at += 1;
  return word === 'more' ? step : -step;
}
