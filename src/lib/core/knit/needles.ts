/** The needles that the text speaks of: which stitches it has put on which, and what it calls them. */

import type { NeedleRef } from '../model/needle-words.ts';
import type { Item, NeedleId, StitchItem } from './items.ts';

/** A run of neighbouring stitches on one told needle; `from` is an index into the stitches in ring order. */
export interface Segment {
  readonly needle: NeedleId;
  readonly from: number;
  readonly stitches: number;
}

/** Names of the told needles. Mutable, and never leaves `knit/`. */
export class Needles {
  private readonly names = new Map<string, NeedleId>();
  private readonly missed = new Set<string>();
  private ids = 0;
  /** The needle that took the last stitch; `null` when the text has put none anywhere. */
  last: NeedleId | null = null;
  /** The needle that stitches were last slipped to. */
  moved: NeedleId | null = null;
  /** The needle that the text worked on to, or named, under the present heading. */
  marked: NeedleId | null = null;

  /** What was marked under the heading before. */
  markedBefore: NeedleId | null = null;

  /** A new heading begins. */
  forgetMark(): void {
    this.markedBefore = this.marked ?? this.moved;
    this.marked = null;
    this.moved = null;
  }

  /** A needle without stitches. */
  fresh(name: string | null): NeedleId {
    const id = this.ids++;
    if (name !== null) this.call(id, name);
    return id;
  }

  /** Whether a needle is missed for the first time since the text last told of it. */
  isNews(name: string): boolean {
    const known = this.missed.has(name);
    this.missed.add(name);
    return !known;
  }

  /** Gives a needle a name; whatever had it before loses it. */
  call(needle: NeedleId, name: string): void {
    this.names.set(name, needle);
    this.missed.delete(name);
  }

  /** Numbers are told anew: the old ones mean nothing any more. */
  forgetNumbers(): void {
    for (const name of [...this.names.keys()]) if (/^\d+$/u.test(name)) this.names.delete(name);
  }

  /** The needle that is meant; `null` when none has that name. An empty one is a new one. */
  find(ref: NeedleRef): NeedleId | null {
    if (ref.kind === 'same') return this.last;
    if (ref.kind === 'empty') return this.fresh(ref.name);
    return this.named(ref.name);
  }

  // "Left side needle" and "left needle" are the same; so are "centre" and "middle".
  private named(name: string): NeedleId | null {
    const known = this.names.get(name);
    if (known !== undefined) return known;
    const short = name.replace(/ side$/u, '');
    const other = [...this.names].find(([told]) => told.replace(/ side$/u, '') === short);
    return other?.[1] ?? null;
  }

  /** What a needle is called, "" without a name. */
  nameOf(needle: NeedleId): string {
    const names = [...this.names].filter(([, id]) => id === needle).map(([name]) => name);
    return names.find((name) => !/^\d+$/u.test(name)) ?? names[0] ?? '';
  }
}

/**
 * The told needles as segments in ring order, beginning with the one that holds the first stitch; that one may have begun
 * before it, and `from` is then an index near the end. `null` unless every stitch is on a needle, and every needle in one
 * piece.
 */
export function segmentsOf(stitches: readonly StitchItem[]): readonly Segment[] | null {
  const segments: { needle: NeedleId; from: number; stitches: number }[] = [];
  for (const [index, { needle }] of stitches.entries()) {
    if (needle === null) return null;
    const last = segments.at(-1);
    if (last?.needle === needle) last.stitches += 1;
    else segments.push({ needle, from: index, stitches: 1 });
  }
  const last = segments.at(-1);
  if (segments.length > 1 && last!.needle === segments[0]!.needle) {
    segments[0] = { ...last!, stitches: last!.stitches + segments[0]!.stitches };
    segments.pop();
  }
  return new Set(segments.map(({ needle }) => needle)).size === segments.length ? segments : null;
}

/** The stitches among items, in their order. */
export function stitchesAmong(items: readonly Item[]): StitchItem[] {
  return items.filter((item): item is StitchItem => item.kind === 'stitch');
}

/** Splits stitches over so many needles as evenly as can be; what is over goes on the last ones (rules-of-thumb.md 2). */
export function evenLoads(stitches: number, needles: number): number[] {
  return Array.from(
    { length: needles },
    (_, index) => Math.floor(stitches / needles) + (index >= needles - (stitches % needles) ? 1 : 0)
  );
}
