/** The part of a pattern under one heading: its heading, then a line for each statement. */

import type { Pattern, RowText, StageText, Statement } from '../../model/pattern.ts';
import { operationNamed } from '../../model/operations.ts';
import { isUnnamed } from './front.ts';
import { flatOver } from './needles.ts';
import { sentences, sideOf, withoutDots } from './prose.ts';
import { statement } from './statements.ts';

/** What the lines of a stage must know of the rest of the pattern. */
interface Whole {
  readonly pattern: Pattern;
  /** "Left: " in a row that is followed by words for the right. */
  readonly sides: ReadonlyMap<Statement, string>;
}

/** All stages, each a block of lines. */
export function stages(pattern: Pattern): string[] {
  const whole = { pattern, sides: sidesOf(pattern) };
  return pattern.stages.map((stage, index) => block(stage, index, whole));
}

function block(stage: StageText, index: number, whole: Whole): string {
  const { statements: list } = stage;
  const isWords = list.every(({ kind }) => kind === 'prose');
  const lines = list.flatMap((told, at) => line(told, { list, at, index, whole, isWords }));
  return [heading(stage), ...lines].filter((text) => text !== '').join('\n');
}

interface Place {
  readonly list: readonly Statement[];
  readonly at: number;
  readonly index: number;
  readonly whole: Whole;
  readonly isWords: boolean;
}

function line(told: Statement, place: Place): string[] {
  if (told.kind === 'prose') return [place.isWords ? withoutDots(told.text) : sentences(told.text)];
  if (isToldInWords(told, place)) return [];
  const { list, at, whole } = place;
  const row = list.slice(0, at).findLast((one): one is RowText => one.kind === 'row');
  const noun = row?.noun.toLowerCase() ?? 'rnd';
  return [statement(told, { names: whole.pattern.sizes, noun, lead: whole.sides.get(told) ?? '' })];
}

// Prose that is kept holds these already; a lead-in without a move does nothing.
function isToldInWords(told: Statement, place: Place): boolean {
  const before = place.list[place.at - 1];
  if (told.kind === 'arrange') return told.actions.length === 0;
  if (told.kind === 'multiple') return before?.kind === 'prose' && /\bmult/iu.test(before.text);
  return told.kind === 'sections' && isToldBefore(told, place);
}

// Sections that words before the cast-on name hold from there: they need no line of their own behind it.
function isToldBefore(told: Extract<Statement, { kind: 'sections' }>, { list, at, index, whole }: Place): boolean {
  const castOn = list.slice(0, at).findLastIndex(({ kind }) => kind === 'cast-on');
  if (castOn < 0 || list.slice(castOn + 1, at).some(({ kind }) => kind !== 'sections')) return false;
  const { introduction, stages: all } = whole.pattern;
  const before = [introduction, ...all.slice(0, index).map(({ statements }) => statements)].flat();
  const words = before.map((one) => (one.kind === 'prose' ? one.text : '')).join('\n');
  const lines = words.match(/^[ \t]*sections?[ \t]*:.*$/gimu) ?? [];
  return lines.some((text) => told.runs.every(({ name }) => text.toLowerCase().includes(name)));
}

function heading(stage: StageText): string {
  const { name, over } = stage;
  if (isUnnamed(stage)) return '';
  const isPlain = /^(?:\p{Lu}{2,}[-&'/ ]*)+$/u.test(name) && operationNamed(name) === null;
  const remark = over === null ? '' : ` (back and forth${flatOver(over) === '' ? '' : ` on ${flatOver(over)}`})`;
  return `${isPlain ? '' : '# '}${name}${remark}`;
}

// Words for the other side are told apart only when the side that is worked has been named before them.
function sidesOf(pattern: Pattern): Map<Statement, string> {
  const all = pattern.stages.flatMap(({ statements }) => statements);
  const at = all.findIndex((told) => told.kind === 'prose' && sideOf(told.text) !== null);
  const found = all[at];
  const before = all.slice(0, Math.max(at, 0)).findLast(({ kind }) => kind === 'row');
  if (found?.kind !== 'prose' || !before) return new Map();
  return new Map([[before, sideOf(found.text) === 'left' ? 'Right: ' : 'Left: ']]);
}
