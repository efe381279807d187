/** Folds a stage: everything from under its heading up to the next. */

import { codeFolding, foldGutter, foldKeymap, foldService } from '@codemirror/language';
import type { EditorState, Extension } from '@codemirror/state';
import { keymap, type EditorView, type ViewUpdate } from '@codemirror/view';
import { kindOfLine, nextHeading, setKinds } from './line-kinds.ts';

/** The column with the marks, the keys, and what stands in place of a folded stage. */
export const folding: Extension = [
  foldService.of(stageUnder),
  codeFolding({ placeholderText: '…' }),
  foldGutter({
    openText: '▾',
    closedText: '▸',
    foldingChanged: isReadAnew,
    domEventHandlers: { mousedown: keepFocus }
  }),
  keymap.of(foldKeymap)
];

function stageUnder(state: EditorState, from: number, end: number): { from: number; to: number } | null {
  if (kindOfLine(state, from) !== 'heading') return null;
  const next = nextHeading(state, end + 1) ?? state.doc.length + 1;
  const to = end + state.sliceDoc(end, next - 1).trimEnd().length;
  return to > end ? { from: end, to } : null;
}

function isReadAnew({ transactions }: ViewUpdate): boolean {
  return transactions.some(({ effects }) => effects.some((effect) => effect.is(setKinds)));
}

// A click on a mark leaves the cursor where it is.
function keepFocus(_view: EditorView, _line: unknown, event: Event): boolean {
  event.preventDefault();
  return false;
}
