/** Reads what the options name: files, set-ups, sizes. */

import { knitText, SETUP_IDS, setupNamed, type SetupId, type Workpiece } from '$lib/core/index.ts';
import type { Io } from './io.ts';

/** The command was used wrongly; the message says how and what would be right. */
export class WrongUsage extends Error {}

/** Reads and knits the pattern in a file. */
export function openPattern(file: string, io: Io): Workpiece {
  let text: string;
  try {
    text = io.read(file);
  } catch (error) {
    throw new WrongUsage(`cannot read ${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
  return knitText(text);
}

/** The set-ups that are named; all of them for "all", and `fallback` when none is. */
export function setupsNamed(names: readonly string[], fallback: readonly SetupId[]): readonly SetupId[] {
  if (names.length === 0) return fallback;
  const named = names
    .filter((name) => name !== 'all')
    .map((name) => {
      const setup = setupNamed(name);
      if (!setup) throw new WrongUsage(`there is no set-up "${name}"; choose from ${SETUP_IDS.join(', ')} or all`);
      return setup.id;
    });
  return named.length < names.length ? SETUP_IDS : named;
}

/** Indices of the sizes that are named; all of them for "all", and the first when none is named and `all` is not asked. */
export function sizesNamed(
  names: readonly string[],
  workpiece: Workpiece,
  fallback: 'first' | 'all'
): readonly number[] {
  const { sizes } = workpiece.pattern;
  if (names.length === 0) return fallback === 'all' ? sizes.map((_, index) => index) : [0];
  const named = names
    .filter((name) => name.toLowerCase() !== 'all')
    .map((name) => {
      const index = sizes.findIndex((size) => size.toLowerCase() === name.trim().toLowerCase());
      if (index < 0) throw new WrongUsage(`there is no size "${name}"; ${knownSizes(sizes)}`);
      return index;
    });
  return named.length < names.length ? sizes.map((_, index) => index) : named;
}

function knownSizes(sizes: readonly string[]): string {
  return sizes.length === 1 && sizes[0] === '' ? 'the pattern has only one' : `the pattern has ${sizes.join(', ')}`;
}

/** Exit code for a pattern: 1 when reading or knitting found an error. */
export function patternCode(workpiece: Workpiece): 0 | 1 {
  return workpiece.diagnostics.some((diagnostic) => diagnostic.severity === 'error') ? 1 : 0;
}
