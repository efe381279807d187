/** What is kept of a project: the text and every choice made about it, as a versioned piece of JSON. */

import * as v from 'valibot';
import { DEFAULT_SETTINGS, MOST_TEXT, SETUP_IDS, type Settings } from '$lib/core/index.ts';

/** Version of the form in which a project is kept. A file of another version is refused. */
const VERSION = 1;

/** Most layouts of the knitter's own that are kept. */
const MOST_TRIED = 2_000;

const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000));
const centimetres = v.pipe(v.number(), v.minValue(5), v.maxValue(300));
const percent = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100));
const setup = v.picklist(SETUP_IDS);

const limits = v.object({
  lengthCm: v.object({
    'dpn-5': centimetres,
    'dpn-4': centimetres,
    'two-circulars': centimetres,
    'magic-loop': centimetres,
    'flexible-3': centimetres,
    'short-circular': centimetres
  }),
  stitchesPer10cm: v.pipe(v.number(), v.minValue(4), v.maxValue(100)),
  minimum: v.pipe(v.number(), v.integer(), v.minValue(2), v.maxValue(20)),
  share: v.object({ most: percent, least: percent })
});

const tried = v.object({
  size: count,
  setup,
  stage: v.pipe(v.string(), v.maxLength(400)),
  nth: count,
  stitches: count,
  breaks: v.pipe(v.array(count), v.minLength(1), v.maxLength(20))
});

const schema = v.object({
  roundsplit: v.literal('project'),
  version: v.literal(VERSION),
  text: v.pipe(v.string(), v.maxLength(MOST_TEXT)),
  former: v.nullable(v.pipe(v.string(), v.maxLength(MOST_TEXT))),
  size: count,
  setup,
  stage: count,
  row: count,
  limits,
  tried: v.pipe(v.array(tried), v.maxLength(MOST_TRIED))
});

/** The settings that the knitter may change. */
export type Limits = Pick<Settings, 'lengthCm' | 'stitchesPer10cm' | 'minimum' | 'share'>;

/** A layout of the knitter's own for one stage, in one size on one set-up. */
export type TriedLayout = Readonly<v.InferOutput<typeof tried>>;

/** A project as it is kept. */
export type Project = Readonly<Omit<v.InferOutput<typeof schema>, 'roundsplit' | 'version' | 'tried' | 'limits'>> & {
  readonly limits: Limits;
  readonly tried: readonly TriedLayout[];
};

/** What became of a piece of JSON that should be a project. */
export type ProjectOutcome =
  | { readonly kind: 'project'; readonly project: Project }
  /** Kept by another version. */
  | { readonly kind: 'other-version' }
  | { readonly kind: 'unreadable' };

/** The limits as they come. */
export const DEFAULT_LIMITS: Limits = {
  lengthCm: DEFAULT_SETTINGS.lengthCm,
  stitchesPer10cm: DEFAULT_SETTINGS.stitchesPer10cm,
  minimum: DEFAULT_SETTINGS.minimum,
  share: DEFAULT_SETTINGS.share
};

/** Reads a project; nothing in the JSON is trusted. */
export function parseProject(json: string): ProjectOutcome {
  const value = parseJson(json);
  const result = v.safeParse(schema, value);
  if (result.success) return { kind: 'project', project: fieldsOf(result.output) };
  return { kind: isOtherVersion(value) ? 'other-version' : 'unreadable' };
}

/** Writes a project; reading it again gives the same project. */
export function printProject(project: Project): string {
  return JSON.stringify({ roundsplit: 'project', version: VERSION, ...project });
}

function fieldsOf(output: v.InferOutput<typeof schema>): Project {
  const { text, former, size, setup, stage, row, limits, tried } = output;
  return { text, former, size, setup, stage, row, limits, tried };
}

function parseJson(json: string): unknown {
  try {
    return JSON.parse(json) as unknown;
  } catch {
    return null;
  }
}

function isOtherVersion(value: unknown): boolean {
  const head = v.object({ roundsplit: v.literal('project'), version: v.number() });
  return v.is(head, value) && value.version !== VERSION;
}
