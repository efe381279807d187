/** Places that working goes on to: "to end", "to last 3 sts", "to 2 sts before marker A". */

import type { Target } from '../../model/pattern.ts';
import type { Sized } from '../../model/sized.ts';
import { needle } from './needles.ts';
import { isOnly, ordinal, stitches } from './numbers.ts';

/** A target with the words that lead to it. */
export function target(to: Target): string {
  switch (to.kind) {
    case 'end':
      return 'to end';
    case 'next':
      return `over next ${stitches(to.count)}`;
    case 'last':
      return `to last ${last(to.count)}`;
    case 'marker':
      return before(to.before, [to.nth > 1 ? ordinal(to.nth) : '', marker(to.name)].join(' ').trim());
    case 'gap':
      return before(to.before, 'gap');
    case 'double-stitch':
      return before(to.before, 'double st');
    case 'centre':
      return `to center of ${to.name}`;
    case 'section':
      return `across the ${to.count ? stitches(to.count, to.name) : to.name}`;
    case 'needle':
      return endOfNeedle(to);
  }
}

function last(count: Sized<number>): string {
  return isOnly(count, 1) ? 'st' : stitches(count);
}

function before(count: Sized<number>, place: string): string {
  return isOnly(count, 0) ? `to ${place}` : `to ${stitches(count)} before ${place}`;
}

function endOfNeedle(to: Extract<Target, { kind: 'needle' }>): string {
  const which = to.needle ? needle(to.needle) : 'needle';
  return isOnly(to.before, 0) ? `to end of ${which}` : `to last ${last(to.before)} of ${which}`;
}

/** A marker as a place: "m", "marker A", "m2", "BOR", "middle marker". */
export function marker(name: string | null): string {
  if (name === null) return 'm';
  if (name === 'BOR' || /^m\d+$/u.test(name)) return name;
  return /^[A-Z]$/u.test(name) ? `marker ${name}` : `${name} marker`;
}
