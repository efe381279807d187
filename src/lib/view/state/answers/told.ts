/** Short names for what was read, and ways through it. */

import type { Pattern } from '$lib/core/index.ts';

/** The part of a text under one heading, as it was read. */
export type ToldStage = Pattern['stages'][number];

/** One statement under a heading. */
export type Told = ToldStage['statements'][number];

/** A row as it was told. */
export type ToldRow = Extract<Told, { kind: 'row' }>;

/** A sentence that works earlier rows again. */
export type ToldRepeat = Extract<Told, { kind: 'repeat-rows' }>;

/** One thing told inside a row. */
export type ToldStep = ToldRow['body'][number];

/** Every instruction of a body, also those inside groups, in the order of the text. */
export function* stepsIn(body: readonly ToldStep[]): Generator<ToldStep> {
  for (const step of body) {
    yield step;
    if ('body' in step) yield* stepsIn(step.body);
  }
}

/** A number that may differ by size, in one of them; `null` where the size has none. */
export function inSize(count: readonly (number | null)[], size: number): number | null {
  return (count.length === 1 ? count[0] : count[size]) ?? null;
}
