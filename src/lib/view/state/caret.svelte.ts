/** Where the cursor of the editor is asked to go. */

/** A place in the text that somebody asked for. */
export interface Wanted {
  /** Offset in the text. */
  readonly at: number;
}

/** The link between lists that name places and the editor that shows them. */
export class Caret {
  /** The last place asked for; asking again for the same place is a new object. */
  wanted = $state.raw<Wanted | null>(null);

  ask(at: number): void {
    this.wanted = { at };
  }

  /** Asks for the beginning of a line, counted from 1. */
  askLine(text: string, line: number): void {
    let at = 0;
    for (let passed = 1; passed < line; passed += 1) at = text.indexOf('\n', at) + 1;
    this.ask(at);
  }
}
