/** How many stitches lie between the hands and a target, for each way of naming one. */

import type { Target } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import type { Context } from './context.ts';
import { stretchOf } from './over-needles.ts';
import type { Item } from './items.ts';
import type { RowWork } from './row-work.ts';

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
    case 'last':
      return stitches(work.room() - (forSize(target.count, size) ?? 0));
    case 'marker':
      return reachMarker(work, target.name, forSize(target.before, size) ?? 0);
    case 'gap':
      return reachItem(work, { what: 'gap', name: '' }, forSize(target.before, size) ?? 0);
    case 'section':
      return reachSectionEnd(at, target);
    case 'needle':
      return reachNeedleEnd(at, target);
  }
}

function stitches(count: number): Reach {
  return { kind: 'stitches', count: Math.max(0, count) };
}

// With no name the next marker is meant; at the end of the round that is the one of the BOR.
function reachMarker(work: RowWork, name: string | null, before: number): Reach {
  const index = work.find((item) => item.kind === 'marker' && (name === null || sameName(item.name, name)));
  if (index >= 0) return stitches(work.room(index) - before);
  if (name === null || sameName(name, 'BOR')) return stitches(work.room() - before);
  return { kind: 'missing', what: 'marker', name };
}

function reachItem(work: RowWork, missing: { what: 'gap'; name: string }, before: number): Reach {
  const index = work.find((item) => item.kind === 'turn');
  return index >= 0 ? stitches(work.room(index) - before) : { kind: 'missing', ...missing };
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
  return stretch ? stitches(work.room(stretch.to) - before) : { kind: 'missing', what: 'needle', name };
}

/** Where a section lies among the items ahead: from its first stitch to just after its last; `null` when it is not ahead. */
export function sectionAhead(work: RowWork, name: string): { readonly from: number; readonly to: number } | null {
  const { sections } = work.before;
  const inside = (at: number) => sections.some((run) => sameName(run.name, name) && run.from <= at && at < run.to);
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
