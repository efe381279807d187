/** For every gap of a stage, all that speaks against a break there, gathered over the rows. */

import { REASONS, type Reason } from '../model/judgement.ts';
import type { Settings } from '../model/settings.ts';
import { findingsAt, type Finding } from './gap-findings.ts';
import { neighboursOf } from './neighbours.ts';
import { notesOf } from './gap-notes.ts';
import type { Track } from './track.ts';

/** A gap with its price over the stage. */
export interface GapPrice {
  /** Gap of the start ring. */
  readonly gap: number;
  /** Whole number, summed over the rows; Infinity when no break may lie here. */
  readonly price: number;
  readonly reasons: readonly Reason[];
}

/**
 * Judges every gap over every row of a stage. Time grows with distinct rows × stitches.
 *
 * @param onOne - Whether the run of a flat stage must lie on one needle.
 */
export function judgeGaps(track: Track, settings: Settings, onOne: boolean): GapPrice[] {
  const gathered = Array.from({ length: track.stitches }, () => new Map<string, Gathered>());
  for (const effect of track.effects) {
    const neighbours = neighboursOf(effect.row);
    gathered.forEach((reasons, gap) => {
      for (const found of findingsAt({ effect, neighbours, gap, prices: settings.prices, onOne })) {
        gather(reasons, found, effect.rows);
      }
    });
  }
  const notes = notesOf(track);
  return gathered.map((reasons, gap) => {
    const all = [...[...reasons.values()].map((one) => reasonOf(one, gap)), ...notes[gap]!];
    const blocked = all.some((reason) => reason.severity === 'blocker');
    return { gap, price: blocked ? Infinity : all.reduce((sum, reason) => sum + reason.price, 0), reasons: all };
  });
}

interface Gathered {
  /** As it was met where it is worst. */
  finding: Finding;
  price: number;
  readonly rows: number[];
}

function gather(reasons: Map<string, Gathered>, found: Finding, rows: readonly number[]): void {
  const known = reasons.get(found.code) ?? { finding: found, price: 0, rows: [] };
  known.rows.push(...rows);
  known.price += found.price * rows.length;
  if ((found.detail.stitches ?? 0) > (known.finding.detail.stitches ?? 0)) known.finding = found;
  reasons.set(found.code, known);
}

function reasonOf(gathered: Gathered, gap: number): Reason {
  const { code, detail, about } = gathered.finding;
  const rows = [...gathered.rows].sort((left, right) => left - right);
  return { code, severity: REASONS[code], break: gap, needle: null, rows, price: gathered.price, detail, about };
}
