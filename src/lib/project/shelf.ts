/** Where the browser keeps the open project. Every write is over when the call returns, so a closed tab loses nothing. */

import { parseProject, type ProjectOutcome } from './project.ts';

/** The name under which the project is kept. */
export const PROJECT_KEY = 'roundsplit.project';

/** The part of the browser's storage that is used. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem'>;

/** The browser's own shelf, or `null` where it is switched off. */
export function browserShelf(): Shelf | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}

/** The project on the shelf; `null` when there is none. */
export function takeProject(shelf: Shelf): ProjectOutcome | null {
  const json = shelf.getItem(PROJECT_KEY);
  return json === null ? null : parseProject(json);
}

/** What lies on the shelf, as it is. */
export function takeAsIs(shelf: Shelf): string {
  return shelf.getItem(PROJECT_KEY) ?? '';
}

/** Keeps a printed project; `false` when the browser has no room for it. What was kept before stays then. */
export function putProject(shelf: Shelf, json: string): boolean {
  try {
    shelf.setItem(PROJECT_KEY, json);
    return true;
  } catch {
    return false;
  }
}
