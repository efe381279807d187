/** The gaps that ought to be breaks: the BOR, the ends of a flat run, section edges that shaping follows. */

import type { Settings } from '../model/settings.ts';
import { wrap } from '../model/ring.ts';
import { isSectionEdge } from './gap-reasons.ts';
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
  const { stage } = track;
  const rounds = stage.rows.flatMap((row, index) => (row.shape === 'round' ? [index] : []));
  const borRows = stage.rows.length === 0 ? [0] : rounds;
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

function edgeRows(track: Track): Map<number, readonly number[]> {
  const { stage, stitches } = track;
  const edges = new Map<number, readonly number[]>();
  if (stage.shape === 'flat') {
    const rows = Array.from({ length: rowCount(stage) }, (_, row) => row);
    if (stage.run.to - stage.run.from < stitches) {
      edges.set(wrap(stage.run.from, stitches), rows);
      edges.set(wrap(stage.run.to, stitches), rows);
    }
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
