/** Which physical needle plays which number: letters move on with every pass. */

import type { Row } from '../model/fabric.ts';
import type { Hands } from '../model/plan.ts';
import { wrap } from '../model/ring.ts';
import type { Letter, Setup } from '../model/setup.ts';
import { breaksAfter, passesOf } from './passes.ts';

/** The letters at the cast-on: the first needles hold, the rest are free. */
export function firstHands(setup: Setup, holders: number): Hands {
  if (setup.works === 'back-tip') return { holding: new Array<Letter>(holders).fill('A'), free: [] };
  return { holding: setup.needles.slice(0, holders), free: setup.needles.slice(holders) };
}

/** The letters after one pass over the needle with this index: the free needle takes its place, and it becomes the free one. */
function afterPass(setup: Setup, hands: Hands, needle: number): Hands {
  const [worker, ...others] = hands.free;
  if (setup.works !== 'free-needle' || worker === undefined) return hands;
  const emptied = hands.holding[needle]!;
  return {
    holding: hands.holding.map((letter, index) => (index === needle ? worker : letter)),
    free: [emptied, ...others]
  };
}

/** The letters after passes over these needles, in order. */
export function afterPasses(setup: Setup, hands: Hands, needles: readonly number[]): Hands {
  return needles.reduce((now, needle) => afterPass(setup, now, needle), hands);
}

/** The letters after a row; where it ends with another number of needles, as many as there are then. */
export function afterRow(
  setup: Setup,
  hands: Hands,
  at: { readonly row: Row; readonly breaks: readonly number[]; readonly next: readonly number[] }
): Hands {
  const after = afterPasses(setup, hands, passesOf(at.row, at.breaks));
  const turn = turnOf(at.next, breaksAfter(at.row, at.breaks), at.row.after.stitches.length);
  const { holding } = after;
  const turned = [...holding.slice(holding.length - turn), ...holding.slice(0, holding.length - turn)];
  return withHolders({ holding: turned, free: after.free }, at.next.length);
}

// How far the numbers were turned round: where the first needle stands among needles that were told anew.
function turnOf(next: readonly number[], followed: readonly number[], stitches: number): number {
  if (next.length !== followed.length) return 0;
  const first = followed[0] ?? 0;
  const way = (gap: number) => Math.min(wrap(gap - first, stitches), wrap(first - gap, stitches));
  return next.reduce((best, gap, index) => (way(gap) < way(next[best]!) ? index : best), 0);
}

/** The letters when another number of needles holds the stitches from here on: letters keep their order round the ring. */
export function withHolders(hands: Hands, holders: number): Hands {
  const all = [...hands.holding, ...hands.free];
  if (hands.holding.length === holders) return hands;
  return { holding: all.slice(0, holders), free: all.slice(holders) };
}
