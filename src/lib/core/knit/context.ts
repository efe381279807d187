/** What performing needs beside the row itself: the size, where we are in words, and where troubles and set-aside stitches go. */

import type { Diagnostic } from '../model/diagnostic.ts';
import { MOST_STEPS } from '../model/limits.ts';
import type { Operation } from '../model/operation.ts';
import { operationNamed } from '../model/operations.ts';
import type { Held } from '../model/fabric.ts';
import type { Span } from '../model/span.ts';
import { Needles } from './needles.ts';
import { knitDiagnostic, type Facts, type KnitCode } from './messages.ts';

/** Thrown when a limit of the program is met; caught by `knitPattern`, which ends the fabric there. */
export class LimitReached extends Error {}

/** The state shared by all rows of one fabric. Mutable, and never leaves `knit/`. */
export class Context {
  readonly diagnostics: Diagnostic[] = [];
  readonly held: Held[] = [];
  readonly locks = new Map<number, string>();
  /** The needles that the text speaks of. */
  readonly needles = new Needles();
  /** Identities of the stitches that the last row made or worked. */
  lastRow: ReadonlySet<number> = new Set();
  /** Identities of the stitches of the run that was worked flat last. */
  flatRun: ReadonlySet<number> = new Set();
  /** "Leg, Rnd 3": for messages. */
  where = '';
  private ids = 0;
  private markers = 0;
  private steps = 0;

  constructor(readonly size: number) {}

  /** A new stitch identity. */
  readonly nextId = (): number => this.ids++;

  /** The name of a marker that the text leaves without one: m1, m2 … */
  nextMarker(): string {
    this.markers += 1;
    return `m${this.markers}`;
  }

  /** Notes a mistake; one in a row that is repeated is noted once. */
  report(code: KnitCode, span: Span, facts: Omit<Facts, 'where'> = {}): void {
    const known = this.diagnostics.some(
      (other) => other.code === code && other.span.from === span.from && other.span.to === span.to
    );
    if (known) return;
    this.diagnostics.push(knitDiagnostic(code, span, { where: this.where, ...facts }));
  }

  /** Drops mistakes of a kind among those noted after the first so many: in this place they are none. */
  forgive(code: KnitCode, since: number): void {
    const kept = this.diagnostics.splice(since).filter((diagnostic) => diagnostic.code !== code);
    this.diagnostics.push(...kept);
  }

  /** Counts performed operations so that absurd repeats end. */
  countStep(): void {
    this.steps += 1;
    if (this.steps > MOST_STEPS) throw new LimitReached();
  }
}

/** An operation that knitting itself needs; the table has it. */
export function standard(name: 'k' | 'p' | 'pick up' | 'DS'): Operation {
  const found = operationNamed(name);
  if (!found) throw new RangeError(`the table of operations lacks "${name}"`);
  return found;
}
