/** The ring as the hands meet it: stitches, and what hangs in the gaps between them, in one list. */

import { BOR, type Marker, type Ring, type SectionRun } from '../model/ring.ts';
import type { Stitch } from '../model/stitch.ts';

/** A needle that the text speaks of. */
export type NeedleId = number;

/** A stitch, its position in the ring before the row, and the needle that the text has put it on (`null`: on none). */
export interface StitchItem {
  readonly kind: 'stitch';
  readonly stitch: Stitch;
  readonly at: number;
  readonly needle: NeedleId | null;
}

/**
 * One thing met while going round. `bor`: the beginning of round, exactly one in a tube. `edge`: a section begins here and
 * lasts to the next edge (`null`: no section). `turn`: the gap that a turn left. `limit`: the first or last end, in ring order,
 * of the run of a flat stage.
 */
export type Item =
  | StitchItem
  | { readonly kind: 'marker'; readonly name: string }
  | { readonly kind: 'edge'; readonly name: string | null }
  | { readonly kind: 'turn' }
  | { readonly kind: 'limit'; readonly end: 'first' | 'last' }
  | { readonly kind: 'bor' };

/** Locking markers hang in stitches: stitch id → name. */
export type Locks = ReadonlyMap<number, string>;

/** The items with every stitch numbered anew from the BOR, the BOR first. */
export function fromBor(items: readonly Item[]): Item[] {
  const start = items.findIndex((item) => item.kind === 'bor');
  const turned = start <= 0 ? items : [...items.slice(start), ...items.slice(0, start)];
  let at = 0;
  return turned.map((item) => {
    if (item.kind !== 'stitch') return item;
    const here = at++;
    return item.at === here ? item : { ...item, at: here };
  });
}

/** Reads a list of items, BOR first, as a ring. */
export function toRing(items: readonly Item[], locks: Locks): Ring {
  const stitches: Stitch[] = [];
  const markers: Marker[] = [];
  for (const item of items) {
    if (item.kind === 'marker') markers.push({ name: item.name, kind: 'ring', at: stitches.length });
    if (item.kind !== 'stitch') continue;
    const lock = locks.get(item.stitch.id);
    if (lock !== undefined) markers.push({ name: lock, kind: 'locking', at: stitches.length });
    stitches.push(item.stitch);
  }
  return { stitches, markers: withBorFirst(markers, stitches.length), sections: sectionsOf(items) };
}

// A ring marker at the end of the round hangs in the same gap as the BOR.
function withBorFirst(markers: readonly Marker[], stitches: number): Marker[] {
  const moved = markers.map((marker) =>
    marker.kind === 'ring' && marker.at === stitches && marker.name === BOR ? { ...marker, at: 0 } : marker
  );
  return moved.sort((left, right) => left.at - right.at);
}

// The last edge of the list goes on across the BOR, so that a section there has two runs.
function sectionsOf(items: readonly Item[]): SectionRun[] {
  const edges = items.filter((item) => item.kind === 'edge');
  let open: string | null = edges.at(-1)?.name ?? null;
  let from = 0;
  let at = 0;
  const runs: SectionRun[] = [];
  const close = () => {
    if (open !== null && at > from) runs.push({ name: open, from, to: at });
  };
  for (const item of items) {
    if (item.kind === 'stitch') at += 1;
    if (item.kind !== 'edge') continue;
    close();
    open = item.name;
    from = at;
  }
  close();
  return runs;
}

/** How many stitches are among the items. */
export function countStitches(items: readonly Item[]): number {
  return items.reduce((count, item) => count + (item.kind === 'stitch' ? 1 : 0), 0);
}
