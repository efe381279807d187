/** Stitches knitted with waste yarn, to be opened later: "k8 with waste yarn, sl these back to left needle". */

import type { Instruction, Statement } from '../model/pattern.ts';
import { operationNamed } from '../model/operations.ts';
import { addCounts } from './adding.ts';
import { readCount } from './counts.ts';
import type { Sized } from '../model/sized.ts';
import type { Cursor } from './cursor.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Reads the stitches with their way back to the left needle: together they leave the row where it was. */
export function readWasteYarn(at: Cursor): Instruction | null {
  return at.attempt(readWaste) ?? at.attempt(readAgain);
}

function readWaste(at: Cursor): Instruction | null {
  const first = at.at;
  const isBefore = takeYarn(at);
  at.skip(',');
  if (!at.take('k', 'knit')) return null;
  at.skip('the', 'next');
  const count = readCount(at);
  at.skip(...STITCH_WORDS);
  if (!count || !(isBefore || takeYarn(at)) || !readBack(at)) return null;
  at.scope.wasteCount = count;
  return { kind: 'waste-yarn', count, span: at.span(first) };
}

// "with waste yarn", "using a piece of scrap yarn".
function takeYarn(at: Cursor): boolean {
  return (
    at.attempt(() => {
      if (!at.take('with', 'using', 'in')) return null;
      at.skip('a', 'piece', 'of', 'the');
      return at.take('waste', 'scrap', 'contrast', 'contrasting') && at.take('yarn', 'wool', 'thread');
    }) !== null
  );
}

// "k them again": the stitches that went back to the left needle.
function readAgain(at: Cursor): Instruction | null {
  const first = at.at;
  const count = at.scope.wasteCount;
  if (!count || !at.take('k', 'knit') || !at.take('them', 'these')) return null;
  at.skip(...STITCH_WORDS, 'again');
  return { kind: 'work', operation: operationNamed('k')!, count, span: at.span(first) };
}

// ", sl these 8 sts back to left needle".
function readBack(at: Cursor): boolean {
  at.skip(',', ';', '.', 'and', 'then');
  if (!at.take('sl', 'slip', 'place', 'put', 'return', 'transfer')) return false;
  at.skip('these', 'those', 'the', 'same', 'them', 'waste', 'yarn');
  readCount(at);
  at.skip(...STITCH_WORDS);
  at.skip('back', 'again');
  if (!at.take('to', 'on', 'onto')) return false;
  at.skip('the', 'left', 'lh', 'hand', '-');
  return at.take('needle') !== null;
}

/** Reads "Remove the waste yarn and put the 8 sts below and the 8 sts above onto needles": the opening is a piece of its own. */
export function readOpening(at: Cursor): Statement | null {
  const first = at.at;
  at.skip('carefully', 'now', 'then');
  if (!at.take('remove', 'unpick', 'undo', 'removing') && !at.phrase('take out', 'pull out')) return null;
  const words = new Set<string>();
  let count: Sized<number> | null = null;
  while (at.peek() && at.text() !== '.') {
    const found = at.attempt(readStitches);
    if (found) count = count ? addCounts(count, found) : found;
    else {
      words.add(at.text());
      at.at += 1;
    }
  }
  const isWaste = (words.has('waste') || words.has('scrap')) && (words.has('needles') || words.has('needle'));
  return isWaste && count ? { kind: 'open', count, span: at.span(first) } : null;
}

function readStitches(at: Cursor): Sized<number> | null {
  const count = readCount(at);
  return count && at.take(...STITCH_WORDS) ? count : null;
}
