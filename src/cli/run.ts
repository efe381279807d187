/** The commands and their options. */

import { Command, CommanderError, Option } from 'commander';
import { version } from '../../package.json';
import { SETUP_IDS } from '$lib/core/index.ts';
import { checkCommand } from './check.ts';
import { drawCommand } from './draw.ts';
import type { Io } from './io.ts';
import { planCommand } from './plan.ts';
import { WrongUsage } from './usage.ts';

/** Exit code of wrong usage. */
const WRONG_USAGE = 2;

/**
 * Runs one command.
 *
 * @returns The exit code: 0 fine, 1 the pattern has errors, 2 wrong usage.
 */
export async function run(args: readonly string[], io: Io): Promise<number> {
  let code = 0;
  const program = build(io, (result) => (code = result));
  try {
    await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : WRONG_USAGE;
    if (!(error instanceof WrongUsage)) throw error;
    io.err(`roundsplit: ${error.message}\n`);
    return WRONG_USAGE;
  }
}

function build(io: Io, finish: (code: number) => void): Command {
  const program = new Command('roundsplit')
    .description('Works out which stitches of a knitting pattern sit on which needle.')
    .version(version)
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err });
  addPlan(program, io, finish);
  addDraw(program, io, finish);
  addCheck(program, io, finish);
  return program;
}

function several(value: string, before: readonly string[]): readonly string[] {
  return [...before, value];
}

const SETUPS_HELP = `set-up: ${SETUP_IDS.join(', ')}, or all; may be given several times`;
const FILE_HELP = 'pattern text; - reads standard input';

function addPlan(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('plan')
    .description('Says for every stage which stitches sit on which needle.')
    .argument('<file>', FILE_HELP)
    .option('--on <setup>', SETUPS_HELP, several, [])
    .option('--size <size>', 'name of a size, or all; may be given several times', several, [])
    .addOption(
      new Option('--format <format>', 'what to print').choices(['text', 'json', 'markdown', 'csv']).default('text')
    )
    .action((file: string, options: Parameters<typeof planCommand>[1]) => finish(planCommand(file, options, io)));
}

function addDraw(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('draw')
    .description('Draws one stage on one set-up.')
    .argument('<file>', FILE_HELP)
    .option('--on <setup>', `set-up: ${SETUP_IDS.join(', ')}`, 'dpn-5')
    .option('--size <size>', 'name of a size; the first by default')
    .option('--stage <name>', 'heading of a stage, or a part of it; the first by default')
    .option('--row <label>', 'row of the stage as it is labelled, "Rnd 3"; the first by default')
    .option('--mirrored', 'for a left-handed knitter', false)
    .addOption(new Option('--theme <theme>', 'colours').choices(['light', 'dark', 'print']).default('light'))
    .option('--out <file>', 'ends in .svg, .png or .pdf; without it the SVG is printed')
    .action(async (file: string, options: Parameters<typeof drawCommand>[1]) =>
      finish(await drawCommand(file, options, io))
    );
}

function addCheck(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('check')
    .description('Checks every size on every set-up, one line for each finding.')
    .argument('<file>', FILE_HELP)
    .option('--on <setup>', SETUPS_HELP, several, [])
    .option('--size <size>', 'name of a size, or all; may be given several times', several, [])
    .option('--all', 'tell notes as well as blockers and awkward breaks', false)
    .action((file: string, options: Parameters<typeof checkCommand>[1]) => finish(checkCommand(file, options, io)));
}
