/** The text editor: pattern colours, mistakes at their place, and the stitches beside each line. */

import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { LRLanguage, syntaxHighlighting } from '@codemirror/language';
import { type Diagnostic as Mark, lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint';
import { search, searchKeymap } from '@codemirror/search';
import { EditorState, type Extension } from '@codemirror/state';
import { EditorView, keymap, lineNumbers } from '@codemirror/view';
import { MOST_TEXT, patternLanguage, type Diagnostic } from '$lib/core/index.ts';
import { countGutter, setCounts } from './count-gutter.ts';
import { inks, look } from './editor-look.ts';
import type { EditorOptions } from './editor.svelte.ts';
import { lineKinds, setKinds } from './line-kinds.ts';

const language = LRLanguage.define({ parser: patternLanguage });

/** The marks of the editor have names of their own. */
const SEVERITIES = { error: 'error', warning: 'warning', note: 'info' } as const;

/** The text as a field of its own that the keyboard reaches. */
const ATTRIBUTES = { 'aria-label': 'Pattern text', spellcheck: 'false', autocapitalize: 'off', tabindex: '0' };

/** What is known about the present text. */
type Findings = Pick<EditorOptions, 'diagnostics' | 'counts' | 'kinds'>;

/** One editor in one element. */
export class PatternView {
  readonly #view: EditorView;
  readonly #options: EditorOptions;

  constructor(parent: Element, options: EditorOptions) {
    this.#options = options;
    this.#view = new EditorView({ parent, doc: options.text, extensions: this.#extensions() });
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
    const marks = found.diagnostics.map((diagnostic) => markOf(diagnostic, state.doc.length));
    this.#view.dispatch(setDiagnostics(state, marks));
    this.#view.dispatch({ effects: [setCounts.of(found.counts), setKinds.of(found.kinds)] });
  }

  /** Puts the cursor at an offset and shows it. */
  goTo(at: number): void {
    const anchor = Math.min(at, this.#view.state.doc.length);
    this.#view.dispatch({ selection: { anchor }, effects: EditorView.scrollIntoView(anchor, { y: 'center' }) });
    this.#view.focus();
  }

  destroy(): void {
    this.#view.destroy();
  }

  #extensions(): Extension[] {
    return [
      lineNumbers(),
      lintGutter(),
      countGutter,
      lineKinds,
      history(),
      search({ top: true }),
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

  #fits(length: number): boolean {
    if (length > MOST_TEXT) this.#options.onTooLong();
    return length <= MOST_TEXT;
  }

  #tellLine(): void {
    const { state, hasFocus } = this.#view;
    if (hasFocus) this.#options.onLine(state.doc.lineAt(state.selection.main.head).number);
  }
}

function markOf(diagnostic: Diagnostic, length: number): Mark {
  const { span, severity, message, remedy } = diagnostic;
  return {
    from: Math.min(span.from, length),
    to: Math.min(span.to, length),
    severity: SEVERITIES[severity],
    message: remedy ? `${message} ${remedy}` : message
  };
}
