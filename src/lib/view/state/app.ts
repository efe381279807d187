/** The pieces of state that the whole app shares, handed down from the layout. */

import { createContext } from 'svelte';
import { Bench } from './bench.svelte.ts';
import { Caret } from './caret.svelte.ts';
import { Keeper } from './keeper.svelte.ts';
import { Session } from './session.svelte.ts';
import { Taste } from './taste.svelte.ts';
import { Workroom } from './workroom.svelte.ts';

/** Everything a page may ask for. */
export interface App {
  readonly workroom: Workroom;
  readonly session: Session;
  readonly taste: Taste;
  readonly bench: Bench;
  readonly keeper: Keeper;
  readonly caret: Caret;
}

const [take, put] = createContext<App>();

/** The app's state, in a page or component under the layout. */
export const useApp = take;

/** Makes the app's state and hands it down. */
export function provideApp(): App {
  const workroom = new Workroom();
  const session = new Session(workroom);
  const taste = new Taste();
  return put({
    workroom,
    session,
    taste,
    bench: new Bench(session, taste),
    keeper: new Keeper(),
    caret: new Caret()
  });
}
