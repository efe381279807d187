/** Colours of yarn in the text: they change no stitch. */

import type { Cursor } from './cursor.ts';

const COLOURS = ['mc', 'cc', 'ms', 'main colour', 'main color', 'contrast colour', 'contrast color', 'main shade'];

/** Skips "With CC,", "Using B,", "with MC" and the like. */
export function skipColour(at: Cursor): boolean {
  return (
    at.attempt(() => {
      if (!at.take('with', 'using', 'in') || !takeColour(at)) return null;
      at.skip('only');
      at.take(',');
      return true;
    }) === true
  );
}

// A letter counts only where nothing else can be meant.
function takeColour(at: Cursor): boolean {
  at.skip('the');
  if (at.phrase(...COLOURS)) return (at.attempt(() => (at.whole() === null ? null : true)), true);
  if (at.phrase('colour', 'color', 'yarn', 'shade')) return at.peek()?.capital === true && at.kind('word') !== null;
  const letter = at.peek();
  return letter?.capital === true && /^[a-h]$/u.test(letter.text) && at.kind('word') !== null && at.atStop;
}
