/** Sums of counts that differ from size to size. */

import { forSize, type Sized } from '../model/sized.ts';

/** The sum of two counts, size by size; a size that has none in either has none. */
export function addCounts(left: Sized<number>, right: Sized<number>): Sized<number> {
  const longer = left.length >= right.length ? left : right;
  return longer.map((_, size) => {
    const [one, other] = [forSize(left, size), forSize(right, size)];
    return one === null || other === null ? null : one + other;
  });
}
