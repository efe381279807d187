/** The tools: how many needles, how many of them hold stitches, and what plays the working needle. */

/** A physical needle keeps its letter for the whole project. */
export type Letter = 'A' | 'B' | 'C' | 'D' | 'E';

/** Ids of the set-ups, in the order in which they are shown. */
export const SETUP_IDS = ['dpn-5', 'dpn-4', 'two-circulars', 'magic-loop', 'flexible-3', 'short-circular'] as const;
/** One of `SETUP_IDS`. */
export type SetupId = (typeof SETUP_IDS)[number];

/** What receives the new stitches: a free needle, the other tip of the needle being worked, or the back tip of a long loop. */
export type Worker = 'free-needle' | 'own-tip' | 'back-tip';

/** A set of tools. */
export interface Setup {
  readonly id: SetupId;
  /** The trade's name for it: "set of five double-pointed needles". */
  readonly name: string;
  /** How many needles (for a magic loop, groups) can hold stitches while knitting goes on. */
  readonly holds: number;
  readonly needles: readonly Letter[];
  readonly works: Worker;
  /** Straight needles lie as sticks; circulars have a cord; flexible ones are two short tips with a cord between. */
  readonly form: 'straight' | 'circular' | 'flexible';
}

/** Every set-up, in the order in which they are shown. */
export const SETUPS: Readonly<Record<SetupId, Setup>> = {
  'dpn-5': {
    id: 'dpn-5',
    name: 'set of five double-pointed needles',
    holds: 4,
    needles: ['A', 'B', 'C', 'D', 'E'],
    works: 'free-needle',
    form: 'straight'
  },
  'dpn-4': {
    id: 'dpn-4',
    name: 'set of four double-pointed needles',
    holds: 3,
    needles: ['A', 'B', 'C', 'D'],
    works: 'free-needle',
    form: 'straight'
  },
  'two-circulars': {
    id: 'two-circulars',
    name: 'two circular needles',
    holds: 2,
    needles: ['A', 'B'],
    works: 'own-tip',
    form: 'circular'
  },
  'magic-loop': {
    id: 'magic-loop',
    name: 'one long circular needle, magic loop',
    holds: 2,
    needles: ['A'],
    works: 'back-tip',
    form: 'circular'
  },
  'flexible-3': {
    id: 'flexible-3',
    name: 'three short flexible needles',
    holds: 2,
    needles: ['A', 'B', 'C'],
    works: 'free-needle',
    form: 'flexible'
  },
  'short-circular': {
    id: 'short-circular',
    name: 'one small circular needle',
    holds: 1,
    needles: ['A'],
    works: 'own-tip',
    form: 'circular'
  }
};

/** The set-up with this id, or `null`. */
export function setupNamed(id: string): Setup | null {
  return (SETUP_IDS as readonly string[]).includes(id) ? SETUPS[id as SetupId] : null;
}
