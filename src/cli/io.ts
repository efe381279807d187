/** What the command line reads and writes; tests give it one in memory. */

import { readFileSync, writeFileSync } from 'node:fs';

/** The outside world of one run. */
export interface Io {
  /** Text of a file, or of standard input for "-". Throws when it cannot be read. */
  readonly read: (path: string) => string;
  readonly write: (path: string, data: string | Uint8Array) => void;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** Files and streams of this process. */
export const PROCESS_IO: Io = {
  read: (path) => readFileSync(path === '-' ? 0 : path, 'utf8'),
  write: (path, data) => writeFileSync(path, data),
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text)
};
