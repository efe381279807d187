/** What the text itself gives names to: stitches of its own key, sections, markers. */

import { operationNamed, type Operation, type Pattern, type Workpiece } from '$lib/core/index.ts';
import { knitSafely } from './knit-safely.ts';
import { stepsIn, type ToldStage } from './told.ts';

/** A stitch that the pattern explains. */
export type Term = Pick<Operation, 'name' | 'words' | 'takes' | 'makes' | 'leans' | 'crosses'>;

/** The names of a text. */
export interface Glossary {
  readonly terms: readonly Term[];
  readonly sections: readonly string[];
  readonly markers: readonly string[];
}

/** Most stitches of a key that are looked up. */
const MOST_TERMS = 200;

/** A line that explains stitches, with the lines that it goes on in. */
const KEY_LINE = /^[ \t]*(?:key|abbreviations|terms)[ \t]*:.+(?:\r?\n(?![ \t]*[\p{L} ]+:).*\S.*)*/gimu;
const KEY_STAGE = /key|abbreviations|terms|stitch/iu;
const ENTRY = /(?<=^|[;.,:])[ \t]*([^\s;:.,=][^;:.,=\n]{0,23}?)[ \t]*[=:](?=[ \t]*[^\s;:.,=])/gmu;

/** The stretches of the text that explain stitches. */
export function keyOf({ text, pattern }: Workpiece): string {
  const lines = text.match(KEY_LINE) ?? [];
  const stages = pattern.stages.filter(isKey).map(({ span }) => text.slice(span.from, span.to));
  return [...lines, ...stages].join('\n');
}

function isKey({ name, statements }: ToldStage): boolean {
  return KEY_STAGE.test(name) && statements.every(({ kind }) => kind === 'prose');
}

/** The stitches of a key, as the reader of the text takes them: each is read in a row of its own. */
export function termsOf(key: string): Term[] {
  const names = [...new Set([...key.matchAll(ENTRY)].map((found) => found[1]!))].slice(0, MOST_TERMS);
  if (names.length === 0) return [];
  const rows = names.map((name, index) => `Rnd ${index + 1}: ${name}.`);
  const { pattern } = knitSafely(`Key\n${key}\n\nBODY\n${rows.join('\n')}\n`);
  const read = operationsByRow(pattern);
  return names.flatMap((name, index) => {
    const operation = read.get(index + 1);
    return operation && !isCommon(name, operation) ? [termOf(name, operation)] : [];
  });
}

function operationsByRow({ stages }: Pattern): Map<number, Operation> {
  const found = new Map<number, Operation>();
  for (const told of stages.at(-1)?.statements ?? []) {
    if (told.kind !== 'row' || told.numbers.kind !== 'numbers') continue;
    const [only, ...others] = told.body;
    if (only?.kind === 'work' && others.length === 0) found.set(told.numbers.numbers[0]!, only.operation);
  }
  return found;
}

// "k2tog = knit 2 together" says what everybody knows.
function isCommon(name: string, { words, takes, makes }: Operation): boolean {
  const common = operationNamed(name);
  return common?.words === words && common.takes === takes && common.makes === makes;
}

// The reading of a cable begins with its entry in the key: "3/3 RC = sl 3 to cn, hold back …".
function termOf(name: string, { words, takes, makes, leans, crosses }: Operation): Term {
  const meaning = words.slice(words.startsWith(name) ? name.length : 0).replace(/^\s*[=:]\s*/u, '');
  return { name, words: meaning || words, takes, makes, leans, crosses };
}

/** Sections and markers that the text names, in the order in which they first come. */
export function namesIn({ stages }: Pattern): Omit<Glossary, 'terms'> {
  const sections = new Set<string>();
  const markers = new Set<string>();
  for (const told of stages.flatMap(({ statements }) => statements)) {
    if (told.kind === 'sections') for (const { name } of told.runs) sections.add(name);
    if (told.kind === 'join' && told.marker) markers.add('BOR');
    if (told.kind !== 'row') continue;
    for (const step of stepsIn(told.body)) if (step.kind === 'marker' && step.name !== null) markers.add(step.name);
  }
  return { sections: [...sections], markers: [...markers] };
}
