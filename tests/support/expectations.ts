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

function stageIndex(plan: PlanJson, match: string): number {
  const same = plan.stages.findIndex(({ name }) => plain(name) === plain(match));
  return same >= 0 ? same : plan.stages.findIndex(({ name }) => plain(name).includes(plain(match)));
}

// A set-up row that ends with "Turn." belongs to the round before it and to the flat work behind it.
function isSetUp(plan: PlanJson, index: number): boolean {
  const [stage, next] = [plan.stages[index]!, plan.stages[index + 1]];
  return stage.worked === 'round' && stage.rows.length <= 2 && next?.worked === 'flat';
}

// The first move of a stage is made before its first row: what is told for its start is then how the stage before ended.
function startOf(
  plan: PlanJson,
  index: number,
  expected: readonly number[] | null | undefined,
  flat: boolean
): readonly number[] {
  const loads = (needles: StageJson['start']) => needles.map(({ stitches }) => stitches);
  const before = plan.stages[index - 1];
  const ended = before ? loads(before.end) : [];
  return expected && before && sameLoads(expected, ended, flat) ? ended : loads(plan.stages[index]!.start);
}

function differencesInStage(plan: PlanJson, told: ExpectedStage): string[] {
  const index = stageIndex(plan, told.match);
  const stage = plan.stages[index];
  if (!stage) return [`no stage ${told.match}`];
  const flat = told.worked === 'flat';
  const differs = (what: string, expected: unknown, found: unknown) =>
    expected === null || expected === undefined || expected === found ? [] : [`${what} ${found}, expected ${expected}`];
  const loads = (what: string, expected: ExpectedStage['loadsStart'], found: readonly number[]) =>
    !expected || sameLoads(expected, found, flat) ? [] : [`${what} ${found.join('-')}, expected ${expected.join('-')}`];
  return [
    ...(flat && isSetUp(plan, index) ? [] : differs('worked', told.worked, stage.worked)),
    ...differs('starts with', told.totalStart, stage.total.start),
    ...differs('ends with', told.totalEnd, stage.total.end),
    ...loads('starts on', told.loadsStart, startOf(plan, index, told.loadsStart, flat)),
    ...loads(
      'ends on',
      told.loadsEnd,
      stage.end.map(({ stitches }) => stitches)
    ),
    ...(told.rows ?? []).flatMap((row) => differencesInRow(stage, row))
  ].map((difference) => `${told.match}: ${difference}`);
}

// In flat stages the needle in work comes first: any rotation will do. Stitches that wait on a holder may be left out there.
function sameLoads(expected: readonly number[], found: readonly number[], flat: boolean): boolean {
  if (!flat) return expected.join('-') === found.join('-');
  return found.some((_, turn) => {
    const turned = [...found.slice(turn), ...found.slice(0, turn)];
    return `${turned.join('-')}-`.startsWith(`${expected.join('-')}-`);
  });
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
