/** Stitches that change needles without being worked, told layouts, and a beginning of round that moves. */

import type { Arrangement, NeedleRef } from '../model/needle-words.ts';
import { wrap } from '../model/ring.ts';
import { forSize } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import type { Context } from './context.ts';
import type { Item, NeedleId, StitchItem } from './items.ts';
import { evenLoads, segmentsOf, type Segment } from './needles.ts';

/** Where stitches are arranged: between two rows, or in the middle of one. */
export interface Bench {
  readonly context: Context;
  /** All live stitches in ring order, from anywhere. */
  readonly stitches: () => readonly StitchItem[];
  /** How many of them the hands have passed, in ring order. */
  readonly hand: () => number;
  /** Name of the section that a stitch belongs to. */
  readonly sectionOf: (stitch: StitchItem) => string | null;
  /** Whether a stitch was worked in the last row, or so far in this one. */
  readonly justWorked: (stitch: StitchItem) => boolean;
  /** Whether a stitch is in the run of flat work; `null` in the round. */
  readonly inRun: ((stitch: StitchItem) => boolean) | null;
  readonly put: (stitches: ReadonlySet<StitchItem>, needle: NeedleId) => void;
  /** Moves the BOR to where the yarn hangs, or before a stitch. */
  readonly moveBor: (before: StitchItem | null) => void;
  /** Joins the yarn anew before a stitch. */
  readonly moveYarn: (before: StitchItem) => void;
}

/** Performs one arrangement. */
export function arrange(bench: Bench, action: Exclude<Arrangement, { kind: 'work-flat' }>): void {
  switch (action.kind) {
    case 'move-stitches':
      return moveStitches(bench, action);
    case 'gather':
      return gather(bench, action);
    case 'name-needle':
      return nameNeedle(bench, action);
    case 'move-bor':
      return moveBor(bench, action);
    case 'move-yarn':
      return moveYarn(bench, action);
  }
}

type Of<Kind extends Arrangement['kind']> = Extract<Arrangement, { kind: Kind }>;

function moveStitches(bench: Bench, action: Of<'move-stitches'>): void {
  const to = bench.context.needles.find(action.to);
  const source = action.from ? onNeedle(bench, action.from) : fromHand(bench);
  if (to === null) return missing(bench, action.to, action.span);
  if (!source) return missing(bench, action.from!, action.span);
  const wanted = howMany(bench, action, { source, to });
  const fromEnd = action.end === 'last' || (action.end === null && isAfter(bench, source, to));
  slip(bench, { stitches: fromEnd ? source.slice(source.length - wanted) : source.slice(0, wanted), to, fromEnd });
}

// What is slipped to the beginning of the first needle before the round begins is the beginning of the round.
function slip(
  bench: Bench,
  moved: { readonly stitches: readonly StitchItem[]; readonly to: NeedleId; readonly fromEnd: boolean }
): void {
  const { stitches, to, fromEnd } = moved;
  const isBeforeRound = fromEnd && bench.hand() === 0 && bench.stitches()[0]?.needle === to;
  const first = stitches[0]?.stitch.id;
  bench.context.needles.moved = to;
  bench.put(new Set(stitches), to);
  if (isBeforeRound) bench.moveBor(bench.stitches().find(({ stitch }) => stitch.id === first) ?? null);
}

function howMany(
  bench: Bench,
  { count, until }: Of<'move-stitches'>,
  on: { readonly source: readonly StitchItem[]; readonly to: NeedleId }
): number {
  const { size } = bench.context;
  const all = on.source.length;
  if (!until) return Math.min((count ? forSize(count, size) : null) ?? all, all);
  const held = bench.stitches().filter((stitch) => stitch.needle === on.to).length;
  return Math.min(Math.max((forSize(until, size) ?? 0) - held, 0), all);
}

/** The stitches of a needle in ring order; `null` when the text has no such needle. */
function onNeedle(bench: Bench, ref: NeedleRef): readonly StitchItem[] | null {
  const needle = bench.context.needles.find(ref);
  return needle === null ? null : inOrder(bench, (stitch) => stitch.needle === needle);
}

// From the first stitch that passes the test and whose neighbour before it does not.
function inOrder(bench: Bench, test: (stitch: StitchItem) => boolean): StitchItem[] | null {
  const all = bench.stitches();
  const first = all.findIndex((stitch, index) => test(stitch) && !test(all[wrap(index - 1, all.length)]!));
  const start = Math.max(first, 0);
  const found = [...all.slice(start), ...all.slice(0, start)].filter(test);
  return found.length > 0 ? found : null;
}

function fromHand(bench: Bench): readonly StitchItem[] {
  const all = bench.stitches();
  const hand = bench.hand();
  return [...all.slice(hand), ...all.slice(0, hand)];
}

// Whether the other needle begins where these stitches end.
function isAfter(bench: Bench, source: readonly StitchItem[], to: NeedleId): boolean {
  const all = bench.stitches();
  const next = all[wrap(all.indexOf(source.at(-1)!) + 1, all.length)];
  const previous = all[wrap(all.indexOf(source[0]!) - 1, all.length)];
  return next?.needle === to && previous?.needle !== to;
}

function gather(bench: Bench, action: Of<'gather'>): void {
  const { context } = bench;
  const stitches = gathered(bench, action);
  if (!stitches) return;
  const told = action.loads.map((load) => (load ? forSize(load, context.size) : null));
  const even = evenLoads(stitches.length, told.length);
  const loads = told.map((load, index) => (told.length === 1 ? stitches.length : (load ?? even[index]!)));
  const total = told.every((load) => load !== null) ? told.reduce((sum, load) => sum + (load ?? 0), 0) : null;
  if (total !== null && total !== stitches.length) {
    const about = 'stitches to be put on needles';
    context.report('count-mismatch', action.span, { expected: total, found: stitches.length, about });
  }
  const takes = typeof action.of === 'object' && 'kind' in action.of && action.of.kind === 'run';
  spread(bench, { stitches, loads, name: action.name, takes });
}

function gathered(bench: Bench, { of, span }: Of<'gather'>): readonly StitchItem[] | null {
  const { needles } = bench.context;
  if (of === 'each') return bench.stitches();
  if ('kind' in of && of.kind === 'section') return inOrder(bench, (stitch) => bench.sectionOf(stitch) === of.name);
  if ('kind' in of) return restOrRun(bench, of.kind);
  const ids = new Set(of.map((ref) => needles.find(ref)));
  const lost = of.find((ref) => needles.find(ref) === null);
  if (lost) missing(bench, lost, span);
  return inOrder(bench, (stitch) => ids.has(stitch.needle));
}

// In flat work the run, or what is outside it; else the needle in work, or the others.
function restOrRun(bench: Bench, which: 'rest' | 'run'): readonly StitchItem[] | null {
  const last = bench.context.needles.moved ?? bench.context.needles.last;
  if (last === null && !bench.inRun) return which === 'run' ? inOrder(bench, bench.justWorked) : null;
  const isIn = bench.inRun ?? ((stitch: StitchItem) => stitch.needle === last);
  return inOrder(bench, (stitch) => isIn(stitch) === (which === 'run'));
}

// A name for several needles is counted: "front", then "second front".
function spread(
  bench: Bench,
  told: {
    readonly stitches: readonly StitchItem[];
    readonly loads: readonly number[];
    readonly name: string | null;
    /** Whether these are the stitches in work. */
    readonly takes: boolean;
  }
): void {
  const { needles } = bench.context;
  let at = 0;
  told.loads.forEach((load, index) => {
    const known = told.name !== null && index === 0 ? needles.find({ kind: 'named', name: told.name }) : null;
    const needle = known ?? needles.fresh(index === 0 ? told.name : told.name && `second ${told.name}`);
    bench.put(new Set(told.stitches.slice(at, at + load)), needle);
    if (told.takes) needles.last = needle;
    at += load;
  });
}

function nameNeedle(bench: Bench, action: Of<'name-needle'>): void {
  const { needles } = bench.context;
  const needle = needles.find(action.needle);
  if (needle === null) return;
  needles.call(needle, action.name);
  if (action.needle.kind === 'same') needles.marked = needle;
}

function moveBor(bench: Bench, action: Of<'move-bor'>): void {
  const { needles } = bench.context;
  const same = action.to?.kind === 'same' ? (needles.moved ?? needles.last) : null;
  const stitches =
    same === null ? action.to && onNeedle(bench, action.to) : inOrder(bench, ({ needle }) => needle === same);
  bench.moveBor(stitches?.[0] ?? firstOfRound(bench));
}

// "The round begins at the centre of the heel" is where the first needle begins, or where the yarn hangs.
function firstOfRound(bench: Bench): StitchItem | null {
  const first = onNeedle(bench, { kind: 'named', name: '1' });
  return segmentsOf(bench.stitches()) && first ? first[0]! : null;
}

function moveYarn(bench: Bench, action: Of<'move-yarn'>): void {
  const first = onNeedle(bench, action.to)?.[0];
  if (first) bench.moveYarn(first);
  else missing(bench, action.to, action.span);
}

/** Says that the text points to a needle that it has not told of. */
export function missing(bench: Pick<Bench, 'context'>, ref: NeedleRef, span: Span): void {
  const name = ref.kind === 'named' ? ref.name : '';
  if (!bench.context.needles.isNews(name)) return;
  const about = /^(?:\d+|[a-e])$/u.test(name) ? `needle ${name.toUpperCase()}` : `${name} needle`.trim();
  bench.context.report('needle-missing', span, { about });
}

/** A layout as the text states it. `loads`: stitches, or `null` for "evenly". */
export interface ToldLoads {
  readonly loads: readonly (number | null)[];
  readonly names: readonly string[] | null;
}

/**
 * Puts the stitches on needles as told, from the BOR on. Needles that hold these numbers already, counted from the yarn
 * or from the BOR, only get the names. Returns the loads found where they differ and `keep` is set, else `null`.
 */
export function layOut(bench: Bench, told: ToldLoads, keep: boolean): readonly number[] | null {
  const { needles } = bench.context;
  const all = bench.stitches();
  const even = evenLoads(all.length, told.loads.length);
  const loads = told.loads.map((load, index) => load ?? even[index]!);
  const names = told.names ?? loads.map((_, index) => String(index + 1));
  const segments = segmentsOf(all);
  if (segments && segments.length === loads.length) {
    if (isNamedSo(bench, { segments, loads, names })) return null;
    const matching = [bench.hand(), 0].find((from) => sameLoads(rotated(segments, from, all.length), loads));
    if (matching !== undefined) {
      callAll(
        bench,
        rotated(segments, matching, all.length).map(({ needle }) => needle),
        names
      );
      return null;
    }
    if (keep) return rotated(segments, nearest(bench, segments), all.length).map(({ stitches }) => stitches);
  }
  if (loads.reduce((sum, load) => sum + load, 0) !== all.length) return null;
  const ids = loads.map(() => needles.fresh(null));
  let at = 0;
  loads.forEach((load, index) => {
    bench.put(new Set(all.slice(at, at + load)), ids[index]!);
    at += load;
  });
  callAll(bench, ids, names);
  return null;
}

function isNamedSo(
  bench: Bench,
  told: { readonly segments: readonly Segment[]; readonly loads: readonly number[]; readonly names: readonly string[] }
): boolean {
  return told.names.every((name, index) => {
    const needle = bench.context.needles.find({ kind: 'named', name });
    return told.segments.some((segment) => segment.needle === needle && segment.stitches === told.loads[index]);
  });
}

// The segments from the one that begins at a stitch, or as they are when none does.
function rotated(segments: readonly Segment[], from: number, stitches: number): readonly Segment[] {
  const first = segments.findIndex((segment) => segment.from === wrap(from, stitches));
  return first < 0 ? segments : [...segments.slice(first), ...segments.slice(0, first)];
}

function nearest(bench: Bench, segments: readonly Segment[]): number {
  return segments.some(({ from }) => from === bench.hand()) ? bench.hand() : 0;
}

function sameLoads(segments: readonly Segment[], loads: readonly number[]): boolean {
  return segments.every(({ stitches }, index) => stitches === loads[index]);
}

function callAll(bench: Bench, ids: readonly NeedleId[], names: readonly string[]): void {
  const { needles } = bench.context;
  if (names.some((name) => /^\d+$/u.test(name))) needles.forgetNumbers();
  ids.forEach((id, index) => needles.call(id, names[index]!));
}

/** The items with these stitches on a needle. */
export function withNeedle(items: readonly Item[], stitches: ReadonlySet<StitchItem>, needle: NeedleId): Item[] {
  const ids = new Set([...stitches].map(({ stitch }) => stitch.id));
  return items.map((item) => (item.kind === 'stitch' && ids.has(item.stitch.id) ? { ...item, needle } : item));
}
