/** For every gap of a stage, all that speaks against a break there, gathered over the rows. */

import { REASONS, type Reason } from '../model/judgement.ts';
import type { Settings } from '../model/settings.ts';
import { BOR } from '../model/ring.ts';
import { findingsAt, type Finding } from './gap-findings.ts';
import { neighboursOf } from './neighbours.ts';
import type { Track } from './track.ts';

/** A gap with its price over the stage. */
export interface GapPrice {
  /** Gap of the start ring. */
  readonly gap: number;
  /** Whole number, summed over the rows; Infinity when no break may lie here. */
  readonly price: number;
  readonly reasons: readonly Reason[];
}

/** Rounds of plain fabric after which a break is told as a ladder (ours). */
const LADDER_ROUNDS = 20;

/** Judges every gap over every row of a stage. Time grows with distinct rows × stitches. */
export function judgeGaps(track: Track, settings: Settings): GapPrice[] {
  const gathered = Array.from({ length: track.stitches }, () => new Map<string, Gathered>());
  for (const effect of track.effects) {
    const neighbours = neighboursOf(effect.row);
    gathered.forEach((reasons, gap) => {
      for (const found of findingsAt({ effect, neighbours, gap, prices: settings.prices })) {
        gather(reasons, found, effect.rows);
      }
    });
  }
  const plain = plainRounds(track);
  return gathered.map((reasons, gap) => {
    const all = [...[...reasons.values()].map((one) => reasonOf(one, gap)), ...notesAt(track, gap, plain[gap] ?? 0)];
    const blocked = all.some((reason) => reason.severity === 'blocker');
    return { gap, price: blocked ? Infinity : all.reduce((sum, reason) => sum + reason.price, 0), reasons: all };
  });
}

interface Gathered {
  readonly finding: Finding;
  price: number;
  readonly rows: number[];
}

function gather(reasons: Map<string, Gathered>, found: Finding, rows: readonly number[]): void {
  const known = reasons.get(found.code) ?? { finding: found, price: 0, rows: [] };
  known.rows.push(...rows);
  known.price += found.price * rows.length;
  reasons.set(found.code, known);
}

function reasonOf(gathered: Gathered, gap: number): Reason {
  const { code, detail, about } = gathered.finding;
  const rows = [...gathered.rows].sort((left, right) => left - right);
  return { code, severity: REASONS[code], break: gap, needle: null, rows, price: gathered.price, detail, about };
}

function plainRounds(track: Track): number[] {
  const rounds = new Array<number>(track.stitches).fill(0);
  for (const { row, rows, before } of track.effects) {
    if (row.shape !== 'round') continue;
    const { first, last } = neighboursOf(row);
    before.forEach((place, gap) => {
      const plain = first[place]?.operation.family === 'knit' && last[place]?.operation.family === 'knit';
      if (plain) rounds[gap]! += rows.length;
    });
  }
  return rounds;
}

function notesAt(track: Track, gap: number, plain: number): Reason[] {
  const { start } = track.stage;
  const rows = track.stage.rows.map((_, index) => index);
  const note = (code: Reason['code'], detail: Reason['detail'], about: string): Reason => {
    return {
      code,
      severity: 'note',
      break: gap,
      needle: null,
      rows: rows.length > 0 ? rows : [0],
      price: 0,
      detail,
      about
    };
  };
  const notes = start.markers
    .filter((marker) => marker.kind === 'ring' && marker.at % start.stitches.length === gap)
    .map((marker) => note('marker-at-end', {}, marker.name === BOR ? BOR : marker.name));
  if (start.sections.length > 0 && !isSectionEdge(track, gap)) notes.push(note('off-section', {}, ''));
  if (plain >= LADDER_ROUNDS) notes.push(note('ladder', { rows: plain }, ''));
  return notes;
}

/** Whether a section of the start ring begins or ends in a gap. */
export function isSectionEdge(track: Track, gap: number): boolean {
  const { sections, stitches } = track.stage.start;
  return sections.some((run) => run.from === gap || run.to % stitches.length === gap);
}
