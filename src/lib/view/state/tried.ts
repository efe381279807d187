/** The knitter's own layouts, kept by the name of the stage so that they survive changes of the text elsewhere. */

import type { Fabric, Layout, SetupId } from '$lib/core/index.ts';
import type { TriedLayout } from '$lib/project/project.ts';

/** What a layout is for. */
export interface TriedPlace {
  readonly fabric: Fabric;
  /** Index of the stage. */
  readonly stage: number;
  readonly setup: SetupId;
  readonly size: number;
}

/** The layouts that apply to a fabric on a set-up, by index of the stage. One for another count of stitches does not. */
export function triedByStage(
  tried: readonly TriedLayout[],
  fabric: Fabric,
  choice: { readonly setup: SetupId; readonly size: number }
): ReadonlyMap<number, Layout> {
  const found = new Map<number, Layout>();
  fabric.stages.forEach((_, stage) => {
    const known = tried.find((entry) => isFor(entry, { fabric, stage, ...choice }));
    const stitches = fabric.stages[stage]!.start.stitches.length;
    if (known && known.stitches === stitches && fits(known.breaks, stitches))
      found.set(stage, { breaks: known.breaks });
  });
  return found;
}

/** The list with this layout in the place of an earlier one. */
export function withTried(tried: readonly TriedLayout[], place: TriedPlace, layout: Layout): readonly TriedLayout[] {
  const stage = place.fabric.stages[place.stage];
  if (!stage) return tried;
  const entry = {
    size: place.size,
    setup: place.setup,
    stage: stage.name,
    nth: nth(place.fabric, place.stage),
    stitches: stage.start.stitches.length,
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
    entry.stage === place.fabric.stages[place.stage]?.name &&
    entry.nth === nth(place.fabric, place.stage)
  );
}

// Which of the stages of the same name it is, from 0.
function nth(fabric: Fabric, stage: number): number {
  const { name } = fabric.stages[stage]!;
  return fabric.stages.slice(0, stage).filter((other) => other.name === name).length;
}

function fits(breaks: readonly number[], stitches: number): boolean {
  return breaks.every((gap, index) => gap < stitches && (index === 0 || gap > breaks[index - 1]!));
}
