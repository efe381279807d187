/** What is offered at a place of the text. Knows lines and words, not the editor. */

import { operationNamed } from '$lib/core/index.ts';
import type { Names } from '../editor.svelte.ts';
import { nextLabels, type LineAbove } from './labels.ts';
import { sayArithmetic, type Term } from './readings.ts';
import { HAND_WORDS, HEADINGS, OFFERED_HANDS, OFFERED_STITCHES } from './words.ts';

/** A place in the text. */
export interface Place {
  /** The line up to the cursor. */
  readonly before: string;
  /** What the line was before it was changed; `null` for one with instructions, or a new one. */
  readonly kind: 'title' | 'heading' | 'prose' | null;
  /** The lines above, the nearest first. */
  readonly above: Iterable<LineAbove>;
  readonly names: Names;
  /** True when the knitter asks, and has not only typed. */
  readonly isAsked: boolean;
}

/** One thing offered. */
export interface Offer {
  readonly label: string;
  readonly detail: string;
  /** What is written; the label when it is missing. */
  readonly apply?: string;
}

/** What is offered in place of the word before the cursor. */
export interface Offers {
  /** Column where that word begins. */
  readonly from: number;
  readonly offers: readonly Offer[];
}

/** Letters that must be typed before anything is offered unasked. */
const LEAST = 2;

const ROW_LABEL =
  /^\s*(?:[^:]*\bonly:\s*)?(?:rnds?|rounds?|rows?|next|dec|inc|set-?up|all|plain|\d+(?:st|nd|rd|th))\b[^:]*:/iu;
const ROW_WORK = /^\s*[*[(]*\s*(?:[kp]\d|(?:k|p|sl|yo|ssk|knit|purl|slip|k2tog)\b)/iu;

/** What is offered at a place; `null` for nothing. */
export function offersAt(place: Place): Offers | null {
  const word = /[\p{L}\d/&]*$/u.exec(place.before)![0];
  const from = place.before.length - word.length;
  if (!place.isAsked && (word.length < LEAST || /^[kp]?\d+$/iu.test(word))) return null;
  const head = place.before.slice(0, from);
  const offers = matching(candidates(place, head), word, place.isAsked);
  return offers.length === 0 ? null : { from, offers };
}

function candidates(place: Place, head: string): readonly Offer[] {
  if (/^\s*#?\s*$/u.test(head)) return place.kind === 'title' ? [] : beginnings(place, head);
  const isRow = ROW_LABEL.test(head) || (place.kind === null && ROW_WORK.test(head));
  if (!isRow && !place.isAsked) return [];
  if (/\bto\s+$/iu.test(head)) return targets(place.names);
  if (/\b(?:over|on|across)\s+(?:the\s+)?$/iu.test(head)) return sectionStitches(place.names);
  if (/[\])]\s+$/u.test(head)) return HOW_OFTEN;
  if (!/(?:[:,;.*[(]|\b(?:then|and))\s*$/iu.test(head)) return [];
  return [...repeatEnds(head), ...stitches(place.names), ...sectionLabels(place.names)];
}

// The word is completed as it is begun; one that stands there already is not offered.
function matching(offers: readonly Offer[], word: string, isAsked: boolean): Offer[] {
  const begun = word.toLowerCase();
  const found = offers.filter(({ label }) => label.toLowerCase().startsWith(begun));
  const isWhole = found.some(({ label }) => label.toLowerCase().trim() === begun);
  if (isWhole && !isAsked && found.length === 1) return [];
  return found.map((offer) => ({ ...offer, apply: likeTyped(offer.apply ?? offer.label, word) }));
}

// "SS" gives SSK, "K2" gives K2tog; names that hold capitals stay as they are.
function likeTyped(label: string, word: string): string {
  if (/\p{Lu}/u.test(label)) return label;
  if (/^\p{Lu}{2,}$/u.test(word) && /^\p{L}+$/u.test(label)) return label.toUpperCase();
  return /^\p{Lu}/u.test(word) ? label.charAt(0).toUpperCase() + label.slice(1) : label;
}

function stitches({ terms }: Names): Offer[] {
  const own = terms.map((term) => ({ label: term.name, detail: `${sayTerm(term)}; key` }));
  const known = new Set(own.map(({ label }) => label.toLowerCase()));
  const standard = OFFERED_STITCHES.flatMap((name) => {
    const operation = operationNamed(name);
    return operation && !known.has(name.toLowerCase()) ? [{ label: name, detail: sayTerm(operation) }] : [];
  });
  return [...own, ...standard, ...OFFERED_HANDS.map((label) => ({ label, detail: HAND_WORDS[label]! }))];
}

function sayTerm(term: Term): string {
  return `${term.words}; ${sayArithmetic(term)}`;
}

const HOW_OFTEN: readonly Offer[] = [
  { label: 'to end', detail: 'as often as there is room' },
  { label: 'around', detail: 'to the end of the round' },
  { label: 'twice', detail: 'two times in all' },
  { label: 'times', detail: 'after a number' }
];

// After an asterisk that no "rep from *" has answered yet.
function repeatEnds(head: string): Offer[] {
  const signs = head.match(/\*/gu)?.length ?? 0;
  const answered = head.match(/\bfrom\s*\*/giu)?.length ?? 0;
  if (signs <= 2 * answered) return [];
  return [
    { label: 'rep from * to end', detail: 'to the end of the row' },
    { label: 'rep from * to last 2 sts', detail: 'up to the stitches that are left' },
    { label: 'rep from * 2 more times', detail: 'three times in all' }
  ];
}

function targets({ markers }: Names): Offer[] {
  const named = markers.map((name) => ({
    label: name === 'BOR' ? name : `marker ${name}`,
    detail: 'marker of the text'
  }));
  return [
    { label: 'end', detail: 'to the end of the row' },
    { label: 'last 2 sts', detail: 'leaves two stitches' },
    { label: 'm', detail: 'to the next marker' },
    ...named
  ];
}

function sectionStitches({ sections }: Names): Offer[] {
  return sections.map((name) => ({ label: `${name} sts`, detail: 'section of the text' }));
}

function sectionLabels({ sections }: Names): Offer[] {
  return sections.map((name) => ({
    label: `${name.charAt(0).toUpperCase()}${name.slice(1)}: `,
    detail: 'over this section only'
  }));
}

// A line begins with the label of a row or, after an empty line, with a heading.
function beginnings(place: Place, head: string): Offer[] {
  const lines = [...place.above];
  const isAfterGap = (lines[0]?.text.trim() ?? '') === '';
  const labels = head.includes('#') ? [] : nextLabels(lines);
  return [...labels, ...(isAfterGap || head.includes('#') ? headings(lines, place, head) : [])];
}

// Headings look like those above: "# Cuff", "CUFF" or "Cuff:".
function headings(lines: readonly LineAbove[], { isAsked, before }: Place, head: string): Offer[] {
  const told = lines.filter(({ isHeading }) => isHeading).map(({ text }) => text.trim());
  const style = told.find((text) => /\p{L}/u.test(text)) ?? 'CUFF';
  const isMarked = style.startsWith('#');
  const dress = (name: string) => {
    if (isMarked) return head.includes('#') ? name : `# ${name}`;
    return style === style.toUpperCase() ? name.toUpperCase() : `${name}${style.endsWith(':') ? ':' : ''}`;
  };
  const word = before.slice(head.length);
  const known = new Set(told.map((text) => text.replaceAll(/[#:]/gu, '').trim().toLowerCase()));
  return HEADINGS.filter((name) => !known.has(name.toLowerCase()))
    .map((name) => ({ label: dress(name), detail: 'heading' }))
    .filter(({ label }) => isAsked || label.startsWith(word));
}
