/** A row while it is being worked: the items ahead on the left needle, those done on the right one. */

import type { RepeatStretch, Step } from '../model/fabric.ts';
import type { Operation } from '../model/operation.ts';
import { faceOnRightSide, type Side } from '../model/pattern.ts';
import type { Ring } from '../model/ring.ts';
import type { Span } from '../model/span.ts';
import type { Stitch } from '../model/stitch.ts';
import type { Item, NeedleId, StitchItem } from './items.ts';
import { ringOf, type Tube } from './tube.ts';

/** A step before the positions of the ring after the row are known: `first` is its first made stitch in ring order. */
interface Draft extends Omit<Step, 'at'> {
  readonly first: Stitch | null;
  /** The stitch done just before, in working order; places a step that makes nothing. */
  readonly previous: Stitch | null;
}

/** What a finished row leaves: the new list of items in ring order and the steps with their places. */
export interface RowResult {
  readonly items: readonly Item[];
  readonly hand: number;
  readonly steps: readonly Step[];
}

/**
 * A row in work. Right-side rows go along the ring, wrong-side rows against it. Mutable, and never leaves `knit/`.
 * The row ends at its limit: the BOR of a round, or the end of the run of a flat stage.
 */
export class RowWork {
  /** Items in working order; those before `next` are done. */
  readonly ahead: Item[];
  next = 0;
  /** Index in `ahead` that working does not pass, unless the row moves the BOR. */
  limit: number;
  readonly done: Item[] = [];
  readonly drafts: Draft[] = [];
  readonly repeats: RepeatStretch[] = [];
  /** Stitches of `ahead` that the row took, by the position before the row. */
  taken = 0;
  turned = false;
  /** The told needle that takes the stitches; `null`: each stays on its own. */
  receiving: NeedleId | null = null;
  /** The told needle that is being worked; a stitch made between two others belongs to it. */
  home: NeedleId | null = null;
  /** The told needle that took the last stitch. */
  last: NeedleId | null = null;
  /** Whether the row is worked back and forth over a run. */
  readonly flat: boolean;
  /** The ring before the row. */
  readonly before: Ring;
  private nextId: () => number;

  constructor(
    readonly tube: Tube,
    readonly side: Side,
    options: { readonly flat: boolean; readonly nextId: () => number }
  ) {
    const { items, hand } = tube;
    const forward = [...items.slice(hand), ...items.slice(0, hand)];
    this.ahead = side === 'RS' ? forward : forward.reverse();
    this.nextId = options.nextId;
    this.flat = options.flat;
    this.before = ringOf(tube);
    const end = this.ahead.findIndex((item) => item.kind === (options.flat ? 'limit' : 'bor'));
    this.limit = end < 0 ? this.ahead.length : end;
  }

  /** Stitches ahead before the limit. */
  room(until = this.limit): number {
    let count = 0;
    for (let index = this.next; index < until; index += 1) {
      if (this.ahead[index]!.kind === 'stitch') count += 1;
    }
    return count;
  }

  /** Index in `ahead` of the first item at or after `next`, before the limit, that passes the test; -1 when none does. */
  find(test: (item: Item) => boolean): number {
    for (let index = this.next; index < this.limit; index += 1) {
      if (test(this.ahead[index]!)) return index;
    }
    return -1;
  }

  /** The next stitch on the left needle, or `null`. */
  peek(): Stitch | null {
    for (let index = this.next; index < this.ahead.length; index += 1) {
      const item = this.ahead[index]!;
      if (item.kind === 'stitch') return item.stitch;
    }
    return null;
  }

  /** Position before the row of the place where the yarn hangs now, as a gap in ring order. */
  gap(): number {
    for (let index = this.next; index < this.ahead.length; index += 1) {
      const item = this.ahead[index]!;
      if (item.kind === 'stitch') return this.side === 'RS' ? item.at : item.at + 1;
    }
    const last = this.ahead.findLast((item) => item.kind === 'stitch');
    if (last?.kind !== 'stitch') return 0;
    return this.side === 'RS' ? last.at + 1 : last.at;
  }

  /** Moves what hangs in the present gap to the right needle: everything up to, not including, index `until`. */
  pass(until: number): void {
    while (this.next < until) {
      const item = this.ahead[this.next]!;
      if (item.kind === 'stitch') return;
      this.next += 1;
      if (item.kind !== 'turn') this.done.push(item);
    }
  }

  /** Performs one operation. The caller has seen to it that enough stitches are ahead. */
  perform(operation: Operation, span: Span): void {
    if (operation.takes === 0) this.passEdges();
    const gap = this.gap();
    const taken = this.take(operation.takes);
    const made = this.make(operation, taken);
    const lowest = this.side === 'RS' ? taken[0] : taken.at(-1);
    this.record({ operation, from: lowest?.at ?? gap, span }, taken, made);
  }

  private record(
    what: { readonly operation: Operation; readonly from: number; readonly span: Span },
    taken: readonly StitchItem[],
    made: readonly Stitch[]
  ): void {
    const previous = this.lastDone();
    const needle = this.needleFor(taken);
    for (const stitch of made) this.done.push({ kind: 'stitch', stitch, at: -1, needle });
    if (made.length > 0) this.last = needle;
    this.taken += taken.length;
    const { operation, from, span } = what;
    const first = (this.side === 'RS' ? made[0] : made.at(-1)) ?? null;
    this.drafts.push({ operation, from, span, takes: taken.length, makes: made.length, first, previous });
  }

  // A decrease over a break stays on the earlier needle; what is made in a gap belongs to the needle that is being worked.
  private needleFor(taken: readonly StitchItem[]): NeedleId | null {
    if (this.receiving !== null) return this.receiving;
    const earliest = this.side === 'RS' ? taken[0] : taken.at(-1);
    if (earliest) return earliest.needle;
    return this.home ?? this.nextNeedle() ?? this.last;
  }

  private nextNeedle(): NeedleId | null {
    const index = this.find((item) => item.kind === 'stitch');
    const next = this.ahead[index];
    return next?.kind === 'stitch' ? next.needle : null;
  }

  /** Whether any live stitch is on a told needle. */
  holds(needle: NeedleId | null): boolean {
    const isOn = (item: Item) => item.kind === 'stitch' && item.needle === needle;
    return this.done.some(isOn) || this.ahead.slice(this.next).some(isOn);
  }

  /** Puts stitches on a told needle, done or not. */
  put(stitches: ReadonlySet<StitchItem>, needle: NeedleId): void {
    for (const list of [this.ahead, this.done]) {
      list.forEach((item, index) => {
        if (item.kind === 'stitch' && stitches.has(item)) list[index] = { ...item, needle };
      });
    }
  }

  /** Passes section edges that no marker holds, before something is made in their gap: it belongs to the later section. */
  passEdges(): void {
    while (this.next < this.limit) {
      const item = this.ahead[this.next]!;
      if (item.kind !== 'edge' && item.kind !== 'turn') return;
      this.next += 1;
      if (item.kind === 'edge') this.done.push(item);
    }
  }

  private take(count: number): StitchItem[] {
    const taken: StitchItem[] = [];
    while (taken.length < count && this.next < this.ahead.length) {
      const item = this.ahead[this.next++]!;
      if (item.kind === 'stitch') taken.push(item);
      else if (item.kind !== 'turn') this.done.push(item);
    }
    return taken;
  }

  private make(operation: Operation, taken: readonly StitchItem[]): Stitch[] {
    const faces = operation.faces.map((face) => faceOnRightSide(face, this.side));
    if (operation.makes !== operation.takes) {
      const parents = taken.map((item) => item.stitch.id);
      return faces.map((face) => ({ id: this.nextId(), face, loop: 'plain', parents }));
    }
    const order = operation.crosses ? crossed(taken) : taken;
    return order.map(({ stitch }, index) => reworked(stitch, operation, faces[index] ?? stitch.face));
  }

  /** Leaves the gap of a turn before what is ahead. */
  leaveGap(): void {
    this.ahead.splice(this.next, 0, { kind: 'turn' });
    this.limit += 1;
  }

  private lastDone(): Stitch | null {
    const last = this.done.findLast((item) => item.kind === 'stitch');
    return last?.kind === 'stitch' ? last.stitch : null;
  }

  /** Ends the row where it stands. What is ahead stays unworked. */
  finish(): RowResult {
    const rest = this.ahead.slice(this.next);
    const inOrder = this.side === 'RS' ? [...this.done, ...rest] : [...rest.reverse(), ...this.done.toReversed()];
    const hand = this.side === 'RS' ? this.done.length : inOrder.length - this.done.length;
    return { items: inOrder, hand, steps: this.placeSteps(inOrder) };
  }

  private placeSteps(items: readonly Item[]): Step[] {
    const bor = items.findIndex((item) => item.kind === 'bor');
    const places = new Map<number, number>();
    let at = 0;
    for (let offset = 0; offset < items.length; offset += 1) {
      const item = items[(Math.max(bor, 0) + offset) % items.length]!;
      if (item.kind === 'stitch') places.set(item.stitch.id, at++);
    }
    const behind = this.side === 'RS' ? 1 : 0;
    return this.drafts.map(({ operation, from, span, takes, makes, first, previous }) => {
      const place = first ? places.get(first.id) : previous ? (places.get(previous.id) ?? 0) + behind : from;
      return { operation, from, at: place ?? 0, takes, makes, span };
    });
  }
}

// Half of the stitches change places with the other half; an odd one in the middle stays there.
function crossed(taken: readonly StitchItem[]): StitchItem[] {
  const half = Math.floor(taken.length / 2);
  return [...taken.slice(taken.length - half), ...taken.slice(half, taken.length - half), ...taken.slice(0, half)];
}

function reworked(stitch: Stitch, operation: Operation, face: Stitch['face']): Stitch {
  if (operation.family === 'wrap') return { ...stitch, loop: 'double' };
  if (operation.family === 'slip') return stitch.loop === 'slipped' ? stitch : { ...stitch, loop: 'slipped' };
  if (stitch.face === face && stitch.loop === 'plain') return stitch;
  return { ...stitch, face, loop: 'plain' };
}
