/** What is strung on one needle, in order: stitches, and markers among them. */

import type { HungMarker, Moment, NeedleMoment } from '../model/moment.ts';
import type { Scale } from './scale.ts';

/** A marker on a needle, the beginning of round included. */
export interface Hung extends HungMarker {
  readonly bor: boolean;
}

/** A marker in its place. */
export interface Bead {
  readonly hung: Hung;
  readonly at: number;
  /** Middle of the stitch that it keeps beside. */
  readonly beside: number;
}

/** Places along a needle, measured from where the first stitch begins. */
export interface Beads {
  /** Middle of each stitch. */
  readonly stitches: readonly number[];
  readonly markers: readonly Bead[];
  /** From the beginning of the first stitch to the end of the last. */
  readonly room: number;
}

// A ring marker pushes its neighbours apart by this share of a stitch.
const RING_ROOM = 0.7;

/** Strings the stitches and markers of a needle. */
export function stringBeads(moment: Moment, index: number, scale: Scale): Beads {
  const needle = moment.needles[index]!;
  const hung = hungOn(moment, index);
  const stitches: number[] = [];
  const markers: Bead[] = [];
  let at = 0;
  for (let gap = 0; gap <= needle.stitches.length; gap += 1) {
    const here = hung.filter((marker) => marker.after === gap);
    const [rings, pins] = [here.filter(isRing), here.filter((marker) => !isRing(marker))];
    const beside = stitches.at(-1) ?? 0;
    rings.forEach((marker, place) => {
      at += inside(needle, gap) ? scale.pitch * RING_ROOM : 0;
      markers.push({ hung: marker, at: ringPlace({ needle, gap, at, scale, place }), beside });
    });
    const middle = at + scale.pitch / 2;
    markers.push(...pins.map((marker) => ({ hung: marker, at: middle, beside: middle })));
    if (gap === needle.stitches.length) break;
    stitches.push(middle);
    at += scale.pitch;
  }
  return { stitches, markers, room: at };
}

function isRing(marker: Hung): boolean {
  return marker.kind === 'ring';
}

interface RingPlace {
  readonly needle: NeedleMoment;
  readonly gap: number;
  readonly at: number;
  readonly scale: Scale;
  /** How many hang in the same gap before it. */
  readonly place: number;
}

// At an end of the needle a marker hangs just outside the stitches.
function ringPlace({ needle, gap, at, scale, place }: RingPlace): number {
  if (inside(needle, gap)) return at - (scale.pitch * RING_ROOM) / 2;
  const outside = scale.pitch * (RING_ROOM / 2 + 0.1) * (1 + place * 1.6);
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
