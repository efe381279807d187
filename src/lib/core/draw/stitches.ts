/** Puts the stitches of every needle on its track, and the markers among them. */

import type { HeldStitch } from '../model/moment.ts';
import type { DrawnStitch } from '../model/picture.ts';
import { from } from './geometry.ts';
import { onTrack, poseOf, poseOfMarker, type Seat, type Table } from './seats.ts';
import type { Sheet } from './sheet.ts';

/** How many yarn tones there are; sections take them in the order of the ring. */
const TONES = 5;

/** Draws every stitch and every marker, and keeps their room. */
export function putStitches(sheet: Sheet, table: Table): void {
  const tones = tonesOf(table);
  table.seats.forEach((seat, track) => {
    seat.needle.stitches.forEach((stitch, place) => {
      const drawn = drawStitch(table, seat, { stitch, place, track });
      sheet.stitches.push({ ...drawn, tone: tones.get(stitch.section) ?? 0 });
      keepRoom(sheet, drawn, table.scale.depth);
    });
    putMarkers(sheet, table, seat);
  });
}

/** The tone of each section, by name; `null` stands for stitches of none. */
function tonesOf({ seats }: Table): Map<string | null, number> {
  const names = seats.flatMap((seat) => seat.needle.stitches.map((stitch) => stitch.section));
  return new Map([...new Set(names)].map((name, index) => [name, index % TONES]));
}

interface Placed {
  readonly stitch: HeldStitch;
  readonly place: number;
  readonly track: number;
}

function drawStitch({ scale }: Table, seat: Seat, { stitch, place, track }: Placed): DrawnStitch {
  const at = seat.beads.stitches[place]!;
  const { face, loop, crossed } = stitch;
  return {
    id: `stitch:${stitch.id}`,
    opacity: 1,
    ...poseOf(seat, at),
    size: scale.pitch,
    flip: 1,
    face,
    loop,
    crossed,
    tone: 0,
    quiet: seat.needle.state === 'resting',
    rows: scale.rows,
    track,
    along: onTrack(seat, at) / seat.track.length
  };
}

// From the top of the loop to the last row of fabric.
function keepRoom(sheet: Sheet, stitch: DrawnStitch, depth: number): void {
  const radius = stitch.size / 2;
  const steps = Math.max(1, Math.ceil(depth / stitch.size));
  const outs = Array.from({ length: steps + 1 }, (_, step) => ((depth - radius) * step) / steps);
  const points = outs.map((out) => from(stitch, 0, out));
  sheet.room.takePoints(points, radius * 1.1);
}

function putMarkers(sheet: Sheet, { scale }: Table, seat: Seat): void {
  for (const bead of seat.beads.markers) {
    const { hung } = bead;
    const pose = poseOfMarker(seat, bead);
    sheet.markers.push({
      id: markerId(hung.name),
      opacity: 1,
      ...pose,
      kind: hung.kind,
      size: scale.pitch,
      bor: hung.bor
    });
    sheet.room.takePoints([from(pose, 0, -scale.pitch * 0.4), from(pose, 0, scale.pitch * 0.5)], scale.pitch * 0.4);
  }
}

/** The id of a marker's ring. Names are unique in a ring. */
export function markerId(name: string): string {
  return `marker:${name}`;
}
