/** What happens at edges inside a row: picking up, casting on over a gap, binding off, setting stitches aside. */

import type { Instruction } from '../model/pattern.ts';
import { everySize } from '../model/sized.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';

const STITCH_WORDS = ['st', 'sts', 'stitch', 'stitches'];
const PICK_UP = [
  ...[
    'pick up and knit',
    'pick up and k',
    'pick up & knit',
    'pick up & k',
    'pick up',
    'pu and k',
    'pu & k',
    'pu and knit',
    'pu'
  ],
  ...['knit up', 'k up', 'puk', 'pick up and purl', 'picking up']
];
const BIND_OFF = ['bo', 'bind off', 'cast off', 'c off', 'coff', 'binding off'];
const CAST_ON = ['co', 'cast on', 'using backward loop method co', 'using backward - loop method co'];
const AWAY = ['on to', 'on', 'onto', 'to'];
const HOLDERS = new Set([
  ...['waste', 'scrap', 'holder', 'hold', 'yarn', 'thread', 'holders', 'wy'],
  ...['length', 'wool', 'safety', 'pin', 'safetypin', 'cord', 'stitchholder']
]);

/** Reads an instruction at an edge. */
export function readEdge(at: Cursor): Instruction | null {
  return (
    at.attempt(readPickUp) ??
    at.attempt(readPickUpMore) ??
    at.attempt(readBindOff) ??
    at.attempt(readCastOnHere) ??
    at.attempt(readHold)
  );
}

function readPickUp(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.phrase(...PICK_UP)) return null;
  at.skip('approx', 'approximately', 'about', '.');
  const count = readCount(at);
  if (!count) return null;
  const atMost = at.attempt(() => (at.take('-', 'or', 'to') ? at.whole() : null)) ?? 0;
  const span = at.span(first);
  at.skip('extra', ...STITCH_WORDS);
  at.skip('evenly');
  skipWhere(at);
  return { kind: 'pick-up', count, atMost, span };
}

// "(pick up 15 sts along the flap and) 1 more in the corner".
function readPickUpMore(at: Cursor): Instruction | null {
  const first = at.at;
  const count = readCount(at);
  const more = count && at.take('more', 'extra');
  at.skip(...STITCH_WORDS);
  const where = more ? ['in', 'at', 'from', 'between'] : ['along', 'down', 'up'];
  if (!count || !where.includes(at.text())) return null;
  const span = at.span(first);
  skipWhere(at);
  return { kind: 'pick-up', count, atMost: 0, span };
}

// "along edge of heel flap", "over the gap", "between flap and instep": where the stitches are.
function skipWhere(at: Cursor): void {
  if (
    !['along', 'down', 'up', 'over', 'between', 'from', 'across', 'in', 'at', 'on', 'into', 'around'].includes(
      at.text()
    )
  )
    return;
  while (!at.atStop && at.peek()?.kind !== 'open' && !isNextAction(at)) at.at += 1;
}

function isNextAction(at: Cursor): boolean {
  if (!['and', 'then', '&'].includes(at.text())) return false;
  if (at.peek(1)?.kind === 'number') return true;
  return ['k', 'knit', 'p', 'purl', 'turn', 'pm', 'then', 'work', 'sl', 'slip'].includes(at.text(1));
}

function readBindOff(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.phrase(...BIND_OFF)) return null;
  at.skip('the', 'next', 'first');
  const count = readCount(at);
  const all = count === null && at.skip('all', 'rem', 'remaining');
  at.skip(...STITCH_WORDS);
  if (!count && !all && !at.atStop && !at.looksLike(skipManner)) return null;
  skipManner(at);
  return { kind: 'bind-off', count, span: at.span(first) };
}

function skipManner(at: Cursor): boolean {
  return at.phrase('loosely in rib', 'loosely in patt', 'loosely', 'in rib', 'in patt', 'in pattern', 'kwise', 'pwise');
}

// "CO 3 sts over gap"; in a row with a label the words "over gap" may be missing.
function readCastOnHere(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.phrase(...CAST_ON)) return null;
  const count = readCount(at);
  if (!count) return null;
  at.skip('new', ...STITCH_WORDS);
  at.phrase('in their place', 'in place of them', 'instead');
  const gap = at.skip(
    'over',
    'across',
    'at',
    'above',
    'the',
    'gap',
    'thumb',
    'opening',
    'using',
    'backward',
    'loop',
    'method'
  );
  return gap || at.scope.row !== '' ? { kind: 'cast-on-here', count, span: at.span(first) } : null;
}

// "place 13 thumb sts on waste yarn", "sl next 12 sts to holder", "put the first 8 sts on hold".
function readHold(at: Cursor): Instruction | null {
  const first = at.at;
  if (!at.take('place', 'put', 'slip', 'sl', 'transfer', 'leave')) return null;
  at.skip('the', 'next', 'first');
  const count = readCount(at) ?? (at.text() === 'st' ? everySize(1) : null);
  if (!count) return null;
  const name = readName(at);
  if (!at.take(...STITCH_WORDS)) return null;
  at.phrase('of rnd', 'of the rnd', 'of round', 'of the round', 'of row', 'of the row');
  return readHolder(at) ? { kind: 'hold', count, name: readFor(at) ?? name, span: at.span(first) } : null;
}

function readName(at: Cursor): string | null {
  const name = at.peek();
  if (name?.kind !== 'word' || STITCH_WORDS.includes(name.text)) return null;
  at.at += 1;
  return name.text;
}

function readHolder(at: Cursor): boolean {
  if (!at.phrase(...AWAY)) return false;
  at.skip('a', 'piece', 'of', 'the', 'some', 'stitch', 'st');
  if (!HOLDERS.has(at.text())) return false;
  while (HOLDERS.has(at.text()) || at.looksLike(isInside)) at.at += 1;
  return true;
}

// "a length of wool", "a safety-pin": a small word or a hyphen between two of them.
function isInside(at: Cursor): boolean {
  return at.take('of', '-') !== null && HOLDERS.has(at.text());
}

function readFor(at: Cursor): string | null {
  return at.attempt(() => {
    at.skip('and', 'leave', 'keep', 'them');
    if (!at.take('for')) return null;
    at.skip('the');
    return at.kind('word')?.text ?? null;
  });
}
