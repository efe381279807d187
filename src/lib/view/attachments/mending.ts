/** Messages at their places in the text, and the changes that mend them. */

import { isolateHistory } from '@codemirror/commands';
import { forEachDiagnostic, type Action, type Diagnostic as Mark } from '@codemirror/lint';
import { EditorView, keymap } from '@codemirror/view';
import type { Edit, Found } from './editor.svelte.ts';

/** The marks of the editor have names of their own. */
const SEVERITIES = { error: 'error', warning: 'warning', note: 'info' } as const;

/** The mark of a message. `knitted`: the text that it is about. */
export function markOf(found: Found, knitted: string): Mark {
  const { span, severity, message, remedy, fixes } = found;
  return {
    from: Math.min(span.from, knitted.length),
    to: Math.min(span.to, knitted.length),
    severity: SEVERITIES[severity],
    message: remedy ? `${message} ${remedy}` : message,
    actions: fixes.map(({ words, edits }) => action(words, { edits, span, knitted }))
  };
}

interface Change {
  readonly edits: readonly Edit[];
  readonly span: Found['span'];
  readonly knitted: string;
}

// What was typed since may have moved the mark: the change moves with it.
function action(name: string, { edits, span, knitted }: Change): Action {
  return { name, apply: (view, from) => void mend(view, edits, { knitted, moved: from - span.from }) };
}

/** Changes the text, unless it is another one now at that place. `moved`: how far the place has moved since. */
export function mend(
  view: EditorView,
  edits: readonly Edit[],
  { knitted, moved }: { readonly knitted: string; readonly moved: number }
): boolean {
  const [from, to] = [edits[0]?.from ?? 0, edits.at(-1)?.to ?? 0];
  const { state } = view;
  const line = state.doc.lineAt(Math.min(Math.max(0, from + moved), state.doc.length));
  const start = from - Math.min(from + moved - line.from, from);
  if (state.sliceDoc(start + moved, to + moved) !== knitted.slice(start, to)) {
    view.dispatch({ effects: EditorView.announce.of('The text has changed here. Wait until it is worked out.') });
    return false;
  }
  const changes = edits.map((edit) => ({ from: edit.from + moved, to: edit.to + moved, insert: edit.insert }));
  const end = state.changes(changes).mapPos(to + moved, 1);
  view.focus(); // first, so that the line is told
  view.dispatch({
    changes,
    selection: { anchor: end },
    scrollIntoView: true,
    userEvent: 'input.mend',
    annotations: isolateHistory.of('full'),
    effects: EditorView.announce.of('Mended.')
  });
  return true;
}

/** Ctrl-. takes the first change that a message in the line of the cursor offers. */
export const mendingKey = keymap.of([{ key: 'Mod-.', run: mendHere }]);

function mendHere(view: EditorView): boolean {
  const line = view.state.doc.lineAt(view.state.selection.main.head);
  let first: (() => void) | null = null;
  forEachDiagnostic(view.state, ({ actions }, from, to) => {
    const [change] = actions ?? [];
    if (!first && change && from <= line.to && to >= line.from) first = () => change.apply(view, from, to);
  });
  (first as (() => void) | null)?.();
  return first !== null;
}
