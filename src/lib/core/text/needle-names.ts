/** How patterns point to a needle by its number: N1, needle 1, 1st needle, the second. */

import type { Cursor } from './cursor.ts';

const NEEDLE_WORDS = ['needle', 'needles', 'ndl', 'ndls', 'dpn', 'dpns'];

/** Reads the name of a numbered needle; `bare` also accepts "the second" alone. */
export function readNeedleNumber(at: Cursor, options: { readonly bare: boolean } = { bare: false }): number | null {
  return at.attempt(() => {
    at.skip('the');
    return at.attempt(readLetterNumber) ?? at.attempt((inner) => readOrdinal(inner, options.bare));
  });
}

// N1, Needle 1, needle #1, ndl 2.
function readLetterNumber(at: Cursor): number | null {
  if (!at.take('n', ...NEEDLE_WORDS)) return null;
  at.skip('#');
  return at.whole();
}

function readOrdinal(at: Cursor, bare: boolean): number | null {
  const ordinal = at.kind('ordinal');
  if (!ordinal) return null;
  return at.take(...NEEDLE_WORDS) || bare ? ordinal.value : null;
}

/** Reads "with an empty needle", "with the same needle": which needle takes the stitches changes no stitch. */
export function readNewNeedle(at: Cursor): boolean {
  return (
    at.attempt(() => {
      if (!at.take('with', 'using', 'onto') && !at.phrase('on to')) return null;
      at.skip('a', 'an', 'the', 'another', 'one');
      at.skip('same', 'empty', 'free', 'new', 'spare', 'heel', 'another', 'other');
      if (!at.take(...NEEDLE_WORDS) && !at.take('it')) return null;
      at.attempt(() => (at.take('for') && (at.skip('the'), at.kind('word')) ? true : null));
      at.take(',');
      return at.text() === '#' || at.peek()?.kind === 'number' ? null : true;
    }) === true
  );
}
