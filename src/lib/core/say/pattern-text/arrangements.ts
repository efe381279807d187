/** Stitches that change needles without being worked, needles that get a name, and where the round begins. */

import type { Arrangement } from '../../model/needle-words.ts';
import { flatOver, needle, needleNamed, needles, theNeedle } from './needles.ts';
import { inWords, stitches } from './numbers.ts';

/** One arrangement. */
export function arrangement(action: Arrangement): string {
  switch (action.kind) {
    case 'move-stitches':
      return move(action);
    case 'gather':
      return gather(action);
    case 'name-needle':
      return `${action.needle.kind === 'named' ? needle(action.needle) : 'this'} is now ${newName(action.name)}`;
    case 'work-flat':
      return workFlat(action.over);
    case 'move-yarn':
      return `rejoin yarn at ${needle(action.to)}`;
    case 'move-bor':
      return `rnd now begins ${beginning(action)}`;
  }
}

function move({ count, end, from, until, to }: Extract<Arrangement, { kind: 'move-stitches' }>): string {
  const which = count ? `${end ?? (from ? '' : 'next')} ${stitches(count)}`.trim() : 'the sts';
  const source = from ? ` of ${needle(from)}` : '';
  const full = until ? ` until ${to.kind === 'named' ? needle(to) : 'N1'} has ${stitches(until)}` : '';
  return `sl ${which}${source} to ${needle(to)}${full}`;
}

type Gather = Extract<Arrangement, { kind: 'gather' }>;

function gather(action: Gather): string {
  const { of, name } = action;
  if (of !== 'each' && 'kind' in of && of.kind === 'rest') return gatherRest(action);
  return `place ${gathered(of)} on ${name === null ? 'one needle' : theNeedle(name)}`;
}

function gathered(of: Gather['of']): string {
  if (of === 'each' || !('kind' in of)) return `the sts of ${needles(of)}`;
  return of.kind === 'section' ? `the ${of.name} sts` : 'them';
}

function gatherRest({ loads, name }: Gather): string {
  const [load] = loads;
  if (loads.length === 1) return `put the other ${load ? stitches(load) : 'sts'} on ${restOn(name)}`;
  const each = load ? `, ${stitches(load)} on each` : '';
  return `put the other sts on ${inWords([loads.length])} ${name === null ? '' : `${name} `}needles${each}`;
}

function restOn(name: string | null): string {
  if (name === null) return 'one needle';
  return name === 'holder' ? 'a holder' : theNeedle(name);
}

function newName(name: string): string {
  const isNeedle = /^(?:\d|[a-e])$/u.test(name) || / /u.test(name);
  return isNeedle ? theNeedle(name) : `the ${needleNamed(name)}`;
}

function workFlat(over: Extract<Arrangement, { kind: 'work-flat' }>['over']): string {
  return over !== 'each' && 'section' in over
    ? `work over ${flatOver(over)} only`
    : `work back and forth on ${flatOver(over)}`;
}

function beginning({ to }: Extract<Arrangement, { kind: 'move-bor' }>): string {
  if (to === null) return 'here';
  return to.kind === 'named' ? `at ${needle(to)}` : 'with this st';
}
