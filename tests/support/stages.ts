/** Small stages made from a notation, so that a case is one line. Knitted here, apart from the core's own knitting. */

import type { Operation } from '$lib/core/model/operation.ts';
import type { RepeatStretch, Row, Stage, Step } from '$lib/core/model/fabric.ts';
import type { Ring, SectionRun } from '$lib/core/model/ring.ts';
import type { Stitch } from '$lib/core/model/stitch.ts';

type Short = Pick<Operation, 'family' | 'takes' | 'makes'> & { readonly leans?: Operation['leans'] };

/** The operations of the notation; `c12` is a cable over 12 stitches. */
const KNOWN: Readonly<Record<string, Short>> = {
  k: { family: 'knit', takes: 1, makes: 1 },
  p: { family: 'purl', takes: 1, makes: 1 },
  k2tog: { family: 'decrease', takes: 2, makes: 1, leans: 'right' },
  ssk: { family: 'decrease', takes: 2, makes: 1, leans: 'left' },
  m1: { family: 'increase', takes: 0, makes: 1 },
  yo: { family: 'yarn-over', takes: 0, makes: 1 }
};

function operationOf(name: string): Operation {
  const crosses = /^c\d+$/u.test(name);
  const size = Number(name.slice(1));
  const short: Short | undefined = crosses ? { family: 'cable', takes: size, makes: size } : KNOWN[name];
  if (!short) throw new RangeError(`the notation knows no "${name}"`);
  const face = short.family === 'purl' ? 'purl' : 'knit';
  return { leans: 'none', ...short, name, words: name, crosses, faces: new Array(short.makes).fill(face) };
}

/** One row: `(k2 p2)17` repeats, `k22 m1 k22` does not. Words are an operation with an optional count; `k2tog` has none. */
interface Told {
  readonly operations: readonly Operation[];
  readonly repeats: readonly RepeatStretch[];
}

function tell(notation: string): Told {
  const operations: Operation[] = [];
  const repeats: RepeatStretch[] = [];
  let taken = 0;
  for (const [, group, times, plain] of notation.matchAll(/\(([^)]*)\)(\d+)|([^\s()]+)/gu)) {
    const unit = wordsOf(group ?? plain ?? '');
    const length = unit.reduce((sum, operation) => sum + operation.takes, 0);
    const count = Number(times ?? 1);
    for (let time = 0; time < count; time += 1) operations.push(...unit);
    if (group !== undefined) repeats.push({ from: taken, to: taken + length * count, unit: length });
    taken += length * count;
  }
  return { operations, repeats };
}

function wordsOf(text: string): Operation[] {
  return text.split(/\s+/u).flatMap((word) => {
    const plain = /^([kp])(\d+)$/u.exec(word);
    if (plain) return new Array<Operation>(Number(plain[2])).fill(operationOf(plain[1]!));
    return [operationOf(word)];
  });
}

/** What a stage is made of. */
export interface StageNotation {
  /** Rows of operations, each with how often it is worked. */
  readonly rows: readonly (readonly [notation: string, times: number])[];
  readonly sections?: readonly SectionRun[];
}

/** A stage in the round. The first row tells how many stitches there are. */
export function stageOf({ rows, sections = [] }: StageNotation): Stage {
  let ids = 0;
  const fresh = (parents: readonly number[] = []): Stitch => ({ id: ids++, face: 'knit', loop: 'plain', parents });
  const first = tell(rows[0]![0]).operations.reduce((sum, operation) => sum + operation.takes, 0);
  let ring: Ring = { stitches: Array.from({ length: first }, () => fresh()), markers: [], sections };
  const start = ring;
  const worked: Row[] = [];
  rows.forEach(([notation, times], line) => {
    for (let time = 0; time < times; time += 1) {
      const row = work(ring, tell(notation), { line, label: `Rnd ${worked.length + 1}`, fresh });
      worked.push(row);
      ring = row.after;
    }
  });
  return {
    name: 'Stage',
    line: 1,
    shape: 'round',
    side: 'RS',
    tube: 0,
    entry: start,
    start,
    exit: ring,
    rows: worked,
    run: { from: 0, to: first },
    held: [],
    stated: [],
    notes: []
  };
}

function work(
  before: Ring,
  told: Told,
  how: { readonly line: number; readonly label: string; readonly fresh: (parents?: readonly number[]) => Stitch }
): Row {
  const stitches: Stitch[] = [];
  const steps: Step[] = [];
  const span = { from: how.line, to: how.line + 1 };
  let from = 0;
  for (const operation of told.operations) {
    const taken = before.stitches.slice(from, from + operation.takes);
    steps.push({ operation, from, at: stitches.length, takes: operation.takes, makes: operation.makes, span });
    const kept = operation.takes === operation.makes;
    stitches.push(...(kept ? taken : operation.faces.map(() => how.fresh(taken.map((stitch) => stitch.id)))));
    from += operation.takes;
  }
  if (from !== before.stitches.length)
    throw new RangeError(`the row takes ${from} of ${before.stitches.length} stitches`);
  return {
    label: how.label,
    line: how.line + 1,
    span,
    shape: 'round',
    side: 'RS',
    before,
    after: { stitches, markers: [], sections: [] },
    steps,
    repeats: told.repeats,
    run: { from: 0, to: from },
    unworked: { before: 0, after: 0 },
    start: 0,
    end: 0,
    turned: false
  };
}
