/** Places that working goes on to: "to end", "to last 3 sts", "to 2 sts before m", "to marker A", "to end of heel sts". */

import type { Target } from '../model/pattern.ts';
import { everySize, type Sized } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readMarkerName } from './marker-names.ts';
import { readNeedles } from './needle-names.ts';

const END: Target = { kind: 'end' };
const NONE = everySize(0);

type NeedleTarget = Extract<Target, { kind: 'needle' }>;

/** What a row, a round or a needle is called at the end of "to the end of …". */
const WHOLES = ['rnd', 'round', 'row', 'rnds', 'rounds', 'rows', 'sts', 'stitches', 'this', 'section'];

const ON = ['of', 'on', 'in', 'from'];

/** Reads a target, or returns `null`. */
export function readTarget(at: Cursor): Target | null {
  return (
    at.attempt(readWholeNeedle) ??
    at.attempt(readAround) ??
    at.attempt(readOver) ??
    at.attempt(readUntilLeft) ??
    at.attempt(readTo)
  );
}

function readTo(at: Cursor): Target | null {
  at.skip('up');
  if (!at.take('to', 'till', 'til')) return null;
  at.skip('within');
  return at.attempt(readCounted) ?? at.attempt(readPlace);
}

// "to last 3 sts", "to the last 3", "to 2 sts before m", "to within 3 sts of the end".
function readCounted(at: Cursor): Target | null {
  at.skip('the');
  const last = at.take('last') !== null;
  const count = readCount(at) ?? (last ? everySize(1) : null);
  if (!count) return null;
  skipSts(at);
  if (last) return at.take('before') ? readBefore(at, count) : lastOf(at, count);
  at.skip('away', 'short');
  if (!at.take('before', 'of', 'from')) return null;
  return readBefore(at, count);
}

// The tail of "to last 3 sts of the rnd".
function lastOf(at: Cursor, count: Sized<number>): Target {
  const needle = at.attempt(readOnNeedle);
  if (needle) return { ...needle, before: count };
  at.attempt(() => (at.take(...ON) && readWhole(at) ? true : null));
  return { kind: 'last', count };
}

function readBefore(at: Cursor, count: Sized<number>): Target | null {
  const place = readPlace(at);
  if (place?.kind === 'end') return { kind: 'last', count };
  if (place && 'before' in place) return { ...place, before: count };
  return null;
}

function skipSts(at: Cursor): void {
  at.skip('st', 'sts', 'stitch', 'stitches');
}

function readPlace(at: Cursor): Target | null {
  at.skip('the');
  return at.attempt(readMarker) ?? at.attempt(readEnd) ?? at.attempt(readGap) ?? at.attempt(readCentre);
}

function readEnd(at: Cursor): Target | null {
  if (!at.take('end', 'ends')) return null;
  const needle = at.attempt(readOnNeedle);
  if (needle) return needle;
  return at.attempt(() => (at.take('of') ? (readSection(at) ?? (readWhole(at) ? END : null)) : null)) ?? END;
}

// "of N1", "on needle", "of the 2nd needle", "of this needle".
function readOnNeedle(at: Cursor): NeedleTarget | null {
  if (!at.take(...ON)) return null;
  at.skip('the', 'this', 'that');
  const needles = readNeedles(at);
  if (needles === 'each' || (!needles && !at.take('needle', 'ndl', 'dpn'))) return null;
  return { kind: 'needle', needle: needles?.at(-1) ?? null, before: NONE };
}

// "(k) the sts of N1", "(k) the front needle", "across N2", "all sts on the 1st needle".
function readWholeNeedle(at: Cursor): Target | null {
  at.skip('across', 'over', 'all', 'the', 'rem', 'remaining');
  if (at.take('st', 'sts', 'stitches')) return readOnNeedle(at);
  const needles = readNeedles(at);
  if (!needles || needles === 'each' || at.text() === ':') return null;
  return { kind: 'needle', needle: needles.at(-1)!, before: NONE };
}

function readWhole(at: Cursor): boolean {
  return at.skip('the', ...WHOLES);
}

// "heel", "the heel sts", "instep stitches".
function readSection(at: Cursor): Target | null {
  return at.attempt(() => {
    at.skip('the', 'all');
    const count = readCount(at);
    const name = at.peek();
    if (!name || !at.scope.isSection(name.text) || /^(?:needles?|and)$/u.test(at.text(1))) return null;
    at.at += 1;
    skipSts(at);
    return { kind: 'section', name: name.text, count };
  });
}

function readGap(at: Cursor): Target | null {
  at.attempt(() => (at.skip('first', 'last', 'next', 'double', '-') && at.text() === 'wrapped' ? true : null));
  at.skip('the', 'wrapped', 'turning');
  if (at.take('ds') || at.phrase('double st', 'double stitch')) return { kind: 'double-stitch', before: NONE };
  return (at.take('gap', 'turn') ?? (at.peek(-1)?.text === 'wrapped' ? at.take('st', 'stitch') : null))
    ? { kind: 'gap', before: NONE }
    : null;
}

function readMarker(at: Cursor): Target | null {
  const nth = at.attempt(() => {
    const value = at.kind('ordinal')?.value ?? null;
    return value !== null && at.looksLike(readMarkerName) ? value : null;
  });
  const marker = readMarkerName(at);
  return marker ? { kind: 'marker', name: marker.name, before: NONE, nth: nth ?? 1 } : null;
}

// "centre of sole", "the middle of the heel".
function readCentre(at: Cursor): Target | null {
  if (!at.take('centre', 'center', 'middle') || !at.take('of')) return null;
  const section = readSection(at);
  return section?.kind === 'section' ? { kind: 'centre', name: section.name } : null;
}

// "around", "across", "across the instep", "all sts", "rem sts", "plain".
function readAround(at: Cursor): Target | null {
  if (at.take('plain')) return readTarget(at) ?? END;
  if (at.take('around')) return END;
  if (at.take('across')) {
    at.skip('all', 'the', 'rem', 'remaining');
    return at.attempt(readCountedSection) ?? readSection(at) ?? (at.skip(...WHOLES), END);
  }
  if (at.phrase('all round', 'all around', 'all the way round', 'all along')) return END;
  at.skip('the');
  if (!at.take('all', 'rem', 'remaining', 'every')) return readSection(at);
  at.skip('the', 'rem', 'remaining');
  return at.take('sts', 'stitches', 'st', 'stitch') ? END : null;
}

// "(over) the 32 heel sts": the section tells more than the number.
function readCountedSection(at: Cursor): Target | null {
  at.skip('the', 'next');
  return at.looksLike(readCount) ? readSection(at) : null;
}

function readOver(at: Cursor): Target | null {
  if (!at.take('over')) return null;
  at.skip('all', 'the');
  return at.attempt(readCountedSection) ?? readSection(at) ?? at.attempt(readNext);
}

// "(over the) next 8 sts".
function readNext(at: Cursor): Target | null {
  if (!at.take('next')) return null;
  const count = readCount(at);
  return count && at.take('st', 'sts', 'stitch', 'stitches') ? { kind: 'next', count } : null;
}

// "until 3 sts rem", "until 3 sts remain before marker".
function readUntilLeft(at: Cursor): Target | null {
  if (!at.take('until')) return null;
  const count = readCount(at);
  if (!count) return null;
  skipSts(at);
  if (at.take('before')) return readBefore(at, count);
  if (!at.take('rem', 'remain', 'remains') && !at.phrase('are left', 'is left')) return null;
  return at.take('before') ? readBefore(at, count) : { kind: 'last', count };
}
