/** Every pattern text among the examples and the tests. */

import { readdirSync, readFileSync } from 'node:fs';

/** A text with its path below the project. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

const FOLDERS = ['static/examples', 'tests/published/patterns', 'tests/layouts', 'tests/pasted', 'tests/constructions'];

/** The texts of some folders and of the folders in them; by default of every folder that holds pattern texts. */
export function textsIn(folders: readonly string[] = FOLDERS): NamedText[] {
  const root = new URL('../../', import.meta.url);
  return folders.flatMap((folder) =>
    readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.txt'))
      .sort()
      .map((file) => ({ name: `${folder}/${file}`, text: readFileSync(new URL(`${folder}/${file}`, root), 'utf8') }))
  );
}
