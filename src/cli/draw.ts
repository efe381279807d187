/** `roundsplit draw`: one stage on one set-up as a picture. */

import { drawMoment, momentAt, planWorkpiece, type Moment, type Plan, type Stage } from '$lib/core/index.ts';
import { svgText } from '$lib/drawing/render.ts';
import { toPdf, toPng } from './formats.ts';
import type { Io } from './io.ts';
import { openPattern, patternCode, setupsNamed, sizesNamed, WrongUsage } from './usage.ts';

/** Options of the command, as commander reads them. */
export interface DrawCommandOptions {
  readonly on: string;
  readonly size?: string;
  readonly stage?: string;
  readonly row?: string;
  readonly mirrored: boolean;
  readonly theme: 'light' | 'dark' | 'print';
  readonly out?: string;
}

/** Draws and writes the picture. Exit code 1 when the pattern has errors. */
export async function drawCommand(file: string, options: DrawCommandOptions, io: Io): Promise<number> {
  const write = writerFor(options.out, io);
  const workpiece = openPattern(file, io);
  const setup = onlyOne(setupsNamed([options.on], ['dpn-5']), 'set-up');
  const size = onlyOne(sizesNamed(options.size ? [options.size] : [], workpiece, 'first'), 'size');
  const plan = planWorkpiece(workpiece, { setup, size });
  const moment = momentNamed(plan, options);
  const picture = drawMoment(moment, { mirrored: options.mirrored, theme: options.theme });
  await write(svgText(picture));
  return patternCode(workpiece);
}

function onlyOne<T>(found: readonly T[], what: string): T {
  if (found.length !== 1) throw new WrongUsage(`draw takes one ${what}, not all`);
  return found[0]!;
}

function momentNamed(plan: Plan, options: DrawCommandOptions): Moment {
  const stages = plan.stages.map((planned) => planned.stage);
  const stage = options.stage === undefined ? 0 : stageNamed(stages, options.stage);
  const row = options.row === undefined ? 0 : rowNamed(stages[stage]!, options.row);
  const moment = stages.length > 0 ? momentAt(plan, { stage, row, pass: 0 }) : null;
  if (!moment) throw new WrongUsage('there is nothing to draw: no stitches lie on the needles in this stage');
  return moment;
}

// An equal heading wins, otherwise the first one that contains the words.
function stageNamed(stages: readonly Stage[], name: string): number {
  const wanted = name.trim().toLowerCase();
  const equal = stages.findIndex((stage) => stage.name.toLowerCase() === wanted);
  const found = equal >= 0 ? equal : stages.findIndex((stage) => stage.name.toLowerCase().includes(wanted));
  if (found >= 0) return found;
  throw new WrongUsage(`there is no stage "${name}"; the pattern has ${stages.map((stage) => stage.name).join(', ')}`);
}

function rowNamed(stage: Stage, label: string): number {
  const found = stage.rows.findIndex((row) => row.label.toLowerCase() === label.trim().toLowerCase());
  if (found >= 0) return found;
  const labels = [...new Set(stage.rows.map((row) => row.label))];
  throw new WrongUsage(`${stage.name} has no row "${label}"; it has ${labels.join(', ')}`);
}

function writerFor(path: string | undefined, io: Io): (svg: string) => Promise<void> {
  if (path === undefined) return async (svg) => io.out(`${svg}\n`);
  const ending = path.toLowerCase().split('.').at(-1);
  if (ending === 'svg') return async (svg) => save(path, `${svg}\n`, io);
  if (ending === 'png') return async (svg) => save(path, await toPng(svg), io);
  if (ending === 'pdf') return async (svg) => save(path, await toPdf(svg), io);
  throw new WrongUsage(`--out ${path}: the name must end in .svg, .png or .pdf`);
}

function save(path: string, data: string | Uint8Array, io: Io): void {
  try {
    io.write(path, data);
  } catch (error) {
    throw new WrongUsage(`cannot write ${path}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
