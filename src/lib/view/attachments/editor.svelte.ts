/** Puts the text editor into an element. The editor itself comes as a chunk of its own. */

import { untrack } from 'svelte';
import type { Attachment } from 'svelte/attachments';
import type { Diagnostic, Operation } from '$lib/core/index.ts';

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

/** One change of the text, in UTF-16 code units from 0, half-open. */
export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

/** A message with the changes that may mend it. */
export type Found = Diagnostic & {
  readonly fixes: readonly { readonly words: string; readonly edits: readonly Edit[] }[];
};

/** What the text gives names to. */
export interface Names {
  readonly terms: readonly Pick<Operation, 'name' | 'words' | 'takes' | 'makes' | 'leans' | 'crosses'>[];
  readonly sections: readonly string[];
  readonly markers: readonly string[];
}

/** What somebody outside asks of the editor: to go to a place, or to change the text there. */
export interface Wanted {
  readonly at: number;
  /** Changes of the text that was knitted last. */
  readonly edits?: readonly Edit[];
}

/** What the editor shows and whom it tells. Fields may change: they are read anew each time. */
export interface EditorOptions {
  readonly text: string;
  /** The text that the diagnostics and counts belong to; `null` when there are none yet. */
  readonly knitted: string | null;
  readonly diagnostics: readonly Found[];
  readonly counts: readonly LineCount[];
  readonly kinds: readonly LineKind[];
  readonly names: Names;
  readonly wanted: Wanted | null;
  readonly onText: (text: string) => void;
  readonly onLine: (line: number) => void;
  /** Called when a line is to be seen on the needles. */
  readonly onShow: (line: number) => void;
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
      made.take(options.wanted);
      options.onWent();
    });
    return () => {
      gone = true;
      made?.destroy();
    };
  };
}
