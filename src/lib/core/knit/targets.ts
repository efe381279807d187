/** How many stitches lie between the hands and a target, for each way of naming one. */

import type { Target } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';
import type { RowWork } from './row-work.ts';

/** A target as a distance, or the name of what is missing. */
export type Reach =
  | { readonly kind: 'stitches'; readonly count: number }
  | { readonly kind: 'missing'; readonly what: 'marker' | 'gap' | 'section'; readonly name: string };

/** The number of stitches from the present place to a target; never negative. */
export function reach(work: RowWork, target: Target, size: number): Reach {
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
      return reachSectionEnd(work, target.name);
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

function reachSectionEnd(work: RowWork, name: string): Reach {
  const edges = edgesAround(work);
  const begins = edges.findIndex((edge) => edge.name !== null && sameName(edge.name, name));
  if (begins < 0) return { kind: 'missing', what: 'section', name };
  const end = edges[begins + 1]?.index ?? work.limit;
  return stitches(work.room(end));
}

// The section that the hands stand in counts as beginning here. On a wrong-side row an edge item ends its section,
// since the list runs the other way; there the section of the next edge ahead is the one the hands stand in.
function edgesAround(work: RowWork): { readonly name: string | null; readonly index: number }[] {
  const ahead: { name: string | null; index: number }[] = [];
  for (let index = work.next; index < work.limit; index += 1) {
    const item = work.ahead[index]!;
    if (item.kind === 'edge') ahead.push({ name: item.name, index });
  }
  if (work.side === 'WS') return reversedEdges(ahead, work);
  const behind = [...work.done].reverse().find((item) => item.kind === 'edge');
  const wrapped = [...work.ahead].reverse().find((item) => item.kind === 'edge');
  const here = behind ?? wrapped;
  return here?.kind === 'edge' ? [{ name: here.name, index: work.next }, ...ahead] : ahead;
}

function reversedEdges(ahead: readonly { name: string | null; index: number }[], work: RowWork) {
  return ahead.map((edge, order) => ({ name: edge.name, index: order === 0 ? work.next : ahead[order - 1]!.index }));
}

/** Whether two names in a text mean the same thing: case and a plural s do not matter. */
export function sameName(left: string, right: string): boolean {
  const plain = (name: string) => name.trim().toLowerCase().replace(/s$/u, '');
  return plain(left) === plain(right);
}
