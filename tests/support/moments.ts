/** Builds moments for drawings from a few words: what lies on each needle, section by section. */

import { SETUPS, type HeldStitch, type Moment, type NeedleMoment, type SetupId } from '$lib/core/index.ts';

type Piece = NeedleMoment['pieces'][number];
type HungMarker = NeedleMoment['markers'][number];

/** What a moment is made from. */
export interface MomentPlan {
  readonly setup: SetupId;
  /** Stitches on each needle, N1 first. */
  readonly loads: readonly number[];
  /** Sections in the order of the ring, from its first stitch: "edge 8, panel 17, edge 8, - 31"; "-" for none. */
  readonly sections?: string;
  /** Markers by the gap of the ring they hang in: "m1 8, m2 25"; "*" before a name makes it a locking marker. */
  readonly markers?: string;
  /** Faces in the order of the ring, repeated: "kkpp"; s, w and d are slipped, wrapped and double stitches, x crossed ones. */
  readonly faces?: string;
  /** Index of the needle being worked; 0 by default, `null` for none. */
  readonly feeding?: number | null;
  /** Indices of needles that rest. */
  readonly resting?: readonly number[];
  readonly side?: Moment['side'];
  /** Needle and stitch of the yarn; by default the last stitch before the feeding needle. */
  readonly yarn?: Moment['yarn'];
  readonly bor?: Moment['bor'];
  readonly row?: string;
  readonly stage?: string;
  /** Number of the first stitch's id; 1 by default. */
  readonly firstId?: number;
}

/** The moment of a plan. */
export function momentOf(plan: MomentPlan): Moment {
  const setup = SETUPS[plan.setup];
  const feeding = plan.feeding === undefined ? 0 : plan.feeding;
  const ring = ringOf(plan);
  let from = 0;
  const holding = plan.loads.map((load, index) => {
    const stitches = ring.slice(from, from + load);
    const markers = markersOf(plan, { from, load });
    from += load;
    return needleOf(plan, { index, feeding, stitches, markers });
  });
  const free = freeOf(plan, feeding);
  return {
    setup,
    stage: plan.stage ?? 'Leg',
    row: plan.row ?? 'Rnd 1',
    side: plan.side ?? 'RS',
    needles: [...holding, ...free],
    feeding,
    working: feeding === null ? null : setup.works === 'free-needle' ? holding.length : feeding,
    yarn: plan.yarn === undefined ? yarnBefore(plan, feeding ?? 0) : plan.yarn,
    bor: plan.bor === undefined ? (ring.length > 0 ? { needle: 0, after: 0 } : null) : plan.bor
  };
}

const LETTERS: Readonly<Record<string, Pick<HeldStitch, 'face' | 'loop' | 'crossed'>>> = {
  k: { face: 'knit', loop: 'plain', crossed: false },
  p: { face: 'purl', loop: 'plain', crossed: false },
  s: { face: 'knit', loop: 'slipped', crossed: false },
  w: { face: 'knit', loop: 'wrapped', crossed: false },
  d: { face: 'knit', loop: 'double', crossed: false },
  x: { face: 'knit', loop: 'plain', crossed: true }
};

function ringOf(plan: MomentPlan): HeldStitch[] {
  const count = plan.loads.reduce((sum, load) => sum + load, 0);
  const sections = sectionsOf(plan);
  const faces = plan.faces ?? 'k';
  return Array.from({ length: count }, (_, index) => ({
    id: (plan.firstId ?? 1) + index,
    section: sections[index] ?? null,
    ...LETTERS[faces[index % faces.length]!]!
  }));
}

function sectionsOf({ sections = '' }: MomentPlan): (string | null)[] {
  return listOf(sections).flatMap(({ name, count }) =>
    new Array<string | null>(count).fill(name === '-' ? null : name)
  );
}

function markersOf({ markers = '' }: MomentPlan, needle: { from: number; load: number }): HungMarker[] {
  return listOf(markers)
    .map(({ name, count }) => ({ name, after: count - needle.from }))
    .filter(({ after }) => after >= 0 && after < needle.load)
    .map(({ name, after }) => ({
      name: name.replace('*', ''),
      kind: name.startsWith('*') ? 'locking' : 'ring',
      after
    }));
}

// "edge of heel 8" → name and number.
function listOf(text: string): { name: string; count: number }[] {
  const parts = text.split(',').filter((part) => part.trim() !== '');
  return parts.map((part) => {
    const words = part.trim().split(' ');
    return { name: words.slice(0, -1).join(' '), count: Number(words.at(-1)) };
  });
}

interface Held {
  readonly index: number;
  readonly feeding: number | null;
  readonly stitches: readonly HeldStitch[];
  readonly markers: readonly HungMarker[];
}

function needleOf(plan: MomentPlan, { index, feeding, stitches, markers }: Held): NeedleMoment {
  const setup = SETUPS[plan.setup];
  const state = index === feeding ? 'feeding' : plan.resting?.includes(index) ? 'resting' : 'holding';
  const group = setup.works === 'back-tip' ? (index === (feeding ?? 0) ? 'front' : 'back') : null;
  const letter = setup.works === 'back-tip' ? 'A' : setup.needles[index]!;
  return {
    letter,
    number: index + 1,
    group,
    state,
    stitches,
    markers,
    pieces: piecesOf(stitches),
    firstIs: 'k',
    lastIs: 'k'
  };
}

function piecesOf(stitches: readonly HeldStitch[]): Piece[] {
  const pieces: { name: string; stitches: number }[] = [];
  for (const { section } of stitches) {
    const last = pieces.at(-1);
    if (last?.name === (section ?? '')) last.stitches += 1;
    else pieces.push({ name: section ?? '', stitches: 1 });
  }
  return pieces;
}

function freeOf(plan: MomentPlan, feeding: number | null): NeedleMoment[] {
  const setup = SETUPS[plan.setup];
  const rest = setup.works === 'back-tip' ? [] : setup.needles.slice(plan.loads.length);
  return rest.map((letter, index) => ({
    letter,
    number: null,
    group: null,
    state: index === 0 && feeding !== null && setup.works === 'free-needle' ? 'working' : 'free',
    stitches: [],
    pieces: [],
    markers: [],
    firstIs: '',
    lastIs: ''
  }));
}

function yarnBefore({ loads }: MomentPlan, feeding: number): Moment['yarn'] {
  const needle = (feeding - 1 + loads.length) % loads.length;
  const load = loads[needle] ?? 0;
  return load > 0 ? { needle, stitch: load - 1 } : null;
}
