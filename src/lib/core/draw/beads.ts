/** What is strung on one needle, in order: stitches, and markers among them. */

import type { HungMarker, Moment, NeedleMoment } from '../model/moment.ts';
import type { Scale } from './scale.ts';

/** A marker on a needle, the beginning of round included. */
export interface Hung extends HungMarker {
  readonly bor: boolean;
}

/** Places along a needle, measured from where the first stitch begins. */
export interface Beads {
  /** Middle of each stitch. */
  readonly stitches: readonly number[];
  readonly markers: readonly { readonly hung: Hung; readonly at: number }[];
  /** From the beginning of the first stitch to the end of the last. */
  readonly room: number;
}

// A ring marker pushes its neighbours apart by this share of a stitch.
const RING_ROOM = 0.55;

/** Strings the stitches and markers of a needle. */
export function stringBeads(moment: Moment, index: number, scale: Scale): Beads {
  const needle = moment.needles[index]!;
  const hung = hungOn(moment, index);
  const stitches: number[] = [];
  const markers: { hung: Hung; at: number }[] = [];
  let at = 0;
  for (let gap = 0; gap <= needle.stitches.length; gap += 1) {
    const here = hung.filter((marker) => marker.after === gap);
    for (const marker of here.filter((candidate) => candidate.kind === 'ring')) {
      at += inside(needle, gap) ? scale.pitch * RING_ROOM : 0;
      markers.push({ hung: marker, at: ringPlace({ needle, gap, at, scale, count: markers.length }) });
    }
    const middle = at + scale.pitch / 2;
    for (const marker of here.filter((candidate) => candidate.kind === 'locking'))
      markers.push({ hung: marker, at: middle });
    if (gap < needle.stitches.length) {
      stitches.push(middle);
      at += scale.pitch;
    }
  }
  return { stitches, markers, room: at };
}

interface RingPlace {
  readonly needle: NeedleMoment;
  readonly gap: number;
  readonly at: number;
  readonly scale: Scale;
  readonly count: number;
}

// At an end of the needle a marker hangs just outside the stitches.
function ringPlace({ needle, gap, at, scale, count }: RingPlace): number {
  if (inside(needle, gap)) return at - (scale.pitch * RING_ROOM) / 2;
  const outside = scale.pitch * (RING_ROOM / 2 + 0.1) * (1 + (count % 3) * 1.6);
  return gap === 0 ? -outside : at + outside;
}

function inside(needle: NeedleMoment, gap: number): boolean {
  return gap > 0 && gap < needle.stitches.length;
}

// At a needle end the marker of the beginning of round would fall off, so it hangs one stitch in.
function hungOn(moment: Moment, index: number): Hung[] {
  const needle = moment.needles[index]!;
  const markers = needle.markers.map((marker) => ({ ...marker, bor: false }));
  const load = needle.stitches.length;
  if (moment.bor?.needle !== index || load === 0) return markers;
  const after = load === 1 ? 0 : Math.min(Math.max(moment.bor.after, 1), load - 1);
  return [{ name: 'BOR', kind: load === 1 ? 'locking' : 'ring', after, bor: true }, ...markers];
}
