/** What lies around the text: examples, files, the clipboard, and the sentence about what just happened. */

import { fetchExample, listExamples, type Example } from '$lib/project/examples.ts';
import { acceptText, fileName, readTextFile, saveTextFile, TOO_LONG, type FileOutcome } from '$lib/project/files.ts';
import type { Session } from './session.svelte.ts';

/** Said when the browser does not hand out the clipboard. */
const NO_CLIPBOARD = 'The browser does not let this page read the clipboard. Paste into the text itself instead.';

/** Brings texts in and out of the session. */
export class Desk {
  examples = $state.raw<readonly Example[]>([]);
  /** What just happened; "" when there is nothing to say. */
  words = $state('');
  /** True when the text before can be brought back. */
  canReturn = $state(false);

  readonly #session: Session;
  readonly #root: string;

  constructor(session: Session, root: string) {
    this.#session = session;
    this.#root = root;
  }

  async list(): Promise<void> {
    this.examples = await listExamples(this.#root);
  }

  async openExample(file: string): Promise<void> {
    this.#take(await fetchExample(this.#root, file));
  }

  async openFile(file: Blob): Promise<void> {
    this.#take(await readTextFile(file));
  }

  async paste(): Promise<void> {
    try {
      this.#take(acceptText(await navigator.clipboard.readText()));
    } catch {
      this.say(NO_CLIPBOARD);
    }
  }

  save(): void {
    saveTextFile(fileName(this.#session.title), this.#session.text);
  }

  tooLong(): void {
    this.say(TOO_LONG);
  }

  /** Brings back the text that was open before. */
  return(): void {
    this.#session.swapFormer();
    this.say(`${this.#session.title || 'The text before'} is back.`, true);
  }

  say(words: string, canReturn = false): void {
    this.words = words;
    this.canReturn = canReturn && this.#session.former !== null;
  }

  #take(outcome: FileOutcome): void {
    if (outcome.kind === 'refused') return this.say(outcome.because);
    if (outcome.text.trim() === '') return this.say('There is no text in it. The pattern that was open is unchanged.');
    this.#session.open(outcome.text);
    this.say(`${this.#session.title || 'The text'} is open.`, true);
  }
}
