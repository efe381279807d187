/** Offers words while a row is written. */

import { autocompletion, type CompletionContext, type CompletionResult } from '@codemirror/autocomplete';
import type { EditorState, Extension } from '@codemirror/state';
import type { Names } from '../editor.svelte.ts';
import { kindOfLine } from '../line-kinds.ts';
import type { LineAbove } from './labels.ts';
import { offersAt } from './offers.ts';

/** Lines above that are looked at. */
const LOOKED_AT = 400;

/** The list of words. Nothing in it is chosen until an arrow key says so: Enter and full stop stay what they are. */
export function completion(names: () => Names): Extension {
  return autocompletion({
    override: [(context) => complete(context, names())],
    icons: false,
    selectOnOpen: false,
    interactionDelay: 0, // nothing can be chosen by chance
    activateOnTypingDelay: 150
  });
}

function complete({ state, pos, explicit }: CompletionContext, names: Names): CompletionResult | null {
  const line = state.doc.lineAt(pos);
  const found = offersAt({
    before: state.sliceDoc(line.from, pos),
    kind: kindOfLine(state, line.from),
    above: linesAbove(state, line.number),
    names,
    isAsked: explicit
  });
  if (!found) return null;
  const options = found.offers.map((offer, index) => ({ ...offer, boost: -index }));
  return { from: line.from + found.from, options, filter: false };
}

function* linesAbove(state: EditorState, number: number): Generator<LineAbove> {
  for (let above = number - 1; above >= Math.max(1, number - LOOKED_AT); above -= 1) {
    const { from, text } = state.doc.line(above);
    yield { text, isHeading: kindOfLine(state, from) === 'heading' };
  }
}
