/** Shows what a word means: under the pointer, or at the cursor when F2 asks for it. */

import { StateEffect, StateField, type EditorState, type Extension } from '@codemirror/state';
import { EditorView, hoverTooltip, keymap, showTooltip, type Tooltip } from '@codemirror/view';
import { kindOfLine } from '../line-kinds.ts';
import { readingAt, sayReading, type Reading, type Term } from './readings.ts';

/** Readings under the pointer and at the cursor. */
export function readingTips(terms: () => readonly Term[]): Extension {
  return [
    asked,
    hoverTooltip(({ state }, at) => {
      const found = readingIn(state, at, terms());
      return found ? tipOf(found.reading, found) : null;
    }),
    keymap.of([
      { key: 'F2', run: (view) => ask(view, terms()) },
      { key: 'Escape', run: forget }
    ])
  ];
}

const setAsked = StateEffect.define<Tooltip | null>();

/** The reading that was asked for; it goes when the cursor moves or the text changes. */
const asked = StateField.define<Tooltip | null>({
  create: () => null,
  update(present, { effects, docChanged, selection }) {
    const fresh = effects.find((effect) => effect.is(setAsked));
    if (fresh) return fresh.value;
    return docChanged || selection ? null : present;
  },
  provide: (field) => showTooltip.from(field)
});

interface Found {
  readonly reading: Reading;
  readonly pos: number;
  readonly end: number;
}

// Headings and prose are no instructions: their words are left alone.
function readingIn(state: EditorState, at: number, terms: readonly Term[]): Found | null {
  const line = state.doc.lineAt(at);
  if (kindOfLine(state, line.from) !== null) return null;
  const reading = readingAt(line.text, at - line.from, terms);
  return reading && { reading, pos: line.from + reading.from, end: line.from + reading.to };
}

function ask(view: EditorView, terms: readonly Term[]): boolean {
  const { head } = view.state.selection.main;
  const found = readingIn(view.state, head, terms);
  const said = found ? sayReading(found.reading) : 'Nothing is known about this word.';
  const tip = found ? tipOf(found.reading, found) : { pos: head, create: () => ({ dom: paragraphs([said]) }) };
  view.dispatch({ effects: [setAsked.of(tip), EditorView.announce.of(said)] });
  return true;
}

function forget(view: EditorView): boolean {
  if (!view.state.field(asked)) return false;
  view.dispatch({ effects: setAsked.of(null) });
  return true;
}

function tipOf({ written, words, arithmetic, isOwn }: Reading, { pos, end }: Omit<Found, 'reading'>): Tooltip {
  const lines = [`${written}: ${words}`, arithmetic, isOwn ? 'explained in the key' : ''];
  return { pos, end, above: true, create: () => ({ dom: paragraphs(lines.filter((line) => line !== '')) }) };
}

function paragraphs(lines: readonly string[]): HTMLElement {
  const dom = Object.assign(document.createElement('div'), { className: 'reading' });
  dom.append(...lines.map((line) => Object.assign(document.createElement('p'), { textContent: line })));
  return dom;
}
