/** Puts the text editor into an element. The editor itself comes as a chunk of its own. */

import { untrack } from 'svelte';
import type { Attachment } from 'svelte/attachments';
import type { Diagnostic } from '$lib/core/index.ts';

/** The stitches of one line of the text. */
export interface LineCount {
  /** Line in the text, from 1. */
  readonly line: number;
  /** "64 → 62". */
  readonly words: string;
  /** In full: "64 stitches before, 62 after". */
  readonly title: string;
}

/** A line that is no instruction. */
export interface LineKind {
  /** Line in the text, from 1. */
  readonly line: number;
  readonly kind: 'title' | 'heading' | 'prose';
}

/** What the editor shows and whom it tells. Fields may change: they are read anew each time. */
export interface EditorOptions {
  readonly text: string;
  /** The text that the diagnostics and counts belong to; `null` when there are none yet. */
  readonly knitted: string | null;
  readonly diagnostics: readonly Diagnostic[];
  readonly counts: readonly LineCount[];
  readonly kinds: readonly LineKind[];
  readonly wanted: { readonly at: number } | null;
  readonly onText: (text: string) => void;
  readonly onLine: (line: number) => void;
  /** Called when the cursor has gone where it was wanted. */
  readonly onWent: () => void;
  /** Called when a change is refused because the text would be too long. */
  readonly onTooLong: () => void;
  /** Called when the editor is there, or cannot be had. */
  readonly onReady: () => void;
}

/** The editor, as long as the element is there. */
export function editor(options: EditorOptions): Attachment {
  return (element) => {
    let made = $state.raw<import('./editor-view.ts').PatternView | null>(null);
    let gone = false;
    const fetched = import('./editor-view.ts').then(({ PatternView }) => {
      if (!gone)
        made = new PatternView(
          element,
          untrack(() => options)
        );
    });
    void fetched.finally(() => options.onReady());
    $effect(() => made?.showText(options.text));
    $effect(() => {
      if (options.knitted === options.text) made?.showFindings(options);
    });
    $effect(() => {
      if (!made || !options.wanted) return;
      made.goTo(options.wanted.at);
      options.onWent();
    });
    return () => {
      gone = true;
      made?.destroy();
    };
  };
}
