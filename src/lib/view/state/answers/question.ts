/**
 * What crosses the border between the page and the workroom: plain data that can be copied.
 *
 * The workpiece and its plans stay in the workroom. What the core remembers about them goes by their identity, which a
 * copy would lose.
 */

import type {
  Diagnostic,
  Judged,
  Layout,
  Picture,
  Reason,
  Ring,
  Row,
  Settings,
  Setup,
  SetupId,
  StagePlan
} from '$lib/core/index.ts';
import type { Limits, TriedLayout } from '$lib/project/project.ts';
import type { CountedLine, KindOfLine } from './counts.ts';
import type { Fix } from './fixes.ts';
import type { Glossary } from './glossary.ts';

/** Everything that the answer depends on. */
export interface Question {
  readonly text: string;
  /** Size, stage and row may lie beyond what the text has: the last is meant then. */
  readonly size: number;
  readonly stage: number;
  readonly row: number;
  readonly setup: SetupId;
  readonly limits: Limits;
  readonly tried: readonly TriedLayout[];
  /** A layout that the stage in view is judged in, without being kept. */
  readonly held: Layout | null;
  readonly mirrored: boolean;
}

/** What is known about a text in one size, and its stage in view on the needles. */
export interface Answer {
  readonly piece: Piece;
  /** The limits in use: what the pattern says goes before the knitter's. */
  readonly inUse: Limits;
  /** `null` when the pattern has no stage, or when the plan broke off. */
  readonly view: StageView | null;
  /** True when something broke off that should not have. */
  readonly broken: boolean;
}

/** A text knitted in one size. */
export interface Piece {
  readonly title: string;
  readonly sizes: readonly string[];
  readonly size: number;
  readonly messages: readonly Message[];
  readonly counts: readonly CountedLine[];
  readonly kinds: readonly KindOfLine[];
  readonly stages: readonly StageOutline[];
  readonly glossary: Glossary;
}

/** Something found in the text, with its line from 1 and what could be written instead. */
export type Message = Diagnostic & { readonly line: number; readonly fixes: readonly Fix[] };

/** A stage in outline. */
export interface StageOutline {
  readonly name: string;
  /** Line of the heading, from 1. */
  readonly line: number;
  readonly flat: boolean;
  /** Stitches before the first line under the heading, when the layout begins, and after the last row. */
  readonly stitches: { readonly entry: number; readonly start: number; readonly exit: number };
  readonly rows: readonly RowOutline[];
}

/** A row in outline. */
export type RowOutline = Pick<Row, 'label' | 'line' | 'side'>;

/** One stage at one row on its needles. */
export interface StageView {
  /** Index of the stage. */
  readonly stage: number;
  readonly name: string;
  readonly setup: Setup;
  readonly ring: RingOutline;
  /** What a break at each gap would pay; Infinity where none may lie. */
  readonly prices: readonly number[];
  readonly chosen: Offer | null;
  readonly origin: StagePlan['origin'];
  /** Where the layout comes from, and which it is, when none is held. */
  readonly unheld: { readonly origin: StagePlan['origin']; readonly layout: Layout | null };
  /** True when the pattern states a layout for the start of the stage. */
  readonly stated: boolean;
  /** Best first; empty when no layout is possible. */
  readonly offers: readonly Offer[];
  /** Why no layout is possible; "" when one is. */
  readonly impossible: string;
  /** The drawing in words. */
  readonly words: readonly string[];
  readonly scene: Scene | null;
}

/** The round in outline. */
export type RingOutline = Pick<Ring, 'markers' | 'sections'> & { readonly stitches: number };

/** A layout with what it pays, and why in words. */
export type Offer = Omit<Judged, 'reasons'> & { readonly reasons: readonly SaidReason[] };

/** A reason and its sentence. */
export type SaidReason = Pick<Reason, 'code' | 'severity' | 'price'> & { readonly words: string };

/** What stands on the table, with what is said about it. */
export interface Scene {
  readonly picture: Picture;
  readonly stage: string;
  readonly works: Setup['works'];
  readonly loads: readonly number[];
  readonly mirrored: boolean;
}

/** A piece of nothing, before the first answer. */
export const NO_PIECE: Piece = {
  title: '',
  sizes: [''],
  size: 0,
  messages: [],
  counts: [],
  kinds: [],
  stages: [],
  glossary: { terms: [], sections: [], markers: [] }
};

/** The limits among the settings. */
export function limitsOf({ lengthCm, stitchesPer10cm, minimum, share }: Settings): Limits {
  return { lengthCm, stitchesPer10cm, minimum, share };
}
