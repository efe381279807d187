/** How patterns point to needles: N1, 1st and 3rd needles, heel needle, needle A, an empty needle, each needle. */

import type { NeedleRef, NeedleRefs } from '../model/needle-words.ts';
import type { Cursor } from './cursor.ts';

/** Words for a needle. */
export const NEEDLE_WORDS = [
  'needle',
  'needles',
  'ndl',
  'ndls',
  'dpn',
  'dpns',
  'circ',
  'circular',
  'circs',
  'pin',
  'pins'
];

/** What a needle may be called after: what it carries, or where it lies. */
const ROLES = new Set([
  ...['heel', 'front', 'back', 'sole', 'instep', 'left', 'right', 'side', 'gusset', 'toe', 'upper', 'lower', 'palm'],
  ...['old', 'top', 'bottom', 'underfoot', 'thumb', 'hand', 'foot', 'flap', 'seam', 'middle', 'centre', 'center']
]);

/** Roles that may stand before another one: "first side needle", "left front needle". */
const LEADING = new Set(['first', 'second', 'third', 'fourth', 'other', '1st', '2nd', '3rd', '4th']);

const ORDINALS: Readonly<Record<string, string>> = { '1st': 'first', '2nd': 'second', '3rd': 'third', '4th': 'fourth' };

/** A needle with this role. */
function named(name: string | number): NeedleRef {
  return { kind: 'named', name: String(name) };
}

/** Reads one or several needles: "N1", "2nd and 3rd needles", "needles 1 and 3", "front needle", "each needle". */
export function readNeedles(at: Cursor): NeedleRefs | null {
  return at.attempt(readEach) ?? at.attempt(readList);
}

/** Reads the name of one needle. */
export function readNeedle(at: Cursor): NeedleRef | null {
  return at.attempt((inner) => {
    inner.skip('the', 'old');
    return inner.attempt(readLettered) ?? inner.attempt(readOrdinal) ?? inner.attempt(readRole);
  });
}

// "each needle", "every needle", "both needles", "all needles", "each of the needles", "both side needles".
function readEach(at: Cursor): NeedleRefs | null {
  const all = at.take('each', 'every', 'both', 'all');
  if (!all) return null;
  if (at.skip('of')) {
    const list = at.attempt(readList);
    if (list) return list;
  }
  at.skip('the', 'two', 'three', 'four', '2', '3', '4');
  const role = ROLES.has(at.text()) ? at.kind('word') : null;
  if (!at.take(...NEEDLE_WORDS)) return null;
  return role ? [named(`first ${role.text}`), named(`second ${role.text}`)] : 'each';
}

// "N1 and N3", "1st and 3rd needles", "needles 2, 3", "Ndls 2 and 3", "First and second needles", "left and right needles".
function readList(at: Cursor): NeedleRefs | null {
  const list = at.attempt(readPlural) ?? [];
  if (list.length > 0) return list;
  const first = readNeedle(at);
  if (!first) return null;
  const refs = [first];
  for (;;) {
    const next = at.attempt(() => (at.skip('and', '&', ',', '+') ? (readNeedle(at) ?? bareNumber(at, first)) : null));
    if (!next) return refs;
    refs.push(next);
  }
}

function bareNumber(at: Cursor, first: NeedleRef): NeedleRef | null {
  const number = first.kind === 'named' && /^\d$/u.test(first.name) ? at.whole() : null;
  return number !== null && number < 10 && !/^sts?$/u.test(at.text()) ? named(number) : null;
}

// "1st and 3rd needles", "second and third dpns", "left and right needles", "needles 1 and 3".
function readPlural(at: Cursor): NeedleRef[] | null {
  at.skip('the', 'old');
  const refs: NeedleRef[] = [];
  for (;;) {
    const ref = at.kind('ordinal') ?? (ROLES.has(at.text()) || isLetterName(at) ? at.kind('word') : null);
    if (!ref) return null;
    refs.push(named(ref.kind === 'ordinal' ? ref.value! : ref.text));
    if (!at.skip('and', '&', ',')) break;
  }
  return refs.length > 1 && at.take(...NEEDLE_WORDS) ? refs : null;
}

// N1, Needle 1, needle #1, ndl 2, needle A, circ B, "needle no. 1".
function readLettered(at: Cursor): NeedleRef | null {
  if (at.peek(1)?.kind === 'number' && at.peek(1)!.glued && at.take('n')) return named(at.whole()!);
  const word = at.take('n', ...NEEDLE_WORDS);
  if (!word) return null;
  at.phrase('no .');
  at.skip('#', 'no', 'number');
  if (isLetterName(at)) return named(at.kind('word')!.text);
  if (word.text === 'needles' && !['and', '&', ','].includes(at.text(1))) return null;
  return readNumber(at);
}

// "2", but not the size in "needle 2.5 mm".
function readNumber(at: Cursor): NeedleRef | null {
  const value = at.kind('number')?.value ?? readRoman(at);
  const isSize = at.text() === 'mm' || (at.text() === '-' && at.peek()!.glued);
  return value !== null && Number.isInteger(value) && value < 10 && !isSize ? named(value) : null;
}

const ROMANS = ['i', 'ii', 'iii', 'iv', 'v'];

function readRoman(at: Cursor): number | null {
  const roman = at.take(...ROMANS);
  return roman ? ROMANS.indexOf(roman.text) + 1 : null;
}

function isLetterName(at: Cursor): boolean {
  const token = at.peek();
  return token?.kind === 'word' && /^[a-e]$/u.test(token.text) && token.capital;
}

// "1st needle", "the second needle", "first dpn".
function readOrdinal(at: Cursor): NeedleRef | null {
  const ordinal = at.kind('ordinal');
  return ordinal && at.take(...NEEDLE_WORDS) ? named(ordinal.value!) : null;
}

// "heel needle", "first side needle", "the needle with the heel sts", "needle holding instep sts".
function readRole(at: Cursor): NeedleRef | null {
  const words = readRoleWords(at);
  if (words.length > 0) return at.take(...NEEDLE_WORDS) ? named(withoutOld(words)) : null;
  if (!at.take(...NEEDLE_WORDS) || !at.take('with', 'holding', 'carrying')) return null;
  at.skip('the');
  const role = ROLES.has(at.text()) ? at.kind('word') : null;
  return role && at.skip('st', 'sts', 'stitches') ? named(role.text) : null;
}

function readRoleWords(at: Cursor): string[] {
  const words: string[] = [];
  if (LEADING.has(at.text()) && ROLES.has(at.text(1))) {
    words.push(ORDINALS[at.text()] ?? at.text());
    at.at += 1;
  }
  while (words.length < 3 && ROLES.has(at.text())) words.push(at.kind('word')!.text);
  return words;
}

function withoutOld(words: readonly string[]): string {
  const told = words.filter((word) => word !== 'old');
  return (told.length > 0 ? told : words).join(' ');
}

/** Reads the name of a numbered needle; `bare` also accepts "the second" alone. */
export function readNeedleName(at: Cursor, options: { readonly bare: boolean } = { bare: false }): string | null {
  return at.attempt(() => {
    const needle = readNeedle(at);
    if (needle?.kind === 'named') return needle.name;
    if (!options.bare) return null;
    at.skip('the');
    const ordinal = at.kind('ordinal');
    if (ordinal) return String(ordinal.value);
    return at.take('other') ? 'other' : null;
  });
}

/** Reads "with an empty needle", "with the same needle", "onto N3": which needle the stitches go on to. */
export function readReceiver(at: Cursor): NeedleRef | null {
  return at.attempt(() => {
    if (!at.take('with', 'using', 'onto') && !at.phrase('on to', 'on')) return null;
    const needle = readEmpty(at) ?? at.attempt(readEndOf) ?? readNeedle(at);
    if (!needle) return null;
    const carries = at.attempt(() => (at.take('for') ? (at.skip('the'), at.kind('word')) : null));
    at.take(',');
    return needle.kind === 'empty' && carries ? { ...needle, name: needle.name ?? carries.text } : needle;
  });
}

// "the end of the third needle", "the beginning of N1", "the other end of the same needle".
function readEndOf(at: Cursor): NeedleRef | null {
  at.skip('the', 'other');
  if (!at.take('end', 'beginning', 'beg', 'start', 'front')) return null;
  return at.take('of') ? (readEmpty(at) ?? readNeedle(at)) : null;
}

const EMPTY = ['empty', 'free', 'new', 'spare', 'working', 'single', 'extra'];

/** Reads "an empty needle", "another needle", "one needle, the front needle", "the same needle", "a second needle". */
export function readEmpty(at: Cursor): NeedleRef | null {
  return at.attempt(() => {
    if (at.attempt(readSame)) return { kind: 'same' };
    if (at.attempt(readFreed)) return { kind: 'empty', name: readApposition(at) };
    const article = at.skip('a', 'an', 'another', 'one', 'the', 'own');
    const isOpen = article && at.text(-1) !== 'the';
    const ordinal = isOpen ? at.kind('ordinal') : null;
    const told = at.skip(...EMPTY, 'another', 'other');
    if (!(told || isOpen) || !at.take(...NEEDLE_WORDS)) return null;
    return { kind: 'empty', name: readApposition(at) ?? (ordinal && String(ordinal.value)) };
  });
}

// "the needle that is now free".
function readFreed(at: Cursor): true | null {
  at.skip('the');
  if (!at.take(...NEEDLE_WORDS) || !at.phrase('that is', 'which is')) return null;
  at.skip('now');
  return at.take('free', 'empty') ? true : null;
}

function readSame(at: Cursor): true | null {
  at.skip('the');
  if (at.take('it')) return true;
  if (at.phrase('this needle', 'that needle')) return true;
  if (!at.take('same')) return null;
  at.skip('free', 'empty', 'heel', 'first');
  return at.take(...NEEDLE_WORDS) ? true : null;
}

// ", the front needle", "(N2)", "(this will be N3)".
function readApposition(at: Cursor): string | null {
  return at.attempt(() => {
    if (at.text() === ',' && at.text(1) === 'the') at.at += 1;
    else if (at.text() !== '(' || at.partner < 0) return null;
    const bracket = at.text() === '(' ? at.partner : -1;
    if (bracket >= 0) at.at += 1;
    at.phrase('this is the', 'this is', 'this will be', 'this becomes', 'now', 'this is now', 'now called');
    const name = readNeedleName(at);
    if (bracket < 0) return name;
    return at.at === bracket ? ((at.at += 1), name) : null;
  });
}
