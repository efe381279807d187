/** A pattern laid out on one set-up in one size: the chosen layout of every stage, the others, and what each pays. */

import type { Fabric, Stage, StatedLayout } from './fabric.ts';
import type { Reason } from './judgement.ts';
import type { Layout } from './layout.ts';
import type { Settings } from './settings.ts';
import type { Letter, Setup } from './setup.ts';

/** A layout with what it pays and why. */
export interface Judged {
  readonly layout: Layout;
  /** Stitches per needle in the stage's start ring, N1 first. */
  readonly loads: readonly number[];
  /** Sum of the prices of its reasons: what the distribution minimises. */
  readonly price: number;
  /** Everything that speaks about it, blockers first, then by price. */
  readonly reasons: readonly Reason[];
}

/** Why no layout is possible. */
export interface Impossible {
  readonly code: 'no-stitches' | 'too-many-for-set' | 'no-free-gap' | 'too-few-stitches' | 'does-not-reach';
  readonly detail: Readonly<Record<string, number>>;
}

/** The answer to "how do these stitches go on these needles?" */
export type Distribution =
  | {
      readonly kind: 'solved';
      /** Best first, in the total order; at least one. */
      readonly best: readonly Judged[];
    }
  | { readonly kind: 'impossible'; readonly because: Impossible };

/** One stage on the needles. */
export interface StagePlan {
  readonly stage: Stage;
  /** The layout in use: the stated, the tried, or the best one; `null` when there is none. */
  readonly chosen: Judged | null;
  /** Where the chosen layout comes from. */
  readonly origin: 'best' | 'stated' | 'tried';
  /** Layouts that the pattern states for later rows of the stage, and that are in use. */
  readonly relaid: readonly StatedLayout[];
  readonly distribution: Distribution;
  /** Loads after the last row, N1 first. */
  readonly endLoads: readonly number[];
  /** Breaks after the last row, in the exit ring, in the order of the needles. */
  readonly endBreaks: readonly number[];
  /** The letters that hold stitches at the first row, N1 first, and those that are free. */
  readonly letters: Hands;
  readonly endLetters: Hands;
}

/** Which physical needle plays which number. */
export interface Hands {
  readonly holding: readonly Letter[];
  readonly free: readonly Letter[];
}

/** A whole pattern on one set-up in one size. */
export interface Plan {
  readonly fabric: Fabric;
  readonly setup: Setup;
  readonly settings: Settings;
  readonly stages: readonly StagePlan[];
}
