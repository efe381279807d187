/** One tube on the needles: its items, where the yarn hangs, and the stitches set aside. */

import { BOR, type Ring } from '../model/ring.ts';
import type { Stitch } from '../model/stitch.ts';
import { countStitches, fromBor, toRing, type Item, type Locks } from './items.ts';

/** A tube between two rows. Plain data: a row makes a new one. */
export interface Tube {
  /** 0 for the first tube, then in the order of resuming. */
  readonly number: number;
  /** The BOR first. */
  readonly items: readonly Item[];
  /** The yarn hangs before this index of `items`; at least 1, since the BOR comes first. */
  readonly hand: number;
  readonly locks: Locks;
}

/** A tube with these stitches, the yarn at the BOR. */
export function tubeOf(stitches: readonly Stitch[], number: number): Tube {
  const items: Item[] = [{ kind: 'bor' }];
  stitches.forEach((stitch, at) => items.push({ kind: 'stitch', stitch, at, needle: null }));
  return { number, items, hand: 1, locks: new Map() };
}

/** The tube as a ring. */
export function ringOf(tube: Tube): Ring {
  const known = RINGS.get(tube);
  if (known) return known;
  const ring = toRing(tube.items, tube.locks);
  RINGS.set(tube, ring);
  return ring;
}

// A tube never changes, and every row asks for its ring several times.
const RINGS = new WeakMap<Tube, Ring>();

/** The tube with the BOR before the item with this index; a marker of the BOR moves along. */
export function withBorAt(tube: Tube, index: number): Tube {
  const isBor = (item: Item) => item.kind === 'bor' || (item.kind === 'marker' && item.name === BOR);
  const kept = tube.items.map((item, place) => ({ item, place })).filter(({ item }) => !isBor(item));
  const moved: Item[] = tube.items.filter(isBor);
  const at = kept.findIndex(({ place }) => place >= index);
  const before = at < 0 ? kept.length : at;
  const hand = kept.filter(({ place }) => place < tube.hand).length;
  const items = [...kept.slice(0, before), ...kept.slice(before)].map(({ item }) => item);
  items.splice(before, 0, ...moved);
  return withItems(tube, items, hand >= before ? hand + moved.length : hand);
}

/** The gap where the yarn hangs, 0 to the number of stitches - 1 (0 when it hangs at the very end). */
export function handGap(tube: Tube): number {
  const next = tube.items.slice(tube.hand).find((item) => item.kind === 'stitch');
  return next?.kind === 'stitch' ? next.at : 0;
}

/** The place right behind the BOR and its marker: where a round begins. */
export function borHand(items: readonly Item[]): number {
  const marker = items[1];
  return marker?.kind === 'marker' && marker.name === BOR ? 2 : 1;
}

/** The tube with other items; `hand` is an index into `items`, which may start anywhere in the ring. */
export function withItems(tube: Tube, items: readonly Item[], hand: number): Tube {
  const start = Math.max(
    items.findIndex((item) => item.kind === 'bor'),
    0
  );
  const turned = fromBor(items);
  const moved = (hand - start + items.length) % Math.max(items.length, 1);
  return { ...tube, items: turned, hand: moved <= 1 ? borHand(turned) : moved };
}

/** The tube without the traces of a flat stage: ends of the run and gaps left by turns. */
export function withoutRun(tube: Tube): Tube {
  const kept = (item: Item) => item.kind !== 'limit' && item.kind !== 'turn';
  const before = tube.items.slice(0, tube.hand).filter(kept).length;
  return withItems(tube, tube.items.filter(kept), before);
}

/** The tube with the ends of a flat run set before stitch `from` and after stitch `to - 1`. */
export function withRun(tube: Tube, from: number, to: number): Tube {
  const clean = withoutRun(tube);
  const last = (to - 1) % countStitches(clean.items);
  const items: Item[] = [];
  let hand = 0;
  clean.items.forEach((item, index) => {
    if (index === clean.hand) hand = items.length;
    if (item.kind === 'stitch' && item.at === from) items.push({ kind: 'limit', end: 'first' });
    items.push(item);
    if (item.kind === 'stitch' && item.at === last) items.push({ kind: 'limit', end: 'last' });
  });
  if (clean.hand >= clean.items.length) hand = items.length;
  return withItems(clean, items, hand);
}
