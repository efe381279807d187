#!/usr/bin/env node
/** Starts the command line: `roundsplit COMMAND FILE`. */
import { Command } from 'commander';
import { version } from '../../package.json';

process.stdout.on('error', endQuietlyWhenReaderLeft);

await new Command('roundsplit')
  .description('Works out which stitches of a knitting pattern sit on which needle.')
  .version(version)
  .exitOverride((end) => process.exit(end.exitCode === 0 ? 0 : 2))
  .action((_options, command: Command) => command.help({ error: true }))
  .parseAsync();

/** `roundsplit … | head` closes the pipe early; that is no failure. */
function endQuietlyWhenReaderLeft(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
}
