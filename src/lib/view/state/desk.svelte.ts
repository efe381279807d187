/** What lies around the text: examples, files, the clipboard, and the sentence about what just happened. */

import { fetchExample, listExamples, type Example } from '$lib/project/examples.ts';
import { acceptText, fileName, isTooLarge, saveTextFile, TOO_LONG, type FileOutcome } from '$lib/project/files.ts';
import type { Session } from './session.svelte.ts';

/** Said when the browser does not hand out the clipboard. */
const NO_CLIPBOARD = 'The browser does not let this page read the clipboard. Paste into the text itself instead.';

/** Longest time that saving waits for the title, in milliseconds. */
const LONGEST_WAIT = 1_000;

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
    await this.#take(await fetchExample(this.#root, file));
  }

  /** Opens a text, Markdown, web page or PDF; says what in it could not be read. */
  async openFile(file: File): Promise<void> {
    if (isTooLarge(file)) return this.say(TOO_LONG);
    const { openFile } = await import('$lib/opening/index.ts');
    const { text, unread } = await openFile(file);
    if (text.trim() === '' && unread.length > 0) return this.say(unread.join(' '));
    await this.#take(acceptText(text), unread);
  }

  async paste(): Promise<void> {
    try {
      const { tidyPasted } = await import('$lib/opening/index.ts');
      await this.#take(acceptText(tidyPasted(await navigator.clipboard.readText())));
    } catch {
      this.say(NO_CLIPBOARD);
    }
  }

  /** Saves the text under its title; what takes too long to knit is saved under the title before. */
  async save(): Promise<void> {
    this.#session.settle();
    await Promise.race([this.#session.settled(), new Promise((resolve) => setTimeout(resolve, LONGEST_WAIT))]);
    saveTextFile(fileName(this.#session.piece.title), this.#session.text);
  }

  tooLong(): void {
    this.say(TOO_LONG);
  }

  /** Brings back the text that was open before. */
  async return(): Promise<void> {
    this.#session.swapFormer();
    await this.#session.settled();
    this.say(`${this.#session.piece.title || 'The text before'} is back.`, true);
  }

  say(words: string, canReturn = false): void {
    this.words = words;
    this.canReturn = canReturn && this.#session.former !== null;
  }

  async #take(outcome: FileOutcome, unread: readonly string[] = []): Promise<void> {
    if (outcome.kind === 'refused') return this.say(outcome.because);
    if (outcome.text.trim() === '') return this.say('There is no text in it. The pattern that was open is unchanged.');
    this.#session.open(outcome.text);
    await this.#session.settled();
    this.say([`${this.#session.piece.title || 'The text'} is open.`, ...unread].join(' '), true);
  }
}
