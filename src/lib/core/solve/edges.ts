/** The gaps that ought to be breaks: the BOR, the ends of a flat run, section edges that shaping follows. */

import type { Settings } from '../model/settings.ts';
import { wrap } from '../model/ring.ts';
import { isSectionEdge } from './gap-notes.ts';
import { rowCount, type Effect, type Track } from './track.ts';

/** A gap that pays when no break lies in it. */
export interface WantedBreak {
  readonly gap: number;
  readonly code: 'bor-inside-needle' | 'edge-off-break';
  /** Rows in which it is wanted. */
  readonly rows: readonly number[];
  /** Summed over these rows. */
  readonly price: number;
  /** The section whose edge it is, "" for the BOR. */
  readonly about: string;
}

/** Stitches between an edge and a decrease that still flanks it. */
const FLANK = 2;

/** All gaps of the start ring that pay when no break lies in them. */
export function wantedBreaks(track: Track, settings: Settings): WantedBreak[] {
  const borRows = rowsFromBor(track);
  const wanted: WantedBreak[] = [];
  if (borRows.length > 0) {
    const price = borRows.length * settings.prices.borInsideNeedle;
    wanted.push({ gap: 0, code: 'bor-inside-needle', rows: borRows, price, about: '' });
  }
  for (const [gap, rows] of edgeRows(track)) {
    const price = rows.length * settings.prices.edgeOffBreak;
    wanted.push({ gap, code: 'edge-off-break', rows, price, about: sectionAtEdge(track, gap) });
  }
  return wanted;
}

// Rows that begin at the BOR and go all round: every round, and flat rows over the whole ring from there.
function rowsFromBor({ stage, stitches }: Track): number[] {
  if (stage.rows.length === 0) return [0];
  const isAllFlat = stage.run.to - stage.run.from >= stitches && wrap(stage.run.from, stitches) === 0;
  return stage.rows.flatMap((row, index) => (row.shape === 'round' || isAllFlat ? [index] : []));
}

/**
 * Whether the run of a flat stage lies on one needle: it does when the rest of the ring waits and a needle that takes
 * `most` stitches can hold it in every row; a longer run, or all of the ring, is carried by several.
 */
export function liesOnOne({ stage, stitches }: Track, most: number): boolean {
  const runs = [stage.run, ...stage.rows.filter((row) => row.shape === 'flat').map((row) => row.run)];
  return stage.run.to - stage.run.from < stitches && runs.every((run) => run.to - run.from <= most);
}

function edgeRows(track: Track): Map<number, readonly number[]> {
  const { stage, stitches } = track;
  const edges = new Map<number, readonly number[]>();
  if (stage.shape === 'flat') {
    const ends = [wrap(stage.run.from, stitches), wrap(stage.run.to, stitches)];
    const rows = Array.from({ length: rowCount(stage) }, (_, row) => row);
    const isAllFromBor = ends[0] === ends[1] && ends[0] === 0;
    for (const end of isAllFromBor ? [] : ends) edges.set(end, rows);
    return edges;
  }
  for (let gap = 1; gap < stitches; gap += 1) {
    if (!isSectionEdge(track, gap)) continue;
    const rows = track.effects.filter((effect) => isFlanked(effect, gap)).flatMap((effect) => effect.rows);
    if (rows.length > 0)
      edges.set(
        gap,
        [...rows].sort((left, right) => left - right)
      );
  }
  return edges;
}

function isFlanked({ row, before }: Effect, gap: number): boolean {
  const stitches = row.before.stitches.length;
  const place = before[gap]!;
  return row.steps.some((step) => {
    if (step.operation.family !== 'decrease') return false;
    const ahead = wrap(step.from - place, stitches);
    const behind = wrap(place - step.from - step.takes, stitches);
    return ahead <= FLANK || behind <= FLANK;
  });
}

function sectionAtEdge(track: Track, gap: number): string {
  const { sections } = track.stage.start;
  return sections.find((run) => run.from === gap)?.name ?? sections.find((run) => run.to === gap)?.name ?? '';
}
