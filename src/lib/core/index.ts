/** The front door of the core: everything outside imports from here and only from here. */

export { knitText, lineFinder, planJson, planWorkpiece } from './compile.ts';
export type { PlanChoice, Workpiece } from './compile.ts';

export type { Diagnostic, DiagnosticSeverity } from './model/diagnostic.ts';
export type { Fabric, Held, Row, Stage, Step } from './model/fabric.ts';
export { REASONS } from './model/judgement.ts';
export type { Reason, ReasonCode, Severity } from './model/judgement.ts';
export { layoutFromLoads, loadsOf } from './model/layout.ts';
export type { Layout } from './model/layout.ts';
export { mirrorPattern } from './model/mirror.ts';
export { MOST_TEXT } from './model/limits.ts';
export type { HeldStitch, Moment, NeedleMoment, NeedleState } from './model/moment.ts';
export type { Operation } from './model/operation.ts';
export { operationNamed } from './model/operations.ts';
export type { Pattern, Side } from './model/pattern.ts';
export type * from './model/picture.ts';
export type { Distribution, Judged, Plan, StagePlan } from './model/plan.ts';
export type { Ring } from './model/ring.ts';
export { DEFAULT_SETTINGS } from './model/settings.ts';
export type { Prices, Settings } from './model/settings.ts';
export { SETUP_IDS, SETUPS, setupNamed } from './model/setup.ts';
export type { Letter, Setup, SetupId } from './model/setup.ts';
export type { Span } from './model/span.ts';

export { between } from './draw/between.ts';
export { drawMoment } from './draw/draw.ts';
export type { DrawOptions } from './draw/draw.ts';

export type * from './say/contract.ts';
export { sayMoment } from './say/moments.ts';
export { writePattern } from './say/pattern-text.ts';
export { planCsv, planMarkdown, planText } from './say/report.ts';
export { sayImpossible, sayReason } from './say/reasons.ts';
export { sayRow } from './say/rows.ts';

export { gapPrices, judgeLayout } from './solve/judge.ts';
export type { GapPrice } from './solve/judge.ts';
export { momentAt, passCount } from './solve/moment.ts';
export type { MomentAt } from './solve/moment.ts';
export { breaksByRow } from './solve/passes.ts';

export { patternLanguage } from './text/language.ts';
