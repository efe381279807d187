/** Turns a plan into the JSON of the public contract. */

import type { Diagnostic } from '../model/diagnostic.ts';
import type { Row, Stage } from '../model/fabric.ts';
import type { Reason } from '../model/judgement.ts';
import type { Moment, NeedleMoment } from '../model/moment.ts';
import type { Judged, Plan, StagePlan } from '../model/plan.ts';
import { wrap } from '../model/ring.ts';
import type {
  AlternativeJson,
  CheckJson,
  DiagnosticJson,
  NeedleJson,
  PlanJson,
  RowJson,
  StageJson
} from './contract.ts';
import { sayImpossible, sayReason } from './reasons.ts';
import { sayRow } from './rows.ts';

/** What is computed elsewhere and needed here, so that `say` depends on nothing but the model. */
export interface JsonSources {
  /** The moment at the start of a row; `null` when the stage has no layout. */
  readonly momentOf: (stage: number, row: number) => Moment | null;
  /** Breaks before each row, and after the last. */
  readonly breaksOf: (stage: StagePlan) => readonly (readonly number[])[];
  /** Line and column, both from 1, of an offset. */
  readonly placeOf: (offset: number) => { readonly line: number; readonly column: number };
  readonly diagnostics: readonly Diagnostic[];
}

/** The plan as JSON. */
export function toJson(plan: Plan, sources: JsonSources): PlanJson {
  const { fabric, setup } = plan;
  return {
    roundsplit: 1,
    title: fabric.title,
    size: fabric.size,
    sizes: fabric.sizes,
    setup: { id: setup.id, name: setup.name, holds: setup.holds, needles: setup.needles },
    stages: plan.stages.map((stage, index) => stageJson(stage, index, sources)),
    diagnostics: sources.diagnostics.map((diagnostic) => diagnosticJson(diagnostic, fabric.sizes, sources))
  };
}

function stageJson(planned: StagePlan, index: number, sources: JsonSources): StageJson {
  const { stage, distribution } = planned;
  const impossible = distribution.kind === 'impossible' ? distribution.because : null;
  return {
    name: stage.name,
    line: stage.line,
    worked: stage.shape,
    side: stage.side,
    total: { start: stage.entry.stitches.length, end: stage.exit.stitches.length },
    start: needlesJson(sources.momentOf(index, 0)),
    end: needlesJson(sources.momentOf(index, stage.rows.length)),
    held: stage.held.map((held) => ({ name: held.name, stitches: held.ring.stitches.length })),
    moves: [],
    rows: rowsJson(planned, sources),
    alternatives: distribution.kind === 'solved' ? distribution.best.map((best) => alternativeJson(best, stage)) : [],
    checks: checksJson(planned),
    origin: planned.origin,
    impossible: impossible ? { code: impossible.code, message: sayImpossible(impossible) } : null
  };
}

function needlesJson(moment: Moment | null): NeedleJson[] {
  return (moment?.needles ?? []).filter((needle) => needle.stitches.length > 0).map(needleJson);
}

function needleJson(needle: NeedleMoment): NeedleJson {
  return {
    number: `N${needle.number}`,
    needle: needle.letter,
    ...(needle.group ? { group: needle.group } : {}),
    state: needle.state,
    stitches: needle.stitches.length,
    sections: needle.pieces.filter((piece) => piece.name !== ''),
    markers: needle.markers,
    firstIs: needle.firstIs,
    lastIs: needle.lastIs
  };
}

function rowsJson(planned: StagePlan, sources: JsonSources): RowJson[] {
  if (!planned.chosen) return planned.stage.rows.map((row) => rowJson(row, [0]));
  const breaks = sources.breaksOf(planned);
  return planned.stage.rows.map((row, index) => rowJson(row, breaks[index]!));
}

function rowJson(row: Row, breaks: readonly number[]): RowJson {
  const ring = row.before.stitches.length;
  const before = row.run.to - row.run.from;
  const order = row.shape === 'flat' ? fromRun(row, breaks) : breaks;
  return {
    label: row.label,
    line: row.line,
    side: row.side,
    before,
    worked: row.steps.reduce((sum, step) => sum + step.takes, 0),
    after: before + row.after.stitches.length - ring,
    unworked: row.unworked,
    loads: loadsOf(order, ring),
    needles: sayRow(row, order)
  };
}

// The needle in work first.
function fromRun(row: Row, breaks: readonly number[]): readonly number[] {
  const first = breaks.indexOf(wrap(row.run.from, row.before.stitches.length));
  return first <= 0 ? breaks : [...breaks.slice(first), ...breaks.slice(0, first)];
}

function loadsOf(breaks: readonly number[], stitches: number): number[] {
  if (breaks.length === 1) return [stitches];
  return breaks.map((from, index) => wrap(breaks[(index + 1) % breaks.length]! - from, stitches));
}

function rowLabels(reason: Reason, stage: Stage): 'all' | string[] {
  if (reason.rows.length >= stage.rows.length) return 'all';
  return reason.rows.map((row) => stage.rows[row]?.label ?? '');
}

function alternativeJson(judged: Judged, stage: Stage): AlternativeJson {
  return {
    loads: judged.loads,
    breaks: judged.layout.breaks,
    price: judged.price,
    pays: judged.reasons
      .filter((reason) => reason.price > 0)
      .map((reason) => ({
        code: reason.code,
        break: reason.break,
        rows: rowLabels(reason, stage),
        price: reason.price,
        message: sayReason(reason, judged, stage)
      }))
  };
}

function checksJson(planned: StagePlan): CheckJson[] {
  const { chosen, stage, distribution } = planned;
  if (!chosen) return impossibleCheck(planned);
  const best = distribution.kind === 'solved' ? distribution.best[0]! : null;
  return chosen.reasons
    .filter((reason) => reason.code !== 'uneven-load')
    .map((reason) => ({
      severity: reason.severity,
      code: reason.code,
      stage: stage.name,
      row: stage.rows[reason.rows[0] ?? 0]?.label ?? '',
      rows: rowLabels(reason, stage),
      break: reason.break,
      detail: reason.detail,
      message: sayReason(reason, chosen, stage),
      fix: fixFor(reason, chosen, best)
    }));
}

function impossibleCheck({ distribution, stage }: StagePlan): CheckJson[] {
  if (distribution.kind !== 'impossible' || distribution.because.code === 'no-stitches') return [];
  const { because } = distribution;
  return [
    {
      severity: 'blocker',
      code: because.code,
      stage: stage.name,
      row: '',
      rows: 'all',
      break: null,
      detail: because.detail,
      message: sayImpossible(because),
      fix: null
    }
  ];
}

// The best layout is a fix when it does without the finding.
function fixFor(reason: Reason, chosen: Judged, best: Judged | null): CheckJson['fix'] {
  if (!best || reason.severity === 'note' || best.layout.breaks.join() === chosen.layout.breaks.join()) return null;
  const stays = best.reasons.some((other) => other.code === reason.code);
  return stays ? null : { loads: best.loads };
}

function diagnosticJson(diagnostic: Diagnostic, sizes: readonly string[], sources: JsonSources): DiagnosticJson {
  const { span } = diagnostic;
  return {
    severity: diagnostic.severity,
    code: diagnostic.code,
    ...sources.placeOf(span.from),
    length: span.to - span.from,
    expected: diagnostic.expected,
    found: diagnostic.found,
    message: diagnostic.message,
    remedy: diagnostic.remedy,
    sizes: diagnostic.sizes.map((size) => sizes[size] ?? '')
  };
}
