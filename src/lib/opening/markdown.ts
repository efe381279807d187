/** Markdown turned into the plain lines of a pattern text. */

import { startsWithStitches } from './emphasis.ts';
import { mayBeHeading } from './heading-words.ts';
import { withoutTags } from './html.ts';
import { isAddress, plainWords, protect, restore } from './markdown-inline.ts';
import { isListItem, isRepeatMark, itemText } from './markdown-lists.ts';
import { cellsOf, isTableRule, writeTable } from './markdown-tables.ts';
import type { Reading } from './types.ts';

const HEADING = /^ {0,3}(#{1,6})[ \t]+(.*?)(?:[ \t]+#+)?[ \t]*$/u;
const UNDERLINE = /^ {0,3}(?:=+|-{2,})$/u;
const RULE = /^ {0,3}(?:(?:\*[ \t]*){3,}|(?:-[ \t]*){3,}|(?:_[ \t]*){3,})$/u;
const FENCE = /^ {0,3}(?:```|~~~)/u;
const DEFINITION = /^ {0,3}\[([^\]]+)\]:[ \t]+(\S+).*$/u;
const FRONT_MATTER = /^---\n(?:.*\n)*?---\n/u;
const BOLD_LINE = /^(?:\*\*|__)([^*_]+)(?:\*\*|__):?$/u;

/** What is known while the lines are gone through. */
interface Progress {
  readonly lines: readonly string[];
  /** Names of links that are defined somewhere in the text. */
  readonly links: ReadonlySet<string>;
  readonly written: string[];
  readonly unread: Set<string>;
}

/**
 * Reads a Markdown text. Headings begin with one "#", lists and tables become lines, emphasis and addresses go;
 * asterisks that mark a repeat stay, and so does everything in code.
 */
export function readMarkdown(source: string): Reading {
  const text = protect(source.replace(FRONT_MATTER, '').replace(/^.*\|.*$/gmu, withoutBreaks));
  const lines = withoutTags(text).split('\n');
  const links = new Set(lines.flatMap((line) => definedLink(line) ?? []));
  const progress: Progress = { lines, links, written: [], unread: new Set() };
  for (let at = 0; at < lines.length;) at += takeBlock(progress, at);
  const plain = restore(progress.written.join('\n'))
    .replace(/[ \t]+$/gmu, '')
    .replace(/\n{3,}/gu, '\n\n')
    .trim()
    .replace(/^#\s+/u, '');
  return { text: plain === '' ? '' : `${plain}\n`, unread: [...progress.unread] };
}

function withoutBreaks(row: string): string {
  return row.replace(/<br\b[^<>]*>/giu, ' ');
}

function definedLink(line: string): string | null {
  const [, name, address] = DEFINITION.exec(line) ?? [];
  return name && address && isAddress(address) ? name.toLowerCase() : null;
}

// Writes what begins at a line and returns how many lines it takes.
function takeBlock(progress: Progress, at: number): number {
  const line = progress.lines[at]!.replace(/^(?: {0,3}> ?)+/u, '');
  const next = progress.lines[at + 1] ?? '';
  if (FENCE.test(line)) return takeFence(progress, at);
  if (line.trim() === '' || RULE.test(line)) return write(progress, 1, '');
  if (definedLink(line) !== null) return 1;
  if (line.includes('|') && isTableRule(next)) return takeTable(progress, at);
  const heading = HEADING.exec(line)?.[2];
  if (heading !== undefined) return writeHeading(progress, 1, heading);
  if (UNDERLINE.test(next) && !isListItem(line)) return writeHeading(progress, 2, line);
  return takeParagraph(progress, at);
}

function takeFence({ lines, written }: Progress, at: number): number {
  let end = at + 1;
  while (end < lines.length && !FENCE.test(lines[end]!)) end += 1;
  written.push(...lines.slice(at + 1, end));
  return end + 1 - at;
}

function takeTable(progress: Progress, at: number): number {
  const { lines, written } = progress;
  let end = at + 2;
  while (end < lines.length && lines[end]!.includes('|')) end += 1;
  const rows = [lines[at]!, ...lines.slice(at + 2, end)].map((row) =>
    cellsOf(row).map((cell) => plainWords(cell, progress))
  );
  written.push('', ...writeTable(rows[0]!, rows.slice(1)), '');
  return end - at;
}

// Up to the next blank line or list item: a repeat may go over several printed lines.
function takeParagraph(progress: Progress, at: number): number {
  const { lines } = progress;
  let end = at + 1;
  while (end < lines.length && goesOn(lines[end]!, lines[end + 1] ?? '')) end += 1;
  const [first = '', ...others] = lines.slice(at, end).map((line) => line.replace(/^(?: {0,3}> ?)+/u, '').trim());
  const whole = [first, ...others].join('\n');
  const bold = others.length === 0 ? BOLD_LINE.exec(first)?.[1] : undefined;
  if (bold && !/\d/u.test(bold) && !startsWithStitches(bold) && mayBeHeading(bold)) {
    return writeHeading(progress, 1, bold);
  }
  const isItem = isListItem(first) && !isRepeatMark(whole);
  if (isItem && /^\d/u.test(first) && startsWithStitches(itemText(whole))) progress.unread.add(NUMBERS);
  return write(progress, end - at, withoutMarks(isItem ? itemText(whole) : whole, progress));
}

const NUMBERS = 'The numbers of lists were left out; write “Rnd 1:” where they count rounds.';

function goesOn(line: string, next: string): boolean {
  const isOther = line.trim() === '' || HEADING.test(line) || FENCE.test(line) || RULE.test(line) || isListItem(line);
  return !isOther && !UNDERLINE.test(next) && !isTableRule(next);
}

// A backslash at a line end is a break.
function withoutMarks(text: string, progress: Progress): string {
  return plainWords(text, progress).replace(/\\$/gmu, '');
}

function writeHeading(progress: Progress, lines: number, words: string): number {
  const plain = plainWords(words.trim(), progress);
  progress.written.push('', plain === '' ? '' : `# ${plain}`);
  return lines;
}

function write({ written }: Progress, lines: number, text: string): number {
  written.push(text);
  return lines;
}
