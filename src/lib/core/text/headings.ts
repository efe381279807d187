/** Headings: which lines begin a stage, what it is called, and over which stitches its heading says it is worked. */

import type { StageText } from '../model/pattern.ts';
import { readCount } from './counts.ts';
import type { Cursor } from './cursor.ts';
import { readLabel } from './labels.ts';
import { readNeedles } from './needle-names.ts';
import { readOperation } from './phrases.ts';
import { startsInstruction } from './wording.ts';

/** Words of which a heading in small letters may consist. */
const STAGE_WORDS = new Set([
  ...[
    'cuff',
    'leg',
    'heel',
    'flap',
    'turn',
    'turning',
    'gusset',
    'gussets',
    'foot',
    'toe',
    'brim',
    'body',
    'crown',
    'hand'
  ],
  ...[
    'thumb',
    'finger',
    'fingers',
    'finishing',
    'ankle',
    'top',
    'setup',
    'set',
    'up',
    'instep',
    'sole',
    'sleeve',
    'hem'
  ],
  ...[
    'shaping',
    'decreases',
    'ribbing',
    'rib',
    'pick',
    'picking',
    'divide',
    'short',
    'row',
    'wristband',
    'band',
    'ear'
  ],
  ...[
    'first',
    'second',
    'third',
    'left',
    'right',
    'upper',
    'lower',
    'the',
    'and',
    'of',
    'for',
    'opening',
    'little',
    'ring',
    'index'
  ],
  ...[
    'middle',
    'palm',
    'closing',
    'make',
    'both',
    'alike',
    'edging',
    'border',
    'increases',
    'yoke',
    'neck',
    'peak',
    'hat',
    'sock'
  ]
]);

/** Headings over things that are not knitted. */
const FRONT_WORDS =
  /^(?:materials?|notes?|yarn|gauge|tension|needles?|notions|abbreviations|key|terms|sizes?|finished (?:size|measurements)|skills|tools|you will need|instructions|pattern|directions|special (?:stitches|abbreviations)|stitch guide|measurements|equipment|about|construction|pattern notes|difficulty|charts?|chart \w|stitches used|what you need|you need|what i used)$/u;

/** Longest heading, in tokens outside brackets. */
const MOST_WORDS = 10;

/** A heading. */
export interface Heading {
  readonly name: string;
  readonly over: StageText['over'];
  /** True when what stands under it is no knitting: materials, notes, the key. */
  readonly isFront: boolean;
  /** Index after its last token: the whole line, or up to the colon when instructions follow on the same line. */
  readonly end: number;
}

/** Reads a line as a heading; `null` when it is something else. */
export function readHeading(at: Cursor): Heading | null {
  return at.attempt(() => {
    const marked = at.skip('#');
    const first = at.at;
    if (at.done || (!marked && at.looksLike(readLabel))) return null;
    const end = endOfName(at);
    const isHeading = marked || (end > first && (isLineHeading(at, first, end) || isLeadHeading(at, first, end)));
    if (!isHeading) return null;
    const over = readRemark(at, end);
    const name = nameOf(at, first, end);
    return { name, over, isFront: FRONT_WORDS.test(name.toLowerCase()), end: at.at };
  });
}

// The name goes up to a bracket, a colon, or the end of the line.
function endOfName(at: Cursor): number {
  let end = at.at;
  while (end < at.range.end && !/^[([:]$/u.test(at.source.tokens[end]!.text)) end += 1;
  return end;
}

function nameOf(at: Cursor, first: number, end: number): string {
  const { tokens, text } = at.source;
  if (end <= first) return '';
  return text.slice(tokens[first]!.from, tokens[end - 1]!.to).trim();
}

// Capitals, known stage words, or a colon at the end; nothing but a remark in brackets may follow.
function isLineHeading(at: Cursor, first: number, end: number): boolean {
  const words = at.source.tokens.slice(first, end);
  if (words.length > MOST_WORDS || words.some(({ text }) => /^[.;=*"]$/u.test(text))) return false;
  const hasComma = words.some(({ text }) => text === ',');
  if (hasComma && !isCapitals(at, first, end)) return false;
  if (!restIsRemark(at, end)) return false;
  const colon = at.source.tokens[at.range.end - 1]!.text === ':';
  if (isCapitals(at, first, end)) return !isOneStitch(at, first, end) && (words.every(isPlainWord) || colon);
  if (words.every(({ text }) => STAGE_WORDS.has(text) || text === '-')) return true;
  return (
    colon && words.every(isPlainWord) && !words.some(({ text }) => /^(?:only|sizes?|follows|needles?)$/u.test(text))
  );
}

function isPlainWord({ kind, text }: { readonly kind: string; readonly text: string }): boolean {
  return kind === 'word' || kind === 'ordinal' || /^[-&'/,]$/u.test(text);
}

function isCapitals(at: Cursor, first: number, end: number): boolean {
  const name = nameOf(at, first, end);
  return /\p{Lu}/u.test(name) && name === name.toUpperCase() && /\p{L}{2}/u.test(name);
}

function isOneStitch(at: Cursor, first: number, end: number): boolean {
  if (at.source.tokens.slice(first, end).every(({ text }) => STAGE_WORDS.has(text) || text === '-')) return false;
  const name = at.within(first, end);
  return (
    (end - first === 1 && startsInstruction(name)) || name.looksLike((inner) => readOperation(inner) && inner.done)
  );
}

function restIsRemark(at: Cursor, end: number): boolean {
  const { tokens, partners } = at.source;
  let index = end;
  if (tokens[index]?.text === '(' || tokens[index]?.text === '[') index = (partners[index] ?? -1) + 1;
  if (index === 0) return false;
  while (index < at.range.end && /^[:.]$/u.test(tokens[index]!.text)) index += 1;
  return index >= at.range.end;
}

// "Cuff: CO 56 sts." and "Toe: Rnd 1: …": a known stage word, and knitting behind the colon.
function isLeadHeading(at: Cursor, first: number, end: number): boolean {
  const { tokens } = at.source;
  const isKnown = tokens.slice(first, end).every(({ text }) => STAGE_WORDS.has(text));
  if (tokens[end]?.text !== ':' || !(isKnown || isCapitals(at, first, end))) return false;
  const rest = at.within(end + 1, at.range.end);
  const isRunIn = tokens[end]!.to - tokens[end]!.from > 1 && isCapitals(at, first, end);
  return isRunIn || rest.text() === 'co' || rest.phrase('cast on') || rest.looksLike(readLabel);
}

// Takes what follows the name: the remark, or only the colon when instructions follow.
function readRemark(at: Cursor, end: number): StageText['over'] {
  at.at = end;
  if (restIsRemark(at, end) || at.peek()?.kind === 'open') {
    const over = at.peek()?.kind === 'open' ? readOver(at.within(end + 1, Math.max(at.partner, end + 1))) : null;
    at.at = at.range.end;
    return over;
  }
  if (at.text() === ':') at.at += 1;
  else at.at = at.range.end;
  return null;
}

/**
 * Reads over which stitches something is worked flat: "back and forth on the sole sts", "worked back and forth over the
 * 32 heel sts". `null` when the words do not say that it is flat.
 */
export function readOver(at: Cursor): StageText['over'] {
  let flat = false;
  let over: StageText['over'] = null;
  while (!at.done) {
    if (at.phrase('back and forth', 'flat', 'in rows')) flat = true;
    else if (at.take('on', 'over')) over ??= at.attempt(readRun) ?? at.attempt(readNeedlesOver);
    else if (over === null && at.looksLike(readOnlyNeedles)) over = at.attempt(readNeedlesOver);
    else if (at.text() === '.') break;
    else at.at += 1;
  }
  return flat ? (over ?? { section: null, count: null }) : over;
}

// "needle 1 only".
function readOnlyNeedles(at: Cursor): boolean {
  return readNeedles(at) !== null && at.take('only', 'alone') !== null;
}

// "N3", "needle 1": a heading that names a needle is worked flat on it.
function readNeedlesOver(at: Cursor): StageText['over'] {
  const needles = readNeedles(at);
  return needles && needles !== 'each' ? needles : null;
}

// "the sole sts", "the first 32 sts of the rnd", "the 32 heel sts", "these 28 stitches".
function readRun(at: Cursor): StageText['over'] {
  at.skip('the', 'these', 'first', 'next', 'those');
  const count = readCount(at);
  const name = at.peek();
  const section = name && at.scope.isSection(name.text) ? name.text : null;
  if (section !== null) at.at += 1;
  if (!at.take('st', 'sts', 'stitch', 'stitches') && section === null) return null;
  if (/^needles?$/u.test(at.text())) return null;
  return count || section !== null ? { section, count } : null;
}
