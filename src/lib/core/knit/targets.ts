/** How many stitches lie between the hands and a target, for each way of naming one. */

import type { Target } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import type { Context } from './context.ts';
import { stretchOf } from './over-needles.ts';
import type { Item } from './items.ts';
import type { RowWork } from './row-work.ts';
import { sectionRun } from './run.ts';

/** A row in work, and what is known of its needles. */
export interface Hands {
  readonly work: RowWork;
  readonly context: Context;
}

/** A target as a distance, or the name of what is missing. */
export type Reach =
  | { readonly kind: 'stitches'; readonly count: number }
  | { readonly kind: 'missing'; readonly what: 'marker' | 'gap' | 'section' | 'needle'; readonly name: string };

/** The number of stitches from the present place to a target; never negative. */
export function reach(at: Hands, target: Target): Reach {
  const { work } = at;
  const { size } = at.context;
  switch (target.kind) {
    case 'end':
      return stitches(work.room());
    case 'next':
      return stitches(Math.min(forSize(target.count, size) ?? 0, work.room()));
    case 'last':
      return stitches(work.room() - (forSize(target.count, size) ?? 0));
    default:
      return reachPlace(at, target);
  }
}

function reachPlace(at: Hands, target: Exclude<Target, { kind: 'end' | 'next' | 'last' }>): Reach {
  switch (target.kind) {
    case 'section':
      return reachSectionEnd(at, target);
    case 'needle':
      return reachNeedleEnd(at, target);
    case 'centre':
      return reachCentre(at.work, target.name);
    default:
      return reachItemBefore(at.work, target, forSize(target.before, at.context.size) ?? 0);
  }
}

type Hanging = Extract<Target, { kind: 'marker' | 'gap' | 'double-stitch' }>;

function reachItemBefore(work: RowWork, target: Hanging, before: number): Reach {
  if (target.kind === 'marker') return reachMarker(work, target, before);
  return reachItem(work, target.kind === 'gap' ? (item) => item.kind === 'turn' : isDouble, before);
}

function stitches(count: number): Reach {
  return { kind: 'stitches', count: Math.max(0, count) };
}

// With no name the next marker is meant; at the end of the round that is the one of the BOR.
function reachMarker(work: RowWork, target: Extract<Target, { kind: 'marker' }>, before: number): Reach {
  const { name } = target;
  let left = target.nth;
  const isIt = (item: Item) => item.kind === 'marker' && (name === null || sameName(item.name, name));
  const index = work.find((item) => isIt(item) && (left -= 1) === 0);
  if (index >= 0) return stitches(work.room(index) - before);
  if (name === null || sameName(name, 'BOR')) return stitches(work.room() - before);
  return { kind: 'missing', what: 'marker', name };
}

function reachItem(work: RowWork, isIt: (item: Item) => boolean, before: number): Reach {
  const index = work.find(isIt);
  return index >= 0 ? stitches(work.room(index) - before) : { kind: 'missing', what: 'gap', name: '' };
}

function isDouble(item: Item): boolean {
  return item.kind === 'stitch' && item.stitch.loop === 'double';
}

// Half of an odd number of stitches is rounded down.
function reachCentre(work: RowWork, name: string): Reach {
  const run = sectionRun(work.before, name);
  if (!run) return { kind: 'missing', what: 'section', name };
  const centre = run.from + Math.floor((run.to - run.from) / 2);
  const index = work.find((item) => item.kind === 'stitch' && item.at === centre % work.before.stitches.length);
  return index >= 0 ? stitches(work.room(index)) : { kind: 'missing', what: 'section', name };
}

// A part that no line has named: a needle of that name, the run in work, or as many stitches as the text says.
function reachSectionEnd({ work, context }: Hands, target: Extract<Target, { kind: 'section' }>): Reach {
  const { name } = target;
  const section =
    sectionAhead(work, name) ?? needleAhead({ work, context }, name) ?? partAhead({ work, context }, name);
  if (section) return stitches(work.room(section.to));
  if (work.flat) return stitches(work.room());
  const count = target.count ? forSize(target.count, context.size) : null;
  if (count !== null) return stitches(Math.min(count, work.room(work.ahead.length)));
  return { kind: 'missing', what: 'section', name };
}

function needleAhead({ work, context }: Hands, name: string): { readonly from: number; readonly to: number } | null {
  const needle = context.needles.find({ kind: 'named', name });
  return needle === null ? null : stretchOf(work, needle);
}

// The heel is what was worked flat last, the instep what was not.
function partAhead({ work, context }: Hands, name: string): { readonly from: number; readonly to: number } | null {
  const wasFlat = /^(?:heel|flap|sole)s?$/u.test(name);
  if (context.flatRun.size === 0 || !(wasFlat || /^(?:instep|front|top|foot)s?$/u.test(name))) return null;
  const isIn = (item: Item) => item.kind === 'stitch' && context.flatRun.has(item.stitch.id) === wasFlat;
  const from = work.find(isIn);
  if (from < 0) return null;
  let to = from;
  for (let index = from; index < work.ahead.length; index += 1) {
    const item = work.ahead[index]!;
    if (item.kind !== 'stitch') continue;
    if (!isIn(item)) break;
    to = index + 1;
  }
  return { from, to };
}

// Without a name the needle of the next stitch is meant; where the text tells of no needles, the end of the stretch.
function reachNeedleEnd({ work, context }: Hands, target: Extract<Target, { kind: 'needle' }>): Reach {
  const before = forSize(target.before, context.size) ?? 0;
  const first = work.ahead[work.find((item) => item.kind === 'stitch')];
  const own = first?.kind === 'stitch' ? first.needle : null;
  const needle = target.needle ? context.needles.find(target.needle) : own;
  if (needle === null && target.needle === null) return stitches(work.room() - before);
  const stretch = needle === null ? null : stretchOf(work, needle);
  const name = target.needle?.kind === 'named' ? target.needle.name : '';
  const part = stretch ?? partAhead({ work, context }, name.replace(/^(?:first|second) /u, ''));
  return part ? stitches(work.room(part.to) - before) : { kind: 'missing', what: 'needle', name };
}

// "First half of rnd" names stitches where the text has named no section.
function halfOf(work: RowWork, name: string): ((at: number) => boolean) | null {
  const middle = work.before.stitches.length / 2;
  if (name === 'first half') return (at) => at < middle;
  return name === 'second half' ? (at) => at >= middle : null;
}

/** Where a section lies among the items ahead: from its first stitch to just after its last; `null` when it is not ahead. */
export function sectionAhead(work: RowWork, name: string): { readonly from: number; readonly to: number } | null {
  const { sections } = work.before;
  const half = halfOf(work, name);
  const inside = (at: number) =>
    half?.(at) ?? sections.some((run) => sameName(run.name, name) && run.from <= at && at < run.to);
  const from = work.find((item) => item.kind === 'stitch' && inside(item.at));
  if (from < 0) return null;
  let to = from;
  for (let index = from; index < work.limit; index += 1) {
    const item = work.ahead[index]!;
    if (item.kind !== 'stitch') continue;
    if (!inside(item.at)) break;
    to = index + 1;
  }
  return { from, to };
}

/** Whether two names in a text mean the same thing: case and a plural s do not matter. */
export function sameName(left: string, right: string): boolean {
  const plain = (name: string) => name.trim().toLowerCase().replace(/s$/u, '');
  return plain(left) === plain(right);
}
