/** Where the cursor of the editor is, and where it is asked to go. */

import type { Edit, Fix } from './answers/fixes.ts';

/** A place in the text that somebody asked for. */
export interface Wanted {
  /** Offset in the text. */
  readonly at: number;
  /** What is to be changed there; nothing when it is missing. */
  readonly edits?: readonly Edit[];
}

/** The link between lists that name places and the editor that shows them. */
export class Caret {
  /** The last place asked for; asking again for the same place is a new object. */
  wanted = $state.raw<Wanted | null>(null);
  /** The line that the cursor is in, from 1; `null` before it has been set anywhere. */
  line = $state<number | null>(null);

  ask(at: number): void {
    this.wanted = { at };
  }

  /** Asks for a change that mends a mistake. */
  mend({ edits }: Fix): void {
    this.wanted = { at: edits[0]?.from ?? 0, edits };
  }

  /** Asks for the beginning of a line, counted from 1. */
  askLine(text: string, line: number): void {
    let at = 0;
    for (let passed = 1; passed < line; passed += 1) at = text.indexOf('\n', at) + 1;
    this.ask(at);
  }
}
