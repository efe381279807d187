/** What could be written in place of a common mistake, for the knitter to choose. Nothing is changed by itself. */

import type { Diagnostic, Workpiece } from '$lib/core/index.ts';
import {
  closeBracket,
  endBracket,
  endRepeat,
  sayWhichRows,
  sayWhichTimes,
  startRepeat,
  writeRepeat
} from './fixes-of-repeats.ts';
import { printKnitted } from './fixes-of-counts.ts';
import { finishRow } from './fixes-of-rows.ts';
import type { Term } from './glossary.ts';
import { isOneSlip } from './slips.ts';

/** One change of the text: a stretch of it, in UTF-16 code units from 0, half-open, and what comes in its place. */
export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

/** A change to choose. */
export interface Fix {
  /** What it does: 'Write "k2tog"'. */
  readonly words: string;
  /** In the order of the text; they do not overlap. */
  readonly edits: readonly Edit[];
}

/** A mistake, and what is needed to mend it. */
export interface Mistake {
  readonly found: Diagnostic;
  readonly workpiece: Workpiece;
  readonly terms: readonly Term[];
}

type Mender = (mistake: Mistake) => readonly Fix[];

// A mistake that can be mended is one more line here.
const MENDERS: Readonly<Record<string, Mender>> = {
  'unknown-stitch': writeNearest,
  'count-mismatch': printKnitted,
  'row-too-short': finishRow,
  'ambiguous-repeats': sayWhichTimes,
  'ambiguous-row-repeats': sayWhichRows,
  'implied-repeat': writeRepeat,
  'unclosed-bracket': closeBracket,
  'bracket-unclear': endBracket,
  'repeat-end-missing': endRepeat,
  'repeat-start-missing': startRepeat
};

/** The fixes for a mistake, the likeliest first; empty when none is known. */
export function fixesFor(mistake: Mistake): readonly Fix[] {
  return MENDERS[mistake.found.code]?.(mistake) ?? [];
}

const NEAREST = /^Did you mean "(.+)"\?$/u;

// The stitches of the key come first: the reader knows the standard ones only.
function writeNearest({ found, workpiece, terms }: Mistake): Fix[] {
  const { from, to } = found.span;
  const wrong = workpiece.text.slice(from, to);
  const own = terms.map(({ name }) => name).filter((name) => isOneSlip(wrong.toLowerCase(), name.toLowerCase()));
  const standard = NEAREST.exec(found.remedy ?? '')?.[1];
  const names = [...new Set([...own, ...(standard ? [standard] : [])])];
  return names.map((name) => write(likeFirst(name, wrong), { from, to }));
}

function write(word: string, place: Omit<Edit, 'insert'>): Fix {
  return { words: `Write "${word}"`, edits: [{ ...place, insert: word }] };
}

function likeFirst(word: string, model: string): string {
  return /^\p{Lu}\P{Lu}/u.test(model) ? word.charAt(0).toUpperCase() + word.slice(1) : word;
}
