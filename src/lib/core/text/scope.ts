/** What is known while a text is being read: sizes, the key, section names, rows told so far, and the troubles found. */

import type { Diagnostic } from '../model/diagnostic.ts';
import type { Operation } from '../model/operation.ts';
import type { RowText } from '../model/pattern.ts';
import type { Sized } from '../model/sized.ts';
import type { Span } from '../model/span.ts';
import type { Chart } from './charts.ts';
import { readDiagnostic, type Facts, type ReadCode } from './messages.ts';

/** A name from the pattern's own key, as the texts of its tokens. */
export interface KeyEntry {
  readonly atoms: readonly string[];
  readonly operation: Operation;
}

/** Words that name parts of a tube without being declared. */
const BODY_PARTS = new Set([
  ...[
    'instep',
    'sole',
    'heel',
    'foot',
    'back',
    'front',
    'palm',
    'gusset',
    'thumb',
    'toe',
    'flap',
    'top',
    'bottom',
    'hand'
  ],
  ...['panel', 'leg', 'cuff', 'finger', 'side']
]);

/** The state of one reading. Mutable, and never leaves `text/`. */
export class Scope {
  readonly diagnostics: Diagnostic[] = [];
  readonly key: KeyEntry[] = [];
  /** Names from "Sections:" lines, in small letters. */
  readonly sections = new Set<string>();
  /** Rows of the whole text by noun and number, the latest of each. */
  readonly rows = new Map<number, RowText>();
  /** Charts that the text writes out, by name ("a"; "" for one without). */
  readonly charts = new Map<string, Chart>();
  /** The number of the row being read, for a chart that is worked alongside; `null` without one. */
  chartRow: number | null = null;
  /** How many rows of the label or sentence being read were read before this one. */
  chartTurn = 0;
  /** How many needles the sentence being read has named; `null` when it has not. */
  needlesTold: number | null = null;
  /** How many needles of the set named at the front hold stitches; 0 when none is named. */
  holding = 0;
  /** Sizes that the lines being read are for; `null` means all. */
  onlySizes: readonly number[] | null = null;
  /** Sizes that the lines just before were for; empty after a line for all. */
  readonly namedSizes = new Set<number>();
  /** The side that is worked where the text tells left and right apart; `null` before it does. */
  version: 'left' | 'right' | null = null;
  /** Markers that the text calls by a word: "middle", or "end" for that of the BOR. */
  readonly markerNames = new Map<string, string>();
  /** How many rows "These 6 rnds form the pattern" spoke of last; "them" are these. */
  rowsFormed = 1;
  /** Stitches that were knitted with waste yarn last; "them" in "k them again". */
  wasteCount: Sized<number> | null = null;
  /** Whether anything has been cast on. */
  begun = false;
  /** Row numbers that ranges have stood for so far. */
  numbersTold = 0;
  stage = '';
  row = '';
  /** Where the row being read begins. */
  rowFrom = 0;
  depth = 0;
  private readonly firstOfKind = new Map<ReadCode, number>();

  /** @param sizes - Names of the sizes, at least one. */
  constructor(readonly sizes: readonly string[]) {}

  /** "Leg, Rnd 3", for messages. */
  get where(): string {
    return [this.stage, this.row].filter(Boolean).join(', ');
  }

  /** Notes a trouble. */
  report(code: ReadCode, span: Span, facts: Facts = {}): void {
    this.diagnostics.push(readDiagnostic(code, span, { where: this.where, ...facts }));
  }

  /** Notes a trouble unless one of its kind was noted in the row being read: the next ones may follow from the first. */
  reportOnce(code: ReadCode, span: Span, facts: Facts = {}): void {
    const known = this.diagnostics[this.firstOfKind.get(code) ?? -1];
    if (known?.code === code && known.span.from >= this.rowFrom) return;
    this.firstOfKind.set(code, this.diagnostics.length);
    this.report(code, span, facts);
  }

  /** Drops the troubles noted after the first so many: what was tried there did not hold. */
  forget(troubles: number): void {
    if (this.diagnostics.length > troubles) this.diagnostics.length = troubles;
  }

  /** Whether a word names a section. */
  isSection(word: string): boolean {
    return this.sections.has(word) || BODY_PARTS.has(word);
  }
}
