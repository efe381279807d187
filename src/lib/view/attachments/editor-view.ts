/** The text editor: pattern colours, mistakes at their place, and the stitches beside each line. */

import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { LRLanguage, syntaxHighlighting } from '@codemirror/language';
import { lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint';
import { search, searchKeymap } from '@codemirror/search';
import { EditorState, Prec, StateEffect, type Extension } from '@codemirror/state';
import { EditorView, keymap, lineNumbers } from '@codemirror/view';
import { MOST_TEXT, patternLanguage } from '$lib/core/index.ts';
import { countGutter, setCounts } from './count-gutter.ts';
import { inks, look } from './editor-look.ts';
import type { Edit, EditorOptions, Wanted } from './editor.svelte.ts';
import { folding } from './folding.ts';
import { lineKinds, setKinds } from './line-kinds.ts';
import { markOf, mend, mendingKey } from './mending.ts';

const language = LRLanguage.define({ parser: patternLanguage });

/** The text as a field of its own that the keyboard reaches. */
const ATTRIBUTES = {
  'aria-label': 'Pattern text',
  'aria-description':
    'Control Space offers words, F2 tells what a word means, Control full stop mends a mistake, Alt Enter shows the row on the needles.',
  spellcheck: 'false',
  autocapitalize: 'off',
  tabindex: '0'
};

/** What is known about the present text. */
type Findings = Pick<EditorOptions, 'diagnostics' | 'counts' | 'kinds'>;

/** One editor in one element. */
export class PatternView {
  readonly #view: EditorView;
  readonly #options: EditorOptions;
  #gone = false;

  constructor(parent: Element, options: EditorOptions) {
    this.#options = options;
    this.#view = new EditorView({ parent, doc: options.text, extensions: this.#extensions() });
    void this.#fetchHand();
  }

  /** Takes a text that did not come from typing. The step can be undone. */
  showText(text: string): void {
    const { state } = this.#view;
    if (state.doc.toString() === text) return;
    this.#view.dispatch({ changes: { from: 0, to: state.doc.length, insert: text }, selection: { anchor: 0 } });
  }

  /** Shows what was found in the present text. */
  showFindings(found: Findings): void {
    const { state } = this.#view;
    const knitted = state.doc.toString();
    const marks = found.diagnostics.map((message) => markOf(message, knitted));
    this.#view.dispatch(setDiagnostics(state, marks));
    this.#view.dispatch({ effects: [setCounts.of(found.counts), setKinds.of(found.kinds)] });
  }

  /** Does what was asked from outside. */
  take({ at, edits }: Wanted): void {
    if (edits) this.#mend(edits);
    else this.#goTo(at);
  }

  #mend(edits: readonly Edit[]): void {
    mend(this.#view, edits, { knitted: this.#options.knitted ?? '', moved: 0 });
  }

  // Puts the cursor at an offset and shows it.
  #goTo(at: number): void {
    const anchor = Math.min(at, this.#view.state.doc.length);
    this.#view.focus(); // first, so that the line is told
    this.#view.dispatch({ selection: { anchor }, effects: EditorView.scrollIntoView(anchor, { y: 'center' }) });
  }

  destroy(): void {
    this.#gone = true;
    this.#view.destroy();
  }

  #extensions(): Extension[] {
    return [
      lineNumbers(),
      folding,
      lintGutter(),
      countGutter,
      lineKinds,
      history(),
      search({ top: true }),
      mendingKey,
      keymap.of([{ key: 'Alt-Enter', run: () => this.#show() }]),
      keymap.of([...defaultKeymap, ...historyKeymap, ...lintKeymap, ...searchKeymap]),
      EditorView.lineWrapping,
      EditorView.contentAttributes.of(ATTRIBUTES),
      language,
      syntaxHighlighting(inks),
      look,
      EditorState.changeFilter.of((transaction) => this.#fits(transaction.newDoc.length)),
      EditorView.updateListener.of((update) => {
        if (update.docChanged) this.#options.onText(update.state.doc.toString());
        if (update.selectionSet || update.docChanged) this.#tellLine();
      })
    ];
  }

  // The editor is there first; without its hand it can still be written in.
  async #fetchHand(): Promise<void> {
    const fetched = await import('./hand/hand.ts').catch(() => null);
    if (!fetched || this.#gone) return;
    const hand = fetched.helpingHand(() => this.#options.names);
    this.#view.dispatch({ effects: StateEffect.appendConfig.of(Prec.high(hand)) });
  }

  #show(): boolean {
    this.#options.onShow(this.#line());
    return true;
  }

  #line(): number {
    const { doc, selection } = this.#view.state;
    return doc.lineAt(selection.main.head).number;
  }

  #fits(length: number): boolean {
    if (length > MOST_TEXT) this.#options.onTooLong();
    return length <= MOST_TEXT;
  }

  #tellLine(): void {
    if (this.#view.hasFocus) this.#options.onLine(this.#line());
  }
}
