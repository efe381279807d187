/** Needles as patterns point to them: "N1", "needle A", "the heel needle", "an empty needle". */

import type { FlatOver, NeedleRef, NeedleRefs } from '../../model/needle-words.ts';
import { and, stitches } from './numbers.ts';

/** The needle with a role: "N1", "needle A", "heel needle". */
export function needleNamed(name: string): string {
  if (/^\d$/u.test(name)) return `N${name}`;
  return /^[a-e]$/u.test(name) ? `needle ${name.toUpperCase()}` : `${name} needle`;
}

/** The same with an article where one is usual: "N1", "the heel needle". */
export function theNeedle(name: string): string {
  return / needle$/u.test(needleNamed(name)) ? `the ${needleNamed(name)}` : needleNamed(name);
}

/** One needle: "N1", "the same needle", "an empty needle (N2)". */
export function needle(ref: NeedleRef): string {
  if (ref.kind === 'named') return theNeedle(ref.name);
  if (ref.kind === 'same') return 'the same needle';
  return `an empty needle${ref.name === null ? '' : ` (${theNeedle(ref.name)})`}`;
}

/** Several needles: "each needle", "N1 and N3". */
export function needles(refs: NeedleRefs): string {
  return refs === 'each' ? 'each needle' : and(refs.map(needle));
}

/** What flat work goes over: "N3", "the 32 heel sts", "the heel sts"; "" when the text names nothing. */
export function flatOver(over: FlatOver): string {
  if (over === 'each' || !('section' in over)) return needles(over);
  const { section, count } = over;
  if (count) return `the ${stitches(count, section ?? '')}`;
  return section === null ? '' : `the ${section} sts`;
}
