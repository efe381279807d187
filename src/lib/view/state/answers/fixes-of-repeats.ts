/** Mends repeats: how often they are worked, where they begin, where they end. */

import type { Fix, Mistake } from './fixes.ts';
import { bodyAt } from './fixes-of-rows.ts';

/** "rep from * 3 times": says whether the first time counts. */
export function sayWhichTimes(mistake: Mistake): readonly Fix[] {
  return sayWhich(mistake, /\b(?:rep|rpt)\w*\s+from\s*\*/iu);
}

/** "Rep rnds 1-4 three times": says whether the first time counts. */
export function sayWhichRows(mistake: Mistake): readonly Fix[] {
  return sayWhich(mistake, /^/u);
}

// The number of times stands behind what begins the repeat.
function sayWhich({ found, workpiece }: Mistake, beginning: RegExp): readonly Fix[] {
  const told = workpiece.text.slice(found.span.from, found.span.to);
  const start = told.search(beginning);
  const times = /\b(?:(times?)|twice|thrice|once)\b/iu.exec(told.slice(Math.max(start, 0)));
  if (start < 0 || !times) return [];
  const before = found.span.from + start + times.index;
  const after = before + times[0].length;
  const more = times[1] ? { at: before, insert: 'more ' } : { at: after, insert: ' more' };
  return [insert('Write "more times"', more), insert('Write "times in all"', { at: after, insert: ' in all' })];
}

const CLOSING: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' };

/** Where a group stops that was not closed: before how often it is worked. */
const HOW_OFTEN =
  /[,;]?\s+(?:\d[\d\s(),[\]–-]*(?:more )?times\b|twice\b|once\b|to (?:the )?(?:last|end)\b|around\b|in (?:the )?next st)/iu;
/** A list of sizes that was not closed. */
const SIZES = /^[([{]\s*\d+(?:\s*,\s*\d+)+/u;

/** Closes a bracket where its group or its list stops. */
export function closeBracket({ found, workpiece: { text } }: Mistake): readonly Fix[] {
  const { from } = found.span;
  const sign = CLOSING[text.charAt(from)];
  const rest = /^[^\n.;]*/u.exec(text.slice(from))![0];
  if (!sign) return [];
  const end = SIZES.exec(rest)?.[0].length ?? HOW_OFTEN.exec(rest)?.index ?? rest.trimEnd().length;
  return [insert(`Add "${sign}"`, { at: from + end, insert: sign })];
}

/** Says how often a bracket is worked. */
export function endBracket({ found }: Mistake): readonly Fix[] {
  return ['to end', 'once'].map((words) => insert(`Add "${words}"`, { at: found.span.to, insert: ` ${words}` }));
}

/** Says how often a repeat after an asterisk is worked. */
export function endRepeat({ found }: Mistake): readonly Fix[] {
  const words = 'rep from * to end';
  return [insert(`Add "${words}"`, { at: found.span.to, insert: `; ${words}` })];
}

/** Puts the asterisk at the beginning of the row. */
export function startRepeat({ found, workpiece: { text } }: Mistake): readonly Fix[] {
  const { from } = found.span;
  const before = text.slice(text.lastIndexOf('\n', from - 1) + 1, from);
  const label = /^[^:]*:\s*/u.exec(before)?.[0];
  if (label === undefined) return [];
  return [insert('Put "*" at the beginning of the row', { at: from - before.length + label.length, insert: '*' })];
}

/** Writes out that what is told is repeated to the end of the row. */
export function writeRepeat({ found, workpiece }: Mistake): readonly Fix[] {
  const body = bodyAt(found, workpiece);
  if (!body) return [];
  const edits = [
    { from: body.from, to: body.from, insert: '*' },
    { from: body.to, to: body.to, insert: '; rep from * to end' }
  ];
  return [{ words: 'Write it as a repeat to the end', edits }];
}

function insert(words: string, change: { readonly at: number; readonly insert: string }): Fix {
  return { words, edits: [{ from: change.at, to: change.at, insert: change.insert }] };
}
