/** How a tube begins: casting on, joining, naming sections. */

import type { Statement } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readMarker } from './markers.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];

/** Reads a cast-on: "CO 64 sts", "Using the long-tail method, cast on 56 (64, 72) sts loosely". */
export function readCastOn(at: Cursor): Statement | null {
  const first = at.at;
  skipMethod(at);
  if (!at.take('co') && !at.phrase('cast on')) return null;
  at.skip('loosely', 'a', 'total', 'of');
  const count = readCount(at);
  if (!count) return null;
  at.skip(...STITCH_WORDS);
  const span = at.span(first);
  if (at.text() === 'over' || at.text() === 'across' || at.phrase('at the gap', 'above the gap')) return null;
  skipTail(at);
  at.scope.begun = true;
  return { kind: 'cast-on', count, assertions: [], span };
}

// "Using the long-tail method," and "With smaller needles and MC,".
function skipMethod(at: Cursor): void {
  at.attempt(() => {
    if (!at.take('using', 'with')) return null;
    for (let words = 0; words < 14; words += 1) {
      at.skip(',');
      if (at.text() === 'co' || (at.text() === 'cast' && at.text(1) === 'on')) return true;
      if (!at.peek() || ['.', ';', ':'].includes(at.text())) return null;
      at.at += 1;
    }
    return null;
  });
}

// "loosely", "on the circular", "using smaller needles".
function skipTail(at: Cursor): void {
  at.attempt(() => {
    if (!at.take('loosely', 'on', 'onto', 'using', 'with')) return null;
    while (!at.atStop) {
      if (at.peek()?.kind === 'number' || at.text() === 'each') return null;
      if (at.peek()?.kind === 'open') return true;
      at.at += 1;
    }
    return true;
  });
}

/** Reads a join: "Join to work in the rnd, being careful not to twist; pm for BOR". */
export function readJoin(at: Cursor): Statement | null {
  const first = at.at;
  const placed = at.attempt(() => {
    if (!readMarker(at)) return null;
    at.skip(',', 'and', ';', '&');
    return at.text() === 'join' ? true : null;
  });
  at.attempt(() =>
    at.phrase('being careful not to twist', 'taking care not to twist') ? (skipWords(at), at.take(','), true) : null
  );
  if (!at.take('join', 'joining')) return null;
  if (!isJoin(at)) return null;
  skipWords(at);
  while (at.attempt(skipCare));
  const marker = placed !== null || at.attempt(readOwnMarker) !== null;
  return { kind: 'join', marker, span: at.span(first) };
}

// "Join CC" and "Join yarn" are something else.
function isJoin(at: Cursor): boolean {
  return (
    at.atStop ||
    ['to', 'in', 'into', 'for', 'and', 'round', 'the', 'sts', 'work', 'being', 'without', 'ends'].includes(at.text())
  );
}

function skipWords(at: Cursor): void {
  while (at.peek()?.kind === 'word' && !at.looksLike(readOwnMarker)) at.at += 1;
}

// ", being careful not to twist", ", taking care that the cast-on is not twisted".
function skipCare(at: Cursor): true | null {
  at.skip(',', ';');
  if (!at.take('being', 'taking', 'making', 'without', 'careful', 'be', 'do')) return null;
  while (at.peek() && !at.atStop) {
    if (at.looksLike(readOwnMarker)) return true;
    at.at += 1;
  }
  return true;
}

function readOwnMarker(at: Cursor): true | null {
  at.separators();
  at.skip('and', '&');
  const marker = readMarker(at);
  return marker?.kind === 'marker' && marker.action === 'place' ? true : null;
}

/** Reads a line that names runs of the ring: "Sections: instep 28 (32, 36), sole 28 (32, 36)". */
export function readSections(at: Cursor): Statement | null {
  const first = at.at;
  if (!at.take('sections', 'section') || !at.take(':')) return null;
  const runs: { name: string; count: Sized<number> }[] = [];
  while (!at.done) {
    const run = at.attempt(readRun);
    if (!run) break;
    runs.push(run);
    at.scope.sections.add(run.name);
    at.skip(',', 'and', ';');
  }
  return runs.length > 0 && at.atStop ? { kind: 'sections', runs, span: at.span(first) } : null;
}

// "instep 28 (32, 36) sts", "back of hand 20".
function readRun(at: Cursor): { readonly name: string; readonly count: Sized<number> } | null {
  const first = at.at;
  while (at.peek()?.kind === 'word' && at.peek()!.value === null) at.at += 1;
  const name = at.at > first ? at.written(first).toLowerCase().replaceAll(/\s+/gu, ' ') : '';
  at.skip('-', '=');
  const count = name === '' ? null : readCount(at);
  at.skip(...STITCH_WORDS);
  return count ? { name, count } : null;
}
