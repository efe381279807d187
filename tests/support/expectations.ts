/** Pattern texts with numbers told beforehand, and how they differ from what comes out. */

import { readdirSync, readFileSync } from 'node:fs';
import { knitText, planJson, planWorkpiece, type PlanJson, type SetupId } from '$lib/core/index.ts';

/** What is expected of a text on one set-up in one size; see tests/published/patterns/README.md. */
export interface Expectation {
  readonly pattern: string;
  readonly setup: SetupId;
  readonly size: string | null;
  readonly stages: readonly ExpectedStage[];
  readonly diagnostics: readonly ExpectedDiagnostic[];
}

interface ExpectedStage {
  readonly match: string;
  readonly totalStart?: number | null;
  readonly totalEnd?: number | null;
  readonly loadsStart?: readonly number[] | null;
  readonly loadsEnd?: readonly number[] | null;
  readonly worked?: string | null;
  readonly rows?: readonly {
    readonly label: string;
    readonly unworked?: readonly [number, number] | null;
    readonly after: number;
  }[];
}

interface ExpectedDiagnostic {
  readonly code?: string;
  readonly line: number;
  readonly expected?: number;
  readonly found?: number;
}

type StageJson = PlanJson['stages'][number];

/** Names of the expectation files of a folder. */
export function expectationsIn(folder: URL): string[] {
  return readdirSync(folder).filter((name) => name.endsWith('.expect.json'));
}

/** Everything in which a text differs from what is expected of it, in words; empty when it agrees. */
export function differencesOf(folder: URL, name: string): string[] {
  const expected = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Expectation;
  const workpiece = knitText(readFileSync(new URL(expected.pattern, folder), 'utf8'));
  const { sizes } = workpiece.pattern;
  const size = expected.size === null ? 0 : sizes.findIndex((known) => plain(known) === plain(expected.size ?? ''));
  if (size < 0) return [`size ${expected.size} is not among ${sizes.join(', ')}`];
  const plan = planJson(workpiece, planWorkpiece(workpiece, { setup: expected.setup, size }));
  return [
    ...troubles(plan, expected.diagnostics),
    ...expected.stages.flatMap((stage) => differencesInStage(plan, stage))
  ];
}

function troubles(plan: PlanJson, expected: readonly ExpectedDiagnostic[]): string[] {
  const found = plan.diagnostics.filter(({ severity }) => severity !== 'note');
  const isSame = (told: ExpectedDiagnostic) => (one: PlanJson['diagnostics'][number]) =>
    (told.code === undefined || one.code === told.code) &&
    one.line === told.line &&
    (told.expected === undefined || one.expected === told.expected) &&
    (told.found === undefined || one.found === told.found);
  const missing = expected.filter((told) => !found.some(isSame(told)));
  const more = found.filter((one) => !expected.some((told) => isSame(told)(one)));
  return [
    ...missing.map((told) => `no ${told.code ?? 'trouble'} at line ${told.line}`),
    ...more.map((one) => `line ${one.line}: ${one.code}: ${one.message}`)
  ];
}

function plain(name: string): string {
  return name.toLowerCase().replaceAll(/[#:]/gu, '').replaceAll(/\s+/gu, ' ').trim();
}

function differencesInStage(plan: PlanJson, told: ExpectedStage): string[] {
  const stage =
    plan.stages.find(({ name }) => plain(name) === plain(told.match)) ??
    plan.stages.find(({ name }) => plain(name).includes(plain(told.match)));
  if (!stage) return [`no stage ${told.match}`];
  const flat = told.worked === 'flat';
  const differs = (what: string, expected: unknown, found: unknown) =>
    expected === null || expected === undefined || expected === found ? [] : [`${what} ${found}, expected ${expected}`];
  const loads = (what: string, expected: ExpectedStage['loadsStart'], found: readonly number[]) =>
    !expected || sameLoads(expected, found, flat) ? [] : [`${what} ${found.join('-')}, expected ${expected.join('-')}`];
  return [
    ...differs('worked', told.worked, stage.worked),
    ...differs('starts with', told.totalStart, stage.total.start),
    ...differs('ends with', told.totalEnd, stage.total.end),
    ...loads(
      'starts on',
      told.loadsStart,
      stage.start.map(({ stitches }) => stitches)
    ),
    ...loads(
      'ends on',
      told.loadsEnd,
      stage.end.map(({ stitches }) => stitches)
    ),
    ...(told.rows ?? []).flatMap((row) => differencesInRow(stage, row))
  ].map((difference) => `${told.match}: ${difference}`);
}

// In flat stages the needle in work comes first: any rotation will do.
function sameLoads(expected: readonly number[], found: readonly number[], flat: boolean): boolean {
  const turns = flat ? expected.length : 1;
  return Array.from({ length: turns }, (_, turn) => [...expected.slice(turn), ...expected.slice(0, turn)]).some(
    (loads) => loads.join('-') === found.join('-')
  );
}

function differencesInRow(stage: StageJson, told: NonNullable<ExpectedStage['rows']>[number]): string[] {
  const row = stage.rows.find(({ label }) => plain(label) === plain(told.label));
  if (!row) return [`no row ${told.label}`];
  const unworked = [row.unworked.after, row.unworked.before];
  return [
    ...(row.after === told.after ? [] : [`${told.label} leaves ${row.after}, expected ${told.after}`]),
    ...(!told.unworked || told.unworked.join() === unworked.join()
      ? []
      : [`${told.label} leaves ${unworked.join()} unworked, expected ${told.unworked.join()}`])
  ];
}
