/** Simple stitch patterns that are called by a name: St st, garter stitch, k2, p2 rib, seed stitch. */

import type { PlainStitch } from '../model/plain-rows.ts';
import type { Instruction } from '../model/pattern.ts';
import { operationNamed } from '../model/operations.ts';
import { everySize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import type { Cursor } from './cursor.ts';
import { atomAt } from './phrases.ts';

const STOCKINETTE = ['st st', 'stockinette', 'stocking', 'stockinet', 'ss'];
const GARTER = ['garter', 'g st'];
// The British moss stitch is the American seed stitch (standards, section 2).
const SEED = ['seed', 'moss'];
const STITCH_WORDS = ['st', 'stitch', 'sts', 'stitches'];
const RIB_WORDS = ['rib', 'ribbing', 'ribs'];

/** Reads the name of a simple pattern. */
export function readStitchPattern(at: Cursor): PlainStitch | null {
  return at.attempt(readRib) ?? at.attempt(readNamed);
}

function readNamed(at: Cursor): PlainStitch | null {
  const first = at.at;
  const as = at.phrase(...STOCKINETTE)
    ? 'stockinette'
    : at.phrase(...GARTER)
      ? 'garter'
      : at.phrase(...SEED)
        ? 'seed'
        : null;
  if (!as) return null;
  at.skip(...STITCH_WORDS);
  return { as, unit: as === 'seed' ? unitOf(1, 1, at.span(first)) : [] };
}

// "k2, p2 rib", "k1 p1 ribbing", "2x2 rib", "1/1 rib", "twisted" is left to the as-set readers.
function readRib(at: Cursor): PlainStitch | null {
  const first = at.at;
  const counts = at.attempt(readKnitPurl) ?? at.attempt(readCross);
  if (!counts || !at.take(...RIB_WORDS)) return null;
  const [knit, purl] = counts;
  return { as: 'rib', unit: unitOf(knit, purl, at.span(first)) };
}

function readKnitPurl(at: Cursor): readonly [number, number] | null {
  if (atomAt(at) !== 'k') return null;
  at.at += 1;
  const knit = at.whole() ?? 1;
  at.skip(',', '/', '-');
  if (atomAt(at) !== 'p') return null;
  at.at += 1;
  return [knit, at.whole() ?? 1];
}

function readCross(at: Cursor): readonly [number, number] | null {
  const knit = at.whole();
  if (knit === null || !at.take('x', '/')) return null;
  const purl = at.whole();
  return purl === null ? null : [knit, purl];
}

function unitOf(knit: number, purl: number, span: Span): Instruction[] {
  return [
    { kind: 'work', operation: operationNamed('k')!, count: everySize(knit), span },
    { kind: 'work', operation: operationNamed('p')!, count: everySize(purl), span }
  ];
}
