/** Prints what a text says about needles, for comparing. */

import type { Arrangement, NeedleRef, NeedleRefs } from '$lib/core/model/needle-words.ts';
import type { Sized } from '$lib/core/model/sized.ts';

/** Prints a number for every size. */
export function printSized(sized: Sized<number>): string {
  return sized.map((entry) => entry ?? '-').join('|');
}

/** Prints which needle is meant: `N:1`, `N:same`, `N:new=heel`. */
export function printRef(ref: NeedleRef): string {
  if (ref.kind === 'named') return `N:${ref.name}`;
  return ref.kind === 'same' ? 'N:same' : `N:new${ref.name ? `=${ref.name}` : ''}`;
}

/** Prints several needles. */
export function printRefs(refs: NeedleRefs): string {
  return refs === 'each' ? 'N:each' : refs.map(printRef).join('+');
}

/** Prints an arrangement. */
export function printArrangement(action: Arrangement): string {
  switch (action.kind) {
    case 'move-stitches': {
      const count = action.count ? printSized(action.count) : 'all';
      return `sl ${action.end ? `${action.end} ` : ''}${count} ${action.from ? `${printRef(action.from)} ` : ''}-> ${printRef(action.to)}`;
    }
    case 'gather':
      return `gather ${printGathered(action.of)} ${action.loads.map((load) => (load ? printSized(load) : '?')).join('-')}${action.name ? ` as ${action.name}` : ''}`;
    case 'name-needle':
      return `${printRef(action.needle)} = ${action.name}`;
    case 'work-flat':
      return `flat over ${printFlatOver(action.over)}`;
    case 'move-yarn':
      return `yarn to ${printRef(action.to)}`;
    case 'move-bor':
      return `bor ${action.to ? printRef(action.to) : 'here'}`;
  }
}

function printFlatOver(over: Extract<Arrangement, { kind: 'work-flat' }>['over']): string {
  if (over === 'each' || !('section' in over)) return printRefs(over);
  return `${over.section ?? ''}${over.count ? printSized(over.count) : ''}`;
}

function printGathered(of: Extract<Arrangement, { kind: 'gather' }>['of']): string {
  if (of === 'each' || !('kind' in of)) return printRefs(of);
  return of.kind === 'section' ? of.name : of.kind;
}
