/** Markers, turns, and what happens at edges inside a row. */

import type { Instruction } from '../../model/pattern.ts';
import { noun, sized, stitches } from './numbers.ts';
import { marker } from './targets.ts';

/** Instructions of this file. */
export type AtEdge = Extract<
  Instruction,
  {
    kind:
      | 'marker'
      | 'remove-markers'
      | 'locking-marker'
      | 'pick-up'
      | 'cast-on-here'
      | 'bind-off'
      | 'hold'
      | 'waste-yarn'
      | 'turn';
  }
>;

const TURNS = { none: 'turn', wrap: 'w&t', double: 'turn and make DS' } as const;

/** One of them. */
export function atEdge(part: AtEdge): string {
  switch (part.kind) {
    case 'marker':
      return marked(part);
    case 'remove-markers':
      return 'remove all markers';
    case 'locking-marker':
      return lock(part.name);
    case 'pick-up':
      return pickUp(part);
    case 'cast-on-here':
      return `CO ${stitches(part.count)} over the gap`;
    case 'bind-off':
      return `BO ${part.count ? stitches(part.count) : 'all sts'}`;
    case 'hold':
      return hold(part);
    case 'waste-yarn':
      return `k${sized(part.count)} with waste yarn, sl these sts back to left needle`;
    case 'turn':
      return TURNS[part.mark];
  }
}

function lock(name: string | null): string {
  return `place a locking marker${name === null ? '' : ` ${name.replace(/^m/u, '')}`}`;
}

function hold({ count, name }: Extract<AtEdge, { kind: 'hold' }>): string {
  return `place ${stitches(count, name ?? '')} on waste yarn`;
}

function pickUp({ count, atMost }: Extract<AtEdge, { kind: 'pick-up' }>): string {
  return `pick up and k ${sized(count)}${atMost > 0 ? `-${atMost}` : ''} ${noun(count)}`;
}

const SHORT = { place: 'pm', slip: 'sm', remove: 'rm' } as const;

// "pm", "pm A", "pm for BOR", "slip BOR m", "place marker 2", "place middle marker".
function marked({ action, name }: Extract<AtEdge, { kind: 'marker' }>): string {
  if (name === null) return SHORT[action];
  if (/^[A-Z]$/u.test(name)) return `${SHORT[action]} ${name}`;
  if (name === 'BOR') return action === 'place' ? 'pm for BOR' : `${action} BOR m`;
  return /^m\d+$/u.test(name) ? `${action} marker ${name.slice(1)}` : `${action} ${marker(name)}`;
}
