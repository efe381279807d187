/** One operation with its number or its target: k4, sl 1 wyif, knit 2 together, p to end, k9 heel sts. */

import type { NeedleRef } from '../model/needle-words.ts';
import type { Instruction } from '../model/pattern.ts';
import type { Operation } from '../model/operation.ts';
import { operationNamed } from '../model/operations.ts';
import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { atomAt, readBackLoop, readOperation, type FoundOperation } from './phrases.ts';
import { readNeedles } from './needle-names.ts';
import { readTarget } from './targets.ts';
import { readTimesCount } from './times.ts';

const ONE = everySize(1);
const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Words after a stitch that tell how, and change neither count nor face. */
const MANNERS = [
  ...[
    'with yarn in back',
    'with yarn in front',
    'with yarn at back',
    'with yarn at front',
    'as if to knit',
    'as if to purl'
  ],
  ...[
    'with yarn held in back',
    'with yarn held in front',
    'across gap',
    'across the gap',
    'to close gap',
    'picking up wraps'
  ],
  ...[
    'picking up wraps as you go',
    'knitting wraps together with sts',
    'in the usual way',
    'wyib',
    'in the gap',
    'for the seam st',
    'for the seam stitch',
    'for seam st',
    'as 1 st each',
    'as one st each',
    'with their wraps',
    'tog with their wraps',
    'together with their wraps',
    'wyif',
    'wyb',
    'wyf',
    'yib'
  ],
  ...['yif', 'loosely', 'tightly', 'kwise', 'pwise', 'knitwise', 'purlwise', 'tfl', 'singly', 'again', 'one at a time'],
  ...['mc', 'cc', 'in mc', 'in cc', 'with mc', 'with cc'],
  ...['below the opening', 'above the opening', 'below', 'above']
].map((phrase) => phrase.split(' '));

/** Reads "k2" or "p14" before a separator: nothing else can be meant, and nothing is more common. */
export function readPlainStitch(at: Cursor): Instruction | null {
  const [letter, number, next] = [at.peek(), at.peek(1), at.peek(2)];
  if (letter?.text !== 'k' && letter?.text !== 'p') return null;
  if (number?.kind !== 'number' || !number.glued || !Number.isInteger(number.value)) return null;
  if ((next && !/^[,.]$/u.test(next.text)) || at.scope.key.some(({ atoms }) => atoms[0] === letter.text)) return null;
  const first = at.at;
  at.at += 2;
  return {
    kind: 'work',
    operation: operationNamed(letter.text)!,
    count: everySize(number.value!),
    span: at.span(first)
  };
}

/** Reads one operation, or the number and name the other way round ("2 purl sts"). */
export function readStitch(at: Cursor): Instruction | null {
  return at.attempt(readCountFirst) ?? at.attempt(readPlain) ?? at.attempt(readOperationFirst);
}

// "2 purl sts", "3 knit stitches".
function readCountFirst(at: Cursor): Instruction | null {
  const first = at.at;
  const count = readCount(at);
  const name = atomAt(at);
  if (!count || (name !== 'k' && name !== 'p')) return null;
  at.at += 1;
  if (!at.take(...STITCH_WORDS)) return null;
  return { kind: 'work', operation: operationNamed(name)!, count, span: at.span(first) };
}

// "plain to within 3 sts of the end", "plain".
function readPlain(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.take('plain')) return null;
  const target = readTarget(at) ?? (at.atStop ? { kind: 'end' as const } : null);
  return target ? { kind: 'work-to', operation: operationNamed('k')!, target, span: at.span(first) } : null;
}

function readOperationFirst(at: Cursor): Instruction | null {
  const first = at.at;
  const found = readOperation(at);
  if (!found) return null;
  const needle = found.counted ? null : at.attempt(readAllOfNeedle);
  if (needle)
    return {
      kind: 'work-to',
      operation: found.operation,
      target: { kind: 'needle', needle, before: everySize(0) },
      span: at.span(first)
    };
  const count = readOwnCount(at, found);
  const operation = readManner(at, found.operation);
  const target = count === null || found.counted ? readTarget(at) : null;
  if (target) {
    readManner(at, operation);
    return { kind: 'work-to', operation, target, span: at.span(first) };
  }
  const times = readTimesCount(at);
  return { kind: 'work', operation, count: multiply(count ?? ONE, times ?? ONE), span: at.span(first) };
}

// "the 32 stitches of needle A": all that it holds; "on to" behind it needs the number.
function readAllOfNeedle(at: Cursor): NeedleRef | null {
  if (!at.take('the') || !readCount(at)) return null;
  at.skip(...STITCH_WORDS);
  if (!at.take('of', 'on')) return null;
  const needles = readNeedles(at);
  return needles && needles !== 'each' && !/^on(?:to)?$/u.test(at.text()) ? needles.at(-1)! : null;
}

// A number after k2tog counts nothing unless "times" follows; after k, p, sl and yo it counts the stitches.
function readOwnCount(at: Cursor, found: FoundOperation): Sized<number> | null {
  if (found.counted) return (at.skip(...STITCH_WORDS), ONE);
  if (at.attempt(readMarkedStitch) || at.attempt(readInStitch)) return ONE;
  return at.attempt(() => {
    if (at.text() === '-' && at.peek(1)?.kind === 'number') at.at += 1;
    const isNext = skipToCount(at);
    const count = isCounted(found) ? readCount(at) : null;
    if (count && isTimes(at)) return null;
    const noun = (count !== null || isNext) && readNoun(at);
    return count ?? (noun ? ONE : null);
  });
}

// "(k) it tog with its wrap", "(k) the double st as 1 st": one stitch.
function readMarkedStitch(at: Cursor): true | null {
  at.skip('the', 'next', 'wrapped', 'first', 'last', 'double', '-');
  if (at.phrase('seam st', 'seam stitch')) return true;
  if (!at.take('it', 'ds') && !at.phrase('double st', 'double stitch', 'st', 'stitch')) return null;
  at.skip('tog', 'together');
  return at.phrase(
    'with its wrap',
    'with its wraps',
    'with wrap',
    'with the wrap',
    'with both wraps',
    'with both its wraps',
    'with the wraps',
    'as 1 st',
    'as one st',
    'as one',
    'as 1',
    'as one stitch'
  )
    ? true
    : null;
}

// "inc in first st", "k into the next stitch".
function readInStitch(at: Cursor): true | null {
  if (!at.take('in', 'into')) return null;
  at.skip('the');
  at.skip('next', 'first', 'last', 'same', 'following', 'foll', 'seam', 'centre', 'this');
  return at.take('st', 'stitch') ? true : null;
}

// "the next 3 sts", "the first st", "the rem 5 sts"; a bare "rem" is no count.
function skipToCount(at: Cursor): boolean {
  at.skip('the', 'these', 'those');
  const isNext = at.skip('next', 'first', 'last', 'other');
  if (!isNext) at.skip('rem', 'remaining');
  return isNext;
}

function isCounted(found: FoundOperation): boolean {
  const { takes, makes, family } = found.operation;
  return family === 'yarn-over' || (takes === 1 && makes === 1);
}

function isTimes(at: Cursor): boolean {
  return at.text() === 'times' || at.text() === 'x' || at.text() === 'time';
}

// "sts", "heel sts", "sts of the rnd", "front stitches": whose stitches they are.
function readNoun(at: Cursor): boolean {
  const owned = at.attempt(() => {
    for (let words = 0; words < 3 && !at.take(...STITCH_WORDS); words += 1) {
      const token = at.kind('word');
      if (!token || token.value !== null || at.looksLike(readOperationBefore)) return null;
    }
    return STITCH_WORDS.includes(at.text(-1)) ? true : null;
  });
  if (owned) at.attempt(readOwner);
  return owned === true;
}

function readOperationBefore(at: Cursor): unknown {
  at.at -= 1;
  return atomAt(at) === 'st' ? null : readOperation(at);
}

// "of the rnd", "of the heel", "of the third needle".
function readOwner(at: Cursor): true | null {
  if (at.text() === 'on' && /^(?:to|one|an?|another)$/u.test(at.text(1))) return null;
  if (!at.take('of', 'on', 'from')) return null;
  if (readNeedles(at)) return true;
  at.skip('the', 'this');
  const owner = at.kind('word');
  return owner && !/^needles?$/u.test(at.text()) && !/^n$/u.test(owner.text) ? true : null;
}

// "tbl" turns the loop; the rest of the manners leave count and face as they are.
function readManner(at: Cursor, operation: Operation): Operation {
  let worked = operation;
  for (;;) {
    const twisted = operationNamed(`${operation.name} tbl`) ?? operationNamed(`${operation.name}tbl`);
    if (twisted && readBackLoop(at)) worked = twisted;
    else if (operation.name === 'sl' && at.take('kwise', 'knitwise')) worked = operationNamed('sl1k') ?? operation;
    else if (operation.name === 'sl' && at.take('pwise', 'purlwise')) worked = operationNamed('sl1p') ?? operation;
    else if (!takeManner(at)) return worked;
  }
}

function takeManner(at: Cursor): boolean {
  for (const words of MANNERS) {
    if (words.some((word, offset) => at.text(offset) !== word)) continue;
    at.at += words.length;
    return true;
  }
  return false;
}

/** The product of two counts, size by size. */
export function multiply(left: Sized<number>, right: Sized<number>): Sized<number> {
  const longer = left.length >= right.length ? left : right;
  return longer.map((_, size) => {
    const a = left.length === 1 ? left[0] : left[size];
    const b = right.length === 1 ? right[0] : right[size];
    return a === null || a === undefined || b === null || b === undefined ? null : a * b;
  });
}

/** Whether a bare "k" or "p" stands at the cursor, without a number or a target. */
export function isBare(instruction: Instruction, written: string): boolean {
  if (instruction.kind !== 'work' || !/^[kp]$/u.test(instruction.operation.name)) return false;
  return /^(?:k|p|knit|purl)$/iu.test(written.trim());
}
