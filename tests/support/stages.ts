/** Small stages made from a notation, so that a case is one line. Knitted here, apart from the core's own knitting. */

import type { Operation } from '$lib/core/model/operation.ts';
import type { RepeatStretch, Row, Stage, Step } from '$lib/core/model/fabric.ts';
import { sectionAt, type Marker, type Ring, type SectionRun } from '$lib/core/model/ring.ts';
import type { Stitch } from '$lib/core/model/stitch.ts';

type Short = Pick<Operation, 'family' | 'takes' | 'makes'> & Partial<Pick<Operation, 'leans' | 'crosses'>>;

/** The operations of the notation; `c12` is a cable over 12 stitches. */
const KNOWN: Readonly<Record<string, Short>> = {
  k: { family: 'knit', takes: 1, makes: 1 },
  p: { family: 'purl', takes: 1, makes: 1 },
  k2tog: { family: 'decrease', takes: 2, makes: 1, leans: 'right' },
  ssk: { family: 'decrease', takes: 2, makes: 1, leans: 'left' },
  cdd: { family: 'decrease', takes: 3, makes: 1 },
  kfb: { family: 'increase', takes: 1, makes: 2 },
  three: { family: 'increase', takes: 3, makes: 3 },
  t2: { family: 'twist', takes: 2, makes: 2, crosses: true },
  m1: { family: 'increase', takes: 0, makes: 1 },
  yo: { family: 'yarn-over', takes: 0, makes: 1 }
};

function operationOf(name: string): Operation {
  const crosses = /^c\d+$/u.test(name);
  const size = Number(name.slice(1));
  const short: Short | undefined = crosses ? { family: 'cable', takes: size, makes: size } : KNOWN[name];
  if (!short) throw new RangeError(`the notation knows no "${name}"`);
  const face = short.family === 'purl' ? 'purl' : 'knit';
  return { leans: 'none', crosses, ...short, name, words: name, faces: new Array(short.makes).fill(face) };
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
  /** Gaps with a ring marker. */
  readonly markers?: Readonly<Record<string, number>>;
}

function stitchMaker(firstId = 0) {
  let ids = firstId;
  return (parents: readonly number[] = []): Stitch => ({ id: ids++, face: 'knit', loop: 'plain', parents });
}

/** A stage in the round. The first row tells how many stitches there are. */
export function stageOf({ rows, sections = [], markers = {} }: StageNotation): Stage {
  const fresh = stitchMaker();
  const first = tell(rows[0]![0]).operations.reduce((sum, operation) => sum + operation.takes, 0);
  const hung = Object.entries(markers).map(([name, at]): Marker => ({ name, kind: 'ring', at }));
  let ring: Ring = { stitches: Array.from({ length: first }, () => fresh()), markers: hung, sections };
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
    after: { stitches, markers: moved(before.markers, steps), sections: kept(before, steps) },
    steps,
    repeats: told.repeats,
    run: { from: 0, to: from },
    unworked: { before: 0, after: 0 },
    start: 0,
    end: 0,
    turned: false
  };
}

// A marker stays before what is made in its gap and after everything worked before it.
function moved(markers: readonly Marker[], steps: readonly Step[]): Marker[] {
  return markers.map((marker) => {
    const before = steps.filter((step) => step.from < marker.at);
    return { ...marker, at: before.reduce((sum, step) => sum + step.makes, 0) };
  });
}

// Made stitches belong to the section of the first stitch taken, or of the next stitch on the needle.
function kept(before: Ring, steps: readonly Step[]): SectionRun[] {
  const names = steps.flatMap((step) => new Array<string | null>(step.makes).fill(sectionAt(before, step.from)));
  const runs: SectionRun[] = [];
  names.forEach((name, at) => {
    const last = runs.at(-1);
    if (name !== null && last?.name === name && last.to === at) runs.splice(-1, 1, { ...last, to: at + 1 });
    else if (name !== null) runs.push({ name, from: at, to: at + 1 });
  });
  return runs;
}

/** A stage worked back and forth over a run of a ring: "RS k32" and "WS p32", each with how often it is worked. */
export interface FlatNotation {
  readonly around: number;
  readonly run: readonly [from: number, to: number];
  readonly rows: readonly (readonly [notation: string, times: number])[];
}

/** A flat stage; the stitches outside the run wait. */
export function flatOf({ around, run: [from, to], rows }: FlatNotation): Stage {
  const fresh = stitchMaker(around);
  const all = stageOf({ rows: [[`k${around}`, 1]] });
  let ring = all.start;
  let run = { from, to };
  const worked = rows.flatMap(([notation, times], line) =>
    Array.from({ length: times }, () => {
      const row = workFlat(ring, run, { notation, line, fresh });
      run = { from, to: run.to + row.after.stitches.length - ring.stitches.length };
      ring = row.after;
      return row;
    })
  );
  return { ...all, shape: 'flat', rows: worked, exit: ring, run: { from, to } };
}

function workFlat(
  before: Ring,
  run: Row['run'],
  how: { readonly notation: string; readonly line: number; readonly fresh: () => Stitch }
): Row {
  const side = how.notation.startsWith('WS') ? 'WS' : 'RS';
  const { operations, repeats } = tell(how.notation.slice(3));
  const total = operations.reduce((sum, operation) => sum + operation.makes, 0);
  const stitches = Array.from({ length: total }, () => how.fresh());
  let [taken, made] = [0, 0];
  const steps = operations.map((operation): Step => {
    const { takes, makes } = operation;
    const [from, at] =
      side === 'RS' ? [run.from + taken, run.from + made] : [run.to - taken - takes, run.from + total - made - makes];
    [taken, made] = [taken + takes, made + makes];
    return { operation, from, at, takes, makes, span: { from: how.line, to: how.line + 1 } };
  });
  const rest = [before.stitches.slice(0, run.from), before.stitches.slice(run.to)] as const;
  return {
    label: `Row ${how.line + 1}`,
    line: how.line + 1,
    span: { from: how.line, to: how.line + 1 },
    shape: 'flat',
    side,
    before,
    after: { stitches: [...rest[0], ...stitches, ...rest[1]], markers: [], sections: [] },
    steps,
    repeats: repeats.map(({ unit, ...at }) => ({ from: run.from + at.from, to: run.from + at.to, unit })),
    run,
    unworked: { before: 0, after: 0 },
    start: side === 'RS' ? run.from : run.to,
    end: side === 'RS' ? run.from + total : run.from,
    turned: true
  };
}
