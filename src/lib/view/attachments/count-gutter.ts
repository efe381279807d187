/** A column at the right of the editor with the stitches before and after each line. */

import { RangeSet, StateEffect, StateField, type EditorState } from '@codemirror/state';
import { gutter, GutterMarker, type EditorView } from '@codemirror/view';
import type { LineCount } from './editor.svelte.ts';

/** Brings new counts. */
export const setCounts = StateEffect.define<readonly LineCount[]>();

class CountMarker extends GutterMarker {
  readonly #count: LineCount;

  constructor(count: LineCount) {
    super();
    this.#count = count;
  }

  override eq(other: CountMarker): boolean {
    return this.#count.words === other.#count.words && this.#count.title === other.#count.title;
  }

  override toDOM(): Node {
    const { words, title } = this.#count;
    return Object.assign(document.createElement('span'), { textContent: words, title });
  }
}

const counts = StateField.define<RangeSet<GutterMarker>>({
  create: () => RangeSet.empty,
  update(present, transaction) {
    const fresh = transaction.effects.find((effect) => effect.is(setCounts));
    return fresh ? markersOf(fresh.value, transaction.state) : present.map(transaction.changes);
  }
});

function markersOf(list: readonly LineCount[], state: EditorState): RangeSet<GutterMarker> {
  const inside = list.filter(({ line, words }) => words !== '' && line >= 1 && line <= state.doc.lines);
  return RangeSet.of(
    inside.map((count) => new CountMarker(count).range(state.doc.line(count.line).from)),
    true
  );
}

/** The column. */
export const countGutter = [
  counts,
  gutter({
    class: 'counts',
    side: 'after',
    markers: (view: EditorView) => view.state.field(counts)
  })
];
