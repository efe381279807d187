/** Plain sentences on what of some pages was not taken into the text. */

import type { Page } from './types.ts';

/** What was found on each page, in the order of the pages. */
export interface Findings {
  /** Running lines that were left out. */
  readonly taken: readonly (readonly string[])[];
  /** How many signs nobody can read. */
  readonly unknown: readonly number[];
}

/** Most running lines that are told one by one. */
const MOST_TOLD = 6;

/** Says what of the pages was left out or could not be read, most serious first. */
export function sayUnread(pages: readonly Page[], { taken, unknown }: Findings): string[] {
  const numbers = (holds: (page: Page, index: number) => boolean) =>
    pages.flatMap((page, index) => (holds(page, index) ? [index + 1] : []));
  const isBare = ({ items }: Page) => items.every(({ text }) => text.trim() === '');
  const pictures = (page: Page) => page.pictures ?? 0;
  return [
    ...say(
      numbers((page) => isBare(page) && pictures(page) > 0),
      pictureOnly
    ),
    ...say(
      numbers((page) => isBare(page) && pictures(page) === 0),
      (where, many) => (many ? `${where} have no text layer.` : `${where} has no text layer.`)
    ),
    ...say(
      numbers((page) => (page.sideways ?? 0) > 0),
      (where) => `Text that runs sideways was left out: ${where}.`
    ),
    ...say(
      numbers((_, index) => unknown[index]! > 0),
      unreadable
    ),
    ...say(
      numbers((page) => !isBare(page) && pictures(page) > 0),
      pictureBeside
    ),
    ...sayTaken(taken)
  ];
}

function pictureOnly(where: string, many: boolean): string {
  return many ? `${where} hold pictures without text.` : `${where} holds a picture without text.`;
}

function pictureBeside(where: string, many: boolean): string {
  return `${where} also ${many ? 'hold' : 'holds'} pictures; what is drawn in them, such as a chart, is not read.`;
}

function unreadable(where: string): string {
  return `Signs of a font of its own cannot be read and stand as “\uFFFD”: ${where}.`;
}

function say(numbers: readonly number[], sentence: (where: string, many: boolean) => string): string[] {
  return numbers.length === 0 ? [] : [sentence(placeOf(numbers), numbers.length > 1)];
}

// "Page 2", "Pages 2 and 5", "Pages 1, 2 and 5".
function placeOf(numbers: readonly number[]): string {
  if (numbers.length === 1) return `Page ${numbers[0]}`;
  return `Pages ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}

// Lines that differ only in their digits are told once.
function sayTaken(taken: readonly (readonly string[])[]): string[] {
  const lines = new Map<string, string[]>();
  for (const line of taken.flat()) {
    const key = line.replace(/\d+/gu, '0');
    lines.set(key, [...(lines.get(key) ?? []), line]);
  }
  const told = [...lines.values()].map((alike) => {
    const [first, last] = [alike[0]!, alike.at(-1)!];
    return first === last ? `“${first}”` : `“${first}” to “${last}”`;
  });
  const more = told.length > MOST_TOLD ? ` and ${told.length - MOST_TOLD} more` : '';
  const list = told.slice(0, MOST_TOLD).join(', ');
  return told.length === 0 ? [] : [`Left out as titles and numbers of the pages: ${list}${more}.`];
}
