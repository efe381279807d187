/** Printed lines written as lines of a pattern text: headings, paragraphs, and lines that go on. */

import { mayBeHeading } from './heading-words.ts';
import { joinBroken } from './hyphens.ts';
import type { Line } from './lines.ts';

/** What the lines of a document have in common. */
export interface Manner {
  /** The size of most letters, in points. */
  readonly fontSize: number;
  /** True when most letters are bold, so that bold tells nothing. */
  readonly bold: boolean;
  /** Words of the whole text, for `joinBroken()`. */
  readonly words: ReadonlySet<string>;
}

/** How much larger than the text a heading is. */
const LARGER = 1.15;

/** A gap this much larger than the usual one begins a paragraph. */
const PARAGRAPH = 1.35;

/** A label or one of these words begins a line of its own, however long the line before it is. */
const BEGINS = /^[^:]{0,40}:|^(?:rnds?|rounds?|rows?|next|rep|repeat|co|cast|join|sizes?|bo|bind)\b/iu;

/** A row that is told part by part, "Rnd 3: Front: k2, p2.", and the next of its parts. */
const PARTED_ROW = /^(?:rnd|round|row)s?\s[^:]*:\s*\p{L}[\p{L}\d ]{0,20}:/iu;
const PART = /^(?!(?:rnd|round|row|next)s?\b)\p{Lu}[\p{L}\d ]{0,20}:\s*\S/iu;

/** How much of the column a line fills that goes on. */
const LEAST_FILL = 0.6;

/** Fewest lines from which the width of a column is known. */
const ENOUGH_LINES = 4;

/** True when a line is a heading by its print: larger letters, or bold ones that say no instruction. */
function isHeading(line: Line, manner: Manner): boolean {
  const isLarge = line.fontSize >= LARGER * manner.fontSize;
  const isBold = line.bold && !manner.bold && !/\d/u.test(line.text);
  return (isLarge || isBold) && mayBeHeading(line.text);
}

/**
 * Writes the blocks of a document, in the order of reading, as lines of text. A blank line begins a paragraph;
 * headings other than the first line begin with "#".
 */
export function writeBlocks(blocks: readonly (readonly Line[])[], manner: Manner): string[] {
  const written: string[] = [];
  let last: Line | null = null;
  for (const block of blocks) {
    const measure = measureOf(block);
    block.forEach((line, index) => {
      write(written, line, { before: last, manner, measure: index === 0 ? null : measure });
      last = line;
    });
  }
  return written;
}

/** Usual distance of lines in a block, where it begins, and where its longest line ends. */
interface Measure {
  readonly distance: number;
  readonly left: number;
  readonly right: number;
  readonly lines: number;
}

interface Place {
  readonly before: Line | null;
  readonly manner: Manner;
  /** `null` for the first line of a block: what stands before it is on another column or page. */
  readonly measure: Measure | null;
}

interface Pair {
  readonly before: Line;
  readonly line: Line;
  readonly measure: Measure;
}

function write(written: string[], line: Line, place: Place): void {
  const { before, manner, measure } = place;
  const last = written.length - 1;
  if (!before) return void written.push(line.text);
  if (isHeading(line, manner)) return writeHeading(written, line, place);
  const isNew = isHeading(before, manner) || (measure ? isParagraph(before, line, measure) : isEnded(before.text));
  if (isNew) return void written.push('', line.text);
  const joined = joinBroken(written[last]!, line.text, manner.words);
  if (joined !== null) written[last] = joined;
  else if (measure && goesOn(written[last]!, { before, line, measure })) written[last] += ` ${line.text}`;
  else written.push(line.text);
}

// A large heading of two lines is one.
function writeHeading(written: string[], line: Line, { before, manner, measure }: Place): void {
  const isSame =
    measure &&
    before &&
    isHeading(before, manner) &&
    Math.abs(before.fontSize - line.fontSize) < 0.5 &&
    line.fontSize >= LARGER * manner.fontSize &&
    line.y - before.y < 1.4 * line.fontSize;
  if (isSame) written[written.length - 1] += ` ${line.text}`;
  else written.push('', `# ${line.text}`);
}

function isParagraph(before: Line, line: Line, { distance }: Measure): boolean {
  return line.y - before.y > PARAGRAPH * distance;
}

function isEnded(text: string): boolean {
  return /[.:!?)\]]$/u.test(text);
}

// The first word of the line did not fit behind the line before. Only a capital needs this: a small letter says it itself.
function goesOn(written: string, { before, line, measure }: Pair): boolean {
  if (measure.lines < ENOUGH_LINES || !/^\p{Lu}/u.test(line.text) || !fills(before, line, measure)) return false;
  if ([before, line].some(({ text }) => text.includes('   '))) return false;
  if (PARTED_ROW.test(written) && PART.test(line.text)) return true;
  return !isEnded(before.text) && !BEGINS.test(line.text);
}

function fills(before: Line, line: Line, { left, right }: Measure): boolean {
  const word = line.text.split(' ')[0]!.length + 1;
  const letter = (line.right - line.x) / line.text.length;
  return before.right + word * letter > right && before.right - left >= LEAST_FILL * (right - left);
}

function measureOf(block: readonly Line[]): Measure {
  const distances = block
    .slice(1)
    .map((line, index) => line.y - block[index]!.y)
    .toSorted((a, b) => a - b);
  return {
    distance: distances[Math.floor((distances.length - 1) / 2)] ?? 0,
    left: Math.min(...block.map(({ x }) => x)),
    right: Math.max(...block.map(({ right }) => right)),
    lines: block.length
  };
}
