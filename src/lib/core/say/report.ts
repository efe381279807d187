/** A plan as something to read: plain text, Markdown, or a table of comma-separated values. */

import type { CheckJson, NeedleJson, PlanJson, StageJson } from './contract.ts';
import { stitches } from './counting.ts';

/** Plain text for a terminal: one paragraph per stage. */
export function planText(plan: PlanJson): string {
  const head = [titleOf(plan), `On ${plan.setup.name}.`];
  const stages = plan.stages.map((stage) => stageLines(stage).join('\n'));
  return [head.join('\n'), ...stages, ...troubleLines(plan)].join('\n\n') + '\n';
}

function titleOf(plan: PlanJson): string {
  return plan.size === '' ? plan.title : `${plan.title}, size ${plan.size}`;
}

function stageLines(stage: StageJson): string[] {
  return [
    `${stage.name} (line ${stage.line}), ${workedWords(stage)}: ${totals(stage)}`,
    ...stage.start.map((needle) => `  ${needleWords(needle)}`),
    ...(stage.impossible ? [`  ${stage.impossible.message}`] : []),
    ...stage.checks.map((check) => `  ${checkWords(check)}`)
  ];
}

function workedWords(stage: StageJson): string {
  return stage.worked === 'flat' ? 'back and forth' : 'in the round';
}

function totals(stage: StageJson): string {
  const { start, end } = stage.total;
  return start === end ? stitches(end) : `${start} → ${stitches(end)}`;
}

/** "N1 A 17 (instep 17), starts k, ends p, marker m1 after 8". */
function needleWords(needle: NeedleJson): string {
  const group = needle.group ? ` ${needle.group}` : '';
  const sections = needle.sections.map((section) => `${section.name} ${section.stitches}`).join(' + ');
  const ends = needle.firstIs === '' ? '' : `, starts ${needle.firstIs}, ends ${needle.lastIs}`;
  const markers = needle.markers.map((marker) => `, marker ${marker.name} after ${marker.after}`).join('');
  const state = needle.state === 'resting' ? ', rests' : '';
  return `${needle.number} ${needle.needle}${group} ${needle.stitches}${sections ? ` (${sections})` : ''}${ends}${markers}${state}`;
}

function checkWords(check: CheckJson): string {
  const fix = check.fix ? ` Better: ${check.fix.loads.join('/')}.` : '';
  return `${check.severity}: ${check.message}${fix}`;
}

function troubleLines(plan: PlanJson): string[] {
  const lines = plan.diagnostics.map(
    ({ severity, line, column, message, remedy }) =>
      `line ${line}:${column} ${severity}: ${message}${remedy ? ` ${remedy}` : ''}`
  );
  return lines.length > 0 ? [lines.join('\n')] : [];
}

/** Markdown: a table of stages, one column per needle. */
export function planMarkdown(plan: PlanJson): string {
  const widest = Math.max(1, ...plan.stages.map((stage) => stage.start.length));
  const numbers = Array.from({ length: widest }, (_, index) => `N${index + 1}`);
  const head = ['Stage', 'Worked', 'Stitches', ...numbers];
  const rows = plan.stages.map((stage) => [
    stage.name,
    workedWords(stage),
    totals(stage),
    ...numbers.map((_, index) => cellOf(stage.start[index]))
  ]);
  const table = [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.map(cellText).join(' | ')} |`);
  const checks = plan.stages.flatMap((stage) =>
    stage.checks.map((check) => `- **${check.severity}**, ${stage.name}: ${checkWords(check).replace(/^\w+: /u, '')}`)
  );
  const parts = [`# ${titleOf(plan)}`, `On ${plan.setup.name}.`, table.join('\n'), checks.join('\n')];
  return parts.filter((part) => part !== '').join('\n\n') + '\n';
}

function cellOf(needle: NeedleJson | undefined): string {
  if (!needle) return '';
  const sections = needle.sections.map((section) => `${section.name} ${section.stitches}`).join(', ');
  return `${needle.needle} ${needle.stitches}${sections ? `: ${sections}` : ''}`;
}

function cellText(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}

/** Comma-separated values (RFC 4180): one line per stage and needle, with a heading line. */
export function planCsv(plans: readonly PlanJson[]): string {
  const head = ['title', 'size', 'setup', 'stage', 'worked', 'at', 'number', 'needle', 'state', 'stitches', 'sections'];
  const rows = plans.flatMap((plan) =>
    plan.stages.flatMap((stage) => [
      ...stage.start.map((needle) => csvCells(plan, stage, { needle, at: 'start' })),
      ...stage.end.map((needle) => csvCells(plan, stage, { needle, at: 'end' }))
    ])
  );
  return [head, ...rows].map((cells) => cells.map(csvCell).join(',')).join('\r\n') + '\r\n';
}

function csvCells(
  plan: PlanJson,
  stage: StageJson,
  on: { readonly needle: NeedleJson; readonly at: string }
): string[] {
  const { needle, at } = on;
  const sections = needle.sections.map((section) => `${section.name} ${section.stitches}`).join('; ');
  const head = [plan.title, plan.size, plan.setup.id, stage.name, stage.worked, at];
  return [...head, needle.number, needle.needle, needle.state, String(needle.stitches), sections];
}

// A cell that a spreadsheet would take for a formula is kept as text.
function csvCell(text: string): string {
  const safe = /^[=+\-@\t\r]/u.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
