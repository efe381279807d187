/** Working stitches as they present themselves: "work in patt to m", "work 20 sts as panel", "patt to last 4 sts". */

import type { Instruction } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readTarget } from './targets.ts';

const VERBS = ['work', 'cont', 'continue', 'keep', 'working'];
const PATTERNS = ['patt', 'pat', 'pattern', 'rib', 'ribbing', 'patts'];
const KNITS = ['k the knits and p the purls', 'knit the knits and purl the purls', 'k the knit sts and p the purl sts'];
const KNITS_LONG = ['knit the knit stitches and purl the purl stitches', 'knit the knit sts and purl the purl sts'];

/** Says how: "in patt", "as est", "in rib as set", "even". */
const MANNERS = [
  ...[
    'in est patt',
    'in established patt',
    'in established pattern',
    'in set patt',
    'in patt as set',
    'in patt as est'
  ],
  ...[
    'in patt',
    'in pattern',
    'in pat',
    'in rib as set',
    'in rib as est',
    'in rib as established',
    'in rib',
    'in ribbing'
  ],
  ...['as est', 'as set', 'as established', 'as panel', 'as they appear', 'as they face you', 'as sts appear', 'even'],
  ...[
    'sts as they appear',
    'sts as they face you',
    'the sts as they appear',
    'sts as they present themselves',
    'as for panel',
    'in pattern as set',
    'in pattern as established',
    'in st st',
    'evenly in patt',
    'panel'
  ]
].sort((left, right) => right.length - left.length);

/** Reads an instruction that goes on with what the stitches show. */
export function readAsSet(at: Cursor): Instruction | null {
  return at.attempt(readKnits) ?? at.attempt(readVerb) ?? at.attempt(readPattern);
}

function readKnits(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.phrase(...KNITS, ...KNITS_LONG)) return null;
  const target = readTarget(at) ?? { kind: 'end' as const };
  return { kind: 'work-to', operation: null, target, span: at.span(first) };
}

// "work 20 sts as panel", "work in patt to m", "cont in rib as est to end".
function readVerb(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.take(...VERBS)) return null;
  const target = readTarget(at);
  const count = target ? null : readStitches(at);
  const told = at.phrase(...MANNERS, 'the same way', 'in the same way', 'once more as set', 'once more');
  if (count) return told || at.atStop ? { kind: 'work-as-set', count, span: at.span(first) } : null;
  if (!told && !target) return null;
  at.phrase('as set', 'as est', 'as established');
  return {
    kind: 'work-to',
    operation: null,
    target: target ?? readTarget(at) ?? { kind: 'end' },
    span: at.span(first)
  };
}

// "the next 15 instep sts", "20 sts".
function readStitches(at: Cursor): Sized<number> | null {
  at.skip('the', 'next', 'first', 'other', 'rem', 'remaining');
  const count = readCount(at);
  if (!count) return null;
  if (at.scope.isSection(at.text()) && /^st/u.test(at.text(1))) at.at += 1;
  at.skip('st', 'sts', 'stitch', 'stitches');
  return count;
}

// "patt to last 4 sts", "rib to end", "patt 10".
function readPattern(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.take(...PATTERNS)) return null;
  at.phrase('as set', 'as est');
  const target = readTarget(at);
  if (target) return { kind: 'work-to', operation: null, target, span: at.span(first) };
  const count = readCount(at);
  if (!count)
    return at.atStop ? { kind: 'work-to', operation: null, target: { kind: 'end' }, span: at.span(first) } : null;
  at.skip('st', 'sts', 'stitches');
  return { kind: 'work-as-set', count, span: at.span(first) };
}
