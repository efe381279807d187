/** Says one moment in words: the equal text of a drawing. */

import type { HungMarker, Moment, NeedleMoment, NeedleState, Piece } from '../model/moment.ts';
import { list, stitches } from './counting.ts';

const STATES: Readonly<Record<NeedleState, string>> = {
  feeding: 'feeding',
  working: 'working',
  holding: 'holding',
  resting: 'resting',
  free: 'free'
};

/** One line per needle, then the beginning of round and the yarn. */
export function sayMoment(moment: Moment): string[] {
  const needles = moment.needles.map((needle) => sayNeedle(moment, needle));
  return [...needles, sayBor(moment), sayYarn(moment)].filter((line) => line !== '');
}

/** "Needle A, feeding, 17 stitches: instep 1–17; starts k, ends p; marker m1 after stitch 8." */
function sayNeedle(moment: Moment, needle: NeedleMoment): string {
  const head = `${nameOf(moment, needle)}, ${STATES[needle.state]}`;
  if (needle.stitches.length === 0) return `${head}, no stitches.`;
  const details = [sayPieces(needle.pieces), sayEnds(needle), sayMarkers(needle.markers)].filter((part) => part !== '');
  const tail = details.length > 0 ? `: ${details.join('; ')}` : '';
  return `${head}, ${stitches(needle.stitches.length)}${tail}.`;
}

function nameOf(moment: Moment, needle: NeedleMoment): string {
  const number = needle.number === null ? '' : `N${needle.number}, `;
  if (needle.group === null) return `${number}needle ${needle.letter}`.replace(/^n/u, 'N');
  return `${number}${needle.group} of needle ${needle.letter}`;
}

function sayPieces(pieces: readonly Piece[]): string {
  let at = 0;
  const parts = pieces.map((piece) => {
    const from = at + 1;
    at += piece.stitches;
    const range = from === at ? `${from}` : `${from}–${at}`;
    return piece.name === '' ? '' : `${piece.name} ${range}`;
  });
  return parts.filter((part) => part !== '').join(', ');
}

function sayEnds(needle: NeedleMoment): string {
  if (needle.firstIs === '' || needle.lastIs === '') return '';
  return `starts ${needle.firstIs}, ends ${needle.lastIs}`;
}

function sayMarkers(markers: readonly HungMarker[]): string {
  return list(
    markers.map((marker) => {
      if (marker.kind === 'locking') return `locking marker ${marker.name} in stitch ${marker.after + 1}`;
      return marker.after === 0
        ? `marker ${marker.name} before stitch 1`
        : `marker ${marker.name} after stitch ${marker.after}`;
    })
  );
}

function sayBor(moment: Moment): string {
  if (!moment.bor) return '';
  const { needle, after } = moment.bor;
  if (after === 0) return `The round begins with N${needle + 1}.`;
  return `The round begins inside N${needle + 1}, after its stitch ${after}.`;
}

function sayYarn(moment: Moment): string {
  if (!moment.yarn) return '';
  const { needle, stitch } = moment.yarn;
  const side = moment.side === 'RS' ? 'right' : 'wrong';
  return `The yarn hangs from stitch ${stitch + 1} of N${needle + 1}; the ${side} side faces you.`;
}
