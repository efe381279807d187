/** What is good to know about a break in each gap, and costs nothing. */

import type { Reason, ReasonCode } from '../model/judgement.ts';
import { wrap } from '../model/ring.ts';
import { neighboursOf } from './neighbours.ts';
import { rowCount, type Effect, type Track } from './track.ts';

/** Rounds of plain fabric after which a break is told as a ladder (ours). */
const LADDER_ROUNDS = 20;

/** The notes about every gap of the start ring. Time grows with distinct rows × stitches. */
export function notesOf(track: Track): Reason[][] {
  const plain = plainRounds(track);
  const hung = hungMarkers(track);
  const hasSections = track.stage.start.sections.length > 0;
  const allRows = Array.from({ length: rowCount(track.stage) }, (_, row) => row);
  return Array.from({ length: track.stitches }, (_, gap) => {
    const note = (code: ReasonCode, rows: readonly number[], more: Partial<Reason> = {}): Reason => ({
      ...{ code, rows, severity: 'note', break: gap, needle: null, price: 0, detail: {}, about: '' },
      ...more
    });
    const markers = hung[gap]!;
    const notes: Reason[] = [];
    if (markers.size > 0)
      notes.push(note('marker-at-end', markerRows(markers), { about: [...markers.keys()].join(', ') }));
    if (hasSections && !isSectionEdge(track, gap)) notes.push(note('off-section', allRows));
    if (plain[gap]! >= LADDER_ROUNDS) notes.push(note('ladder', allRows, { detail: { rows: plain[gap]! } }));
    return notes;
  });
}

/** Whether a section of the start ring begins or ends in a gap. */
export function isSectionEdge(track: Track, gap: number): boolean {
  const { sections, stitches } = track.stage.start;
  return sections.some((run) => run.from === gap || run.to % stitches.length === gap);
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

/** Ring markers by name, with the rows before which they hang in a gap. */
type Hung = Map<string, number[]>;

function hungMarkers(track: Track): Hung[] {
  const hung = Array.from({ length: track.stitches }, (): Hung => new Map());
  const { stage, effects } = track;
  if (stage.rows.length === 0)
    hang(
      hung,
      hung.map((_, gap) => gap),
      { ring: stage.start, rows: [0] }
    );
  for (const { row, rows, before } of effects) hang(hung, before, { ring: row.before, rows });
  return hung;
}

function hang(
  hung: readonly Hung[],
  places: readonly number[],
  { ring, rows }: { readonly ring: Effect['row']['before']; readonly rows: readonly number[] }
): void {
  for (const { kind, name, at } of ring.markers) {
    if (kind !== 'ring') continue;
    places.forEach((place, gap) => {
      if (place !== wrap(at, ring.stitches.length)) return;
      hung[gap]!.set(name, [...(hung[gap]!.get(name) ?? []), ...rows]);
    });
  }
}

function markerRows(markers: Hung): number[] {
  return [...new Set([...markers.values()].flat())].sort((left, right) => left - right);
}
