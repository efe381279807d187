/** Lines of the editor that are no instructions: the title, the headings, and prose. */

import { RangeSet, StateEffect, StateField, type EditorState } from '@codemirror/state';
import { Decoration, EditorView, type DecorationSet } from '@codemirror/view';
import type { LineKind } from './editor.svelte.ts';

/** Brings new kinds. */
export const setKinds = StateEffect.define<readonly LineKind[]>();

/** The look of these lines. */
export const lineKinds = StateField.define<DecorationSet>({
  create: () => RangeSet.empty,
  update(present, transaction) {
    const fresh = transaction.effects.find((effect) => effect.is(setKinds));
    return fresh ? decorate(fresh.value, transaction.state) : present.map(transaction.changes);
  },
  provide: (field) => EditorView.decorations.from(field)
});

function decorate(kinds: readonly LineKind[], state: EditorState): DecorationSet {
  const inside = kinds.filter(({ line }) => line >= 1 && line <= state.doc.lines);
  const ranges = inside.map(({ line, kind }) => Decoration.line({ class: kind }).range(state.doc.line(line).from));
  return RangeSet.of(ranges, true);
}

/** What the line at an offset is; `null` for instructions, and for what has not been read yet. */
export function kindOfLine(state: EditorState, from: number): LineKind['kind'] | null {
  let kind: LineKind['kind'] | null = null;
  state.field(lineKinds).between(from, from, (at, _, { spec }) => {
    if (at === from) kind = (spec as { class: LineKind['kind'] }).class;
  });
  return kind;
}

/** Where the next heading line begins, from an offset on; `null` when there is none. */
export function nextHeading(state: EditorState, from: number): number | null {
  for (const cursor = state.field(lineKinds).iter(from); cursor.value; cursor.next()) {
    if (cursor.from >= from && (cursor.value.spec as { class: string }).class === 'heading') return cursor.from;
  }
  return null;
}
