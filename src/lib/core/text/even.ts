/** Plain rows: "Knit 60 rnds.", "Work even for 44 rnds.", "K every rnd until piece measures 6 in from CO." */

import type { PlainStitch } from '../model/plain-rows.ts';
import type { Statement } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readNoun } from './labels.ts';
import { readStitchPattern } from './stitch-patterns.ts';
import { readAlternative, readStop } from './stops.ts';

const VERBS = ['work', 'cont', 'continue', 'knit', 'k', 'purl', 'p', 'work even', 'working', 'keep', 'patt', 'rib'];

/** Words that leave the stitches as they present themselves, told anywhere in the sentence. */
const AS_SET = [
  ...[
    'even in est patt',
    'even in patt',
    'even in rib',
    'even',
    'straight',
    'without shaping',
    'w / o shaping',
    'in patt as set'
  ],
  ...[
    'in patt as est',
    'in patt',
    'in pattern as set',
    'in pattern',
    'in rib as set',
    'in rib as est',
    'in rib',
    'in ribbing'
  ],
  ...[
    'as set',
    'as est',
    'as established',
    'in est patt',
    'in established pattern',
    'plain',
    'working',
    'knitting',
    'in this manner'
  ],
  ...['in rnds', 'in the rnd', 'on all sts', 'all sts', 'around', 'and']
].sort((left, right) => right.length - left.length);

/** Reads a sentence that works plain rows: counted, up to a length, or as far as the knitter finds right. */
export function readEven(at: Cursor): Statement | null {
  const first = at.at;
  const told = readHow(at);
  if (!told) return null;
  return at.attempt(() => readCounted(at, { told, first })) ?? readUpTo(at, { told, first });
}

interface Told {
  readonly told: PlainStitch;
  readonly first: number;
}

// "Work even", "K2, p2 rib", "Knit".
function readHow(at: Cursor): PlainStitch | null {
  const named = at.attempt(readStitchPattern);
  const verb = named ? null : at.take(...VERBS)?.text;
  if (!named && !verb) return null;
  return readManners(at, named ?? plain(asOf(verb ?? '')));
}

function readCounted(at: Cursor, { told, first }: Told): Statement | null {
  const rows = readRows(at);
  if (!rows) return null;
  const stitch = readManners(at, told);
  at.attempt(readAlternative);
  if (!at.atStop && at.peek()?.kind !== 'open') return null;
  return { kind: 'even', rows, ...stitch, ...common(at, first) };
}

function readUpTo(at: Cursor, { told, first }: Told): Statement | null {
  const every = at.attempt(() => (at.take('every', 'each', 'all') && readNoun(at) ? true : null));
  const rows = every ? at.attempt(readRows) : null;
  if (rows && at.atStop) return { kind: 'even', rows, ...told, ...common(at, first) };
  const stop = readStop(at);
  if (!stop) return null;
  if (stop.kind === 'free') return { kind: 'free-stop', ...common(at, first) };
  return { ...stop, kind: 'even-until', ...told, ...common(at, first) };
}

function common(at: Cursor, first: number) {
  return { sizes: at.scope.onlySizes, assertions: [], span: at.span(first) };
}

function plain(as: PlainStitch['as']): PlainStitch {
  return { as, unit: [] };
}

function readManners(at: Cursor, before: PlainStitch): PlainStitch {
  let stitch = before;
  for (;;) {
    const found = at.attempt(readInPattern);
    if (found) stitch = found;
    else if (!at.phrase(...AS_SET)) return stitch;
  }
}

// "in St st", "of k2, p2 rib".
function readInPattern(at: Cursor): PlainStitch | null {
  at.skip('in', 'of');
  return readStitchPattern(at);
}

function asOf(verb: string): PlainStitch['as'] {
  if (verb === 'knit' || verb === 'k') return 'knit';
  return verb === 'purl' || verb === 'p' ? 'purl' : 'as-set';
}

// "60 rnds", "for 44 rnds", "a further 10 rounds", "for 10 more rnds".
function readRows(at: Cursor): Sized<number> | null {
  at.skip('for', 'a', 'further', 'another', 'next');
  const count = readCount(at);
  at.skip('more', 'further', 'plain');
  return count && readNoun(at) ? count : null;
}
