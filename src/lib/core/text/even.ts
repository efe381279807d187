/** Plain rows: "Knit 60 rnds.", "Work even for 44 rnds.", "K every rnd until piece measures 6 in from CO." */

import type { Statement } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readNoun } from './labels.ts';
import { readLength } from './lengths.ts';

type As = 'knit' | 'purl' | 'as-set';

const VERBS = ['work', 'cont', 'continue', 'knit', 'k', 'purl', 'p', 'work even', 'working', 'keep', 'patt', 'rib'];

/** How the rows are worked, told anywhere in the sentence. */
const KNIT = [
  'in st st',
  'in stockinette',
  'in stocking st',
  'in stockinette st',
  'in stocking stitch',
  'in stockinette stitch'
];
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
  ...['in k 2 , p 2 rib', 'in k 1 , p 1 rib', 'in rnds', 'in the rnd', 'on all sts', 'all sts', 'around', 'and']
].sort((left, right) => right.length - left.length);

/** Reads a sentence that works plain rows, counted or up to a length. */
export function readEven(at: Cursor): Statement | null {
  const first = at.at;
  const verb = at.take(...VERBS)?.text;
  if (!verb) return null;
  const told = readManners(at, verb);
  const counted = at.attempt(readRows);
  if (counted) {
    const as = readManners(at, told).as;
    if (!at.atStop && at.peek()?.kind !== 'open') return null;
    return { kind: 'even', rows: counted, as, sizes: at.scope.onlySizes, assertions: [], span: at.span(first) };
  }
  return readUntil(at, { as: told.as, first });
}

interface Manner {
  readonly as: As;
}

function readManners(at: Cursor, before: string | Manner): Manner {
  let as = typeof before === 'string' ? asOf(before) : before.as;
  for (;;) {
    if (at.phrase(...KNIT)) as = 'knit';
    else if (!at.phrase(...AS_SET)) return { as };
  }
}

function asOf(verb: string): As {
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

// "every rnd until hat measures 6 in from CO (about 26 rnds)".
function readUntil(at: Cursor, told: Manner & { readonly first: number }): Statement | null {
  at.attempt(() => (at.take('every', 'each', 'all') && readNoun(at) ? true : null));
  if (!at.take('until', 'for', 'till')) return null;
  const piece = readPiece(at);
  const lengthCm = readLength(at);
  if (!lengthCm) return null;
  const start = readStart(at);
  if (!at.atStop && at.peek()?.kind !== 'open') return null;
  const from = start ?? (piece === 'whole' ? 'cast-on' : 'stage');
  return { kind: 'even-until', lengthCm, from, as: told.as, assertions: [], span: at.span(told.first) };
}

const WHOLE = new Set(['piece', 'work', 'hat', 'sock', 'mitten', 'cap', 'sleeve', 'it', 'glove', 'beanie']);

// "piece measures", "the leg meas approx"; without a noun the stage is measured.
function readPiece(at: Cursor): 'whole' | 'part' {
  const here = at.at;
  at.skip('the', 'your');
  const noun = at.peek()?.kind === 'word' ? at.text() : '';
  for (let words = 0; words < 4; words += 1) {
    if (at.take('measures', 'meas', 'measure', 'is')) {
      at.skip('approx', 'about', 'approximately', '.');
      return WHOLE.has(noun) ? 'whole' : 'part';
    }
    at.at += 1;
  }
  at.at = here;
  return 'part';
}

// "from CO", "from cast-on edge", "from beg", "from start of heel".
function readStart(at: Cursor): 'cast-on' | 'stage' | null {
  return at.attempt(() => {
    at.skip('in', 'length', 'long');
    if (!at.take('from')) return null;
    at.skip('the', 'your');
    const castOn = at.phrase(
      'cast - on edge',
      'cast - on',
      'cast on edge',
      'cast on',
      'co edge',
      'co',
      'beg',
      'beginning',
      'start'
    );
    while (!at.atStop && at.peek()?.kind !== 'open') at.at += 1;
    return castOn ? ('cast-on' as const) : ('stage' as const);
  });
}
