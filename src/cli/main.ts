#!/usr/bin/env node
/** Starts the command line: `roundsplit COMMAND FILE`. */

import { PROCESS_IO } from './io.ts';
import { run } from './run.ts';

process.stdout.on('error', endQuietlyWhenReaderLeft);

process.exitCode = await run(process.argv.slice(2), PROCESS_IO);

/** `roundsplit … | head` closes the pipe early; that is no failure. */
function endQuietlyWhenReaderLeft(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
}
