/** Single operations with their number, and shaping told by its place. */

import type { Operation } from '../../model/operation.ts';
import type { Instruction } from '../../model/pattern.ts';
import type { Shape } from '../../model/shaping.ts';
import type { Sized } from '../../model/sized.ts';
import { isOnly, sized, stitches, times } from './numbers.ts';

/** Operations whose number stands behind a letter and whose manner behind the number: "k3 tbl", "sl 2 kwise". */
const MANNERS: Readonly<Record<string, readonly [verb: string, manner: string]>> = {
  ktbl: ['k', ' tbl'],
  ptbl: ['p', ' tbl'],
  sl1k: ['sl ', ' kwise'],
  sl1p: ['sl ', ' pwise'],
  k: ['k', ''],
  p: ['p', ''],
  sl: ['sl ', '']
};

/** "k4", "sl 1", "k2tog", "k2tog 3 times". */
export function work({ name }: Operation, count: Sized<number>): string {
  const [verb, manner] = MANNERS[name] ?? [];
  if (verb !== undefined) return `${verb}${count[0] === null && !/ $/u.test(verb) ? ' ' : ''}${sized(count)}${manner}`;
  return isOnly(count, 1) ? name : `${name} ${times(count)}`;
}

type Work = Extract<Instruction, { kind: 'work' }>;

/** Cables that differ from size to size, told as one: "C6 (8, 12) B"; `null` when the parts are no such cable. */
export function cable(parts: readonly Instruction[]): { readonly text: string; readonly parts: number } | null {
  const [first] = parts;
  const sizes = first?.kind === 'work' ? first.count.length : 1;
  if (sizes < 2) return null;
  const totals = new Array<number | null>(sizes).fill(null);
  let frame: string | null = null;
  let told = 0;
  for (const part of parts) {
    const named = part.kind === 'work' ? sizedName(part) : null;
    if (!named || totals[named.size] !== null || (frame ?? named.frame) !== named.frame) break;
    frame = named.frame;
    totals[named.size] = named.total;
    told += 1;
  }
  return frame === null ? null : { text: frame.replace('#', sized(totals)), parts: told };
}

// "C#B" for a cable that one size works once.
function sizedName({ operation, count }: Work): { frame: string; size: number; total: number } | null {
  const found = /^(C|T|Cr|Tw)(\d+)([FBLR])$/u.exec(operation.name);
  const size = count.indexOf(1);
  const isOneSize = count.every((entry, index) => (index === size ? entry === 1 : entry === null));
  if (!found || size < 0 || !isOneSize) return null;
  return { frame: `${found[1]}# ${found[3]}`, size, total: Number(found[2]) };
}

/** "inc 6 sts evenly", "dec 4 sts evenly". */
export function shapeEvenly({ operation, count }: Extract<Instruction, { kind: 'evenly' }>): string {
  return `${operation.makes > operation.takes ? 'inc' : 'dec'} ${stitches(count)} evenly`;
}

/** "dec 1 st at each end". */
export function shape({ change, count, ...place }: Shape): string {
  return `${change} ${stitches(count)} ${placeOf(place)}`;
}

/** "at each end", "each side of both markers". */
export function placeOf({ places, markers }: Pick<Shape, 'places' | 'markers'>): string {
  if (places === 'pair') return 'each side of the center sts between markers';
  if (places !== 'markers') return `at ${places === 'ends' ? 'each end' : places === 'beginning' ? 'beg' : 'end'}`;
  if (markers === null) return 'each side of every marker';
  if (markers === 1) return 'each side of marker';
  return `each side of ${markers === 2 ? 'both' : markers} markers`;
}
