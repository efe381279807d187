/** The knitter's own layouts, kept by the name of the stage so that they survive changes of the text elsewhere. */

import type { Layout, SetupId } from '$lib/core/index.ts';
import type { TriedLayout } from '$lib/project/project.ts';
import type { StageOutline } from './answers/question.ts';

/** What is known of the stages of a pattern. */
type Stages = readonly Pick<StageOutline, 'name' | 'stitches'>[];

/** What layouts are for. */
export interface TriedChoice {
  readonly setup: SetupId;
  readonly size: number;
}

/** What one layout is for. */
export interface TriedPlace extends TriedChoice {
  readonly stages: Stages;
  /** Index of the stage. */
  readonly stage: number;
}

/** The layouts that apply to the stages on a set-up, by index of the stage. One for another count of stitches does not. */
export function triedByStage(
  tried: readonly TriedLayout[],
  stages: Stages,
  choice: TriedChoice
): ReadonlyMap<number, Layout> {
  const found = new Map<number, Layout>();
  if (tried.length === 0) return found;
  stages.forEach((_, stage) => {
    const layout = triedAt(tried, { stages, stage, ...choice });
    if (layout) found.set(stage, layout);
  });
  return found;
}

/** The layout that applies to one stage, or `null`. */
export function triedAt(tried: readonly TriedLayout[], place: TriedPlace): Layout | null {
  const known = tried.find((entry) => isFor(entry, place));
  const stitches = place.stages[place.stage]?.stitches.start;
  if (!known || known.stitches !== stitches || !fits(known.breaks, stitches)) return null;
  return { breaks: known.breaks };
}

/** The list with this layout in the place of an earlier one. */
export function withTried(tried: readonly TriedLayout[], place: TriedPlace, layout: Layout): readonly TriedLayout[] {
  const stage = place.stages[place.stage];
  if (!stage) return tried;
  const entry = {
    size: place.size,
    setup: place.setup,
    stage: stage.name,
    nth: nth(place.stages, place.stage),
    stitches: stage.stitches.start,
    breaks: [...layout.breaks]
  };
  return [...withoutTried(tried, place), entry];
}

/** The list without a layout for this place. */
export function withoutTried(tried: readonly TriedLayout[], place: TriedPlace): readonly TriedLayout[] {
  return tried.filter((entry) => !isFor(entry, place));
}

/** True when both have the same breaks. */
export function sameLayout(left: Layout | null, right: Layout | null): boolean {
  return left?.breaks.join() === right?.breaks.join();
}

function isFor(entry: TriedLayout, place: TriedPlace): boolean {
  return (
    entry.size === place.size &&
    entry.setup === place.setup &&
    entry.stage === place.stages[place.stage]?.name &&
    entry.nth === nth(place.stages, place.stage)
  );
}

// Which of the stages of the same name it is, from 0.
function nth(stages: Stages, stage: number): number {
  const { name } = stages[stage]!;
  return stages.slice(0, stage).filter((other) => other.name === name).length;
}

function fits(breaks: readonly number[], stitches: number): boolean {
  return breaks.every((gap, index) => gap < stitches && (index === 0 || gap > breaks[index - 1]!));
}
