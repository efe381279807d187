/** The journey from text to plan. The only file that sees every folder of the core. */

import { knitPattern } from './knit/knit.ts';
import type { Diagnostic } from './model/diagnostic.ts';
import type { Fabric } from './model/fabric.ts';
import type { Pattern } from './model/pattern.ts';
import type { Plan } from './model/plan.ts';
import { DEFAULT_SETTINGS, type Settings } from './model/settings.ts';
import { SETUPS, type SetupId } from './model/setup.ts';
import type { PlanJson } from './say/contract.ts';
import { toJson } from './say/json.ts';
import { momentAt } from './solve/moment.ts';
import { breaksByRow } from './solve/passes.ts';
import { planFabric, type Tried } from './solve/plan.ts';
import { readPattern } from './text/read.ts';

/** A text that was read and knitted in every size; plans are made from it on demand. */
export interface Workpiece {
  readonly text: string;
  readonly pattern: Pattern;
  /** One fabric for each size, in the order of the sizes. */
  readonly fabrics: readonly Fabric[];
  /** Everything found while reading and knitting, in the order of the text; one mistake once, with the sizes it happens in. */
  readonly diagnostics: readonly Diagnostic[];
}

/** What to lay out. */
export interface PlanChoice {
  readonly setup: SetupId;
  /** Index of the size; 0 by default. */
  readonly size?: number;
  readonly settings?: Settings;
  readonly tried?: Tried;
}

/** Reads a text and knits it in every size. Never throws, whatever the text. */
export function knitText(text: string): Workpiece {
  const pattern = readPattern(text);
  const lineOf = lineFinder(text);
  const fabrics = pattern.sizes.map((_, size) => knitPattern(pattern, size, lineOf));
  return { text, pattern, fabrics, diagnostics: gather(pattern, fabrics) };
}

/**
 * Lays a workpiece out on a set-up.
 *
 * @throws RangeError if the size does not exist: a bug in the caller.
 */
export function planWorkpiece(workpiece: Workpiece, choice: PlanChoice): Plan {
  const fabric = workpiece.fabrics[choice.size ?? 0];
  if (!fabric) throw new RangeError(`planWorkpiece() knows ${workpiece.fabrics.length} sizes, got ${choice.size}`);
  return planFabric(fabric, {
    setup: SETUPS[choice.setup],
    settings: choice.settings ?? DEFAULT_SETTINGS,
    tried: choice.tried ?? new Map()
  });
}

/** The plan as JSON of the public contract, with every diagnostic of the workpiece. */
export function planJson(workpiece: Workpiece, plan: Plan): PlanJson {
  const lineOf = lineFinder(workpiece.text);
  return toJson(plan, {
    momentOf: (stage, row) => momentAt(plan, { stage, row, pass: 0 }),
    breaksOf: ({ stage, chosen, relaid }) => (chosen ? breaksByRow(stage, chosen.layout, relaid) : []),
    placeOf: (offset) => ({
      line: lineOf(offset),
      column: offset - workpiece.text.lastIndexOf('\n', offset - 1)
    }),
    diagnostics: workpiece.diagnostics
  });
}

/** Tells the line of an offset, from 1. */
export function lineFinder(text: string): (offset: number) => number {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    let low = 0;
    let high = starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle;
    }
    return low + 1;
  };
}

// The same mistake in several sizes is one mistake; its numbers are those of the first size it happens in.
function gather(pattern: Pattern, fabrics: readonly Fabric[]): Diagnostic[] {
  const found = new Map<string, Diagnostic>();
  fabrics.forEach((fabric, size) => {
    for (const diagnostic of fabric.diagnostics) {
      const key = `${diagnostic.code} ${diagnostic.span.from} ${diagnostic.span.to}`;
      const known = found.get(key);
      const sizes = fabrics.length > 1 ? [...new Set([...(known?.sizes ?? []), size])] : [];
      found.set(key, { ...(known ?? diagnostic), sizes });
    }
  });
  return [...pattern.diagnostics, ...found.values()].sort((left, right) => left.span.from - right.span.from);
}
