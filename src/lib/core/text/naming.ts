/** Needles that get a name: "this is now the heel needle", "(4th needle)", "Needle A holds the instep". */

import type { Arrangement, NeedleRef } from '../model/needle-words.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { STITCH_WORDS } from './layouts.ts';
import { readNeedle } from './needle-names.ts';

/** Reads "This is now the heel needle", "These 28 sts are on the heel needle", "this will be N3", "Needle A holds the instep". */
export function readNaming(at: Cursor): Arrangement | null {
  const first = at.at;
  const needle = at.attempt(readCarrier) ?? at.attempt(readDemonstrative);
  if (!needle) return null;
  const name = at.attempt(readNewName);
  if (name === null) return null;
  skipRest(at);
  return { kind: 'name-needle', needle, name, span: at.span(first) };
}

function readDemonstrative(at: Cursor): NeedleRef | null {
  if (!at.take('this', 'these', 'it', 'they')) return null;
  readCount(at);
  at.skip('heel', ...STITCH_WORDS, 'needle');
  if (!at.phrase('is now', 'are now', 'is', 'are', 'will be', 'will now be', 'becomes', 'become', 'now becomes'))
    return null;
  at.skip('now', 'on', 'called', 'again');
  return { kind: 'same' };
}

// "Needle A holds", "the old heel needle is now", "N2 carries".
function readCarrier(at: Cursor): NeedleRef | null {
  const needle = readNeedle(at);
  if (!needle || !at.phrase('holds', 'is now', 'becomes', 'carries', 'has', 'will be', 'will hold', 'now becomes'))
    return null;
  return at.peek()?.kind === 'number' ? null : needle;
}

// "the heel needle", "N3", "the instep sts", "the 1st needle again".
function readNewName(at: Cursor): string | null {
  at.skip('the');
  const needle = at.attempt(readNeedle);
  if (needle?.kind === 'named') return needle.name;
  readCount(at);
  const part = at.peek();
  if (!part || !at.scope.isSection(part.text)) return null;
  at.at += 1;
  at.skip(...STITCH_WORDS);
  return part.text;
}

// ", with 31 stitches" and "again" say nothing that is not checked elsewhere.
function skipRest(at: Cursor): void {
  at.skip('again');
  at.phrase('from now on', 'from here on');
  at.attempt(() => (at.skip(',') && at.take('with') && readCount(at) && at.take(...STITCH_WORDS) ? true : null));
}

/** Reads a note in brackets that names the needle in work: "(4th needle)", "(this is the 1st needle again)". */
export function readNamingNote(at: Cursor): Arrangement | null {
  return at.attempt(() => {
    const first = at.at;
    const end = at.partner;
    if (at.peek()?.kind !== 'open' || end < 0) return null;
    const inner = at.within(first + 1, end);
    const told = inner.attempt(readNaming) ?? inner.attempt(readBareName);
    if (!told || !inner.done) return null;
    at.at = end + 1;
    return told;
  });
}

function readBareName(at: Cursor): Arrangement | null {
  const first = at.at;
  at.skip('now', 'the', 'new', '=');
  const needle = readNeedle(at);
  if (needle?.kind !== 'named') return null;
  return { kind: 'name-needle', needle: { kind: 'same' }, name: needle.name, span: at.span(first) };
}
