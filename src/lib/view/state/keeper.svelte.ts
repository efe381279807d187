/** Keeps the project in the browser at every change, and brings it back. */

import { parseProject, printProject, type Project } from '$lib/project/project.ts';
import { browserShelf, PROJECT_KEY, putProject, takeAsIs, takeProject } from '$lib/project/shelf.ts';

/** What happens to changes: kept; not kept for want of room or of a shelf; or not kept so as to spare what lies there. */
export const KEEPING = ['opening', 'kept', 'no-room', 'no-shelf', 'other-version', 'unreadable'] as const;
export type Keeping = (typeof KEEPING)[number];

/** The keeper of the one open project. */
export class Keeper {
  keeping = $state<Keeping>('opening');
  /** What was kept last, by this window or another. */
  #last = '';

  /** The kept project, or `null` when there is none that can be used. */
  take(): Project | null {
    const shelf = browserShelf();
    if (!shelf) {
      this.keeping = 'no-shelf';
      return null;
    }
    const outcome = takeProject(shelf);
    this.keeping = outcome && outcome.kind !== 'project' ? outcome.kind : 'kept';
    return outcome?.kind === 'project' ? outcome.project : null;
  }

  /** Keeps a project, unless that would overwrite something this program cannot read. */
  put(project: Project): void {
    const shelf = browserShelf();
    if (!shelf || this.keeping === 'opening' || this.isSparing) return;
    const json = printProject(project);
    if (json === this.#last) return;
    this.#last = json;
    this.keeping = putProject(shelf, json) ? 'kept' : 'no-room';
  }

  /** True while something unreadable lies on the shelf and is left alone. */
  get isSparing(): boolean {
    return this.keeping === 'other-version' || this.keeping === 'unreadable';
  }

  /** What lies on the shelf, to be saved as a file. */
  asIs(): string {
    const shelf = browserShelf();
    return shelf ? takeAsIs(shelf) : '';
  }

  /** Gives up what lies on the shelf: from now on this project is kept. */
  giveUp(): void {
    this.keeping = 'kept';
  }

  /** Hears what another window of this browser keeps. Gives back how to stop. */
  listen(adopt: (project: Project) => void): () => void {
    const hear = (event: StorageEvent) => {
      if (event.key !== PROJECT_KEY || event.newValue === null) return;
      this.#last = event.newValue;
      const outcome = parseProject(event.newValue);
      if (outcome.kind === 'project') adopt(outcome.project);
      else this.keeping = outcome.kind;
    };
    window.addEventListener('storage', hear);
    return () => window.removeEventListener('storage', hear);
  }
}
