/** The text from its first line to its last: what stands before the first heading, and the stages under the headings. */

import type { Gauge, NeedleText, StageText, Statement } from '../model/pattern.ts';
import type { Span } from '../model/span.ts';
import { readCastOn, readSections } from './beginnings.ts';
import { readChartLine, readChartRows } from './charts.ts';
import { Cursor } from './cursor.ts';
import { readHeading, readOver, type Heading } from './headings.ts';
import { readDefinition, readKey } from './key.ts';
import { readLabel } from './labels.ts';
import type { MeantLine } from './lines.ts';
import { between, readReturn, withoutMarks, type Place, type Return } from './marks.ts';
import { readGauge, readNeedles, readSetOf } from './measures.ts';
import { prose } from './rows.ts';
import type { Scope } from './scope.ts';
import { readSizesLine } from './sizes.ts';
import { readStatements } from './statements.ts';
import type { TokenText } from './tokens.ts';

/** A stage being gathered. */
interface OpenStage {
  name: string;
  line: number;
  heading: Span;
  over: StageText['over'];
  isFront: boolean;
  statements: Statement[];
  to: number;
}

/** Most times that a sentence may go back to a mark. */
const MOST_RETURNS = 20;

/** Reads the lines behind the title. Mutable while reading; `finish` gives the result. */
export class StageReader {
  private readonly stages: OpenStage[] = [];
  private readonly introduction: Statement[] = [];
  /** Places that the text marks with asterisks between its rows. */
  private readonly marks: (Place & { readonly sign: string })[] = [];
  /** Sections named before the cast-on. */
  private readonly sections: Statement[] = [];
  gauge: Gauge = { stitchesPer10cm: null, rowsPer10cm: null };
  needles: NeedleText = { thicknessMm: null, lengthCm: null };

  constructor(
    private readonly source: TokenText,
    private readonly scope: Scope
  ) {}

  /** Reads one line. */
  read(line: MeantLine): void {
    const at = new Cursor(this.source, this.scope, { from: line.first, end: line.end });
    if (this.readFront(at)) return;
    const heading = readHeading(at);
    if (heading) this.open(at, heading, line);
    const rest = at.within(heading ? heading.end : line.first, line.end);
    if (rest.done) return;
    const unmarked = withoutMarks(rest);
    if (unmarked.before) this.mark(unmarked.before);
    if (!unmarked.at.done) this.readRest(unmarked.at, line);
    if (unmarked.after) this.mark(unmarked.after);
  }

  private readRest(rest: Cursor, line: MeantLine): void {
    const stage = this.stages.at(-1);
    if (stage && !stage.isFront) this.readInto(stage, rest);
    else if (!isChart(stage) && this.startsKnitting(rest)) this.readInto(this.openUnnamed(rest, line), rest);
    else this.readAside(rest, stage ?? null);
  }

  private mark(sign: string): void {
    const stage = Math.max(this.stages.length - 1, 0);
    this.marks.push({ sign, stage, statement: this.stages[stage]?.statements.length ?? 0 });
  }

  /** Stages as they were read, and the prose before the first. */
  finish(): { readonly stages: StageText[]; readonly introduction: Statement[] } {
    const stages = this.stages.map(({ name, line, heading, over, statements, to }) => {
      const span = { from: heading.from, to: Math.max(heading.to, to) };
      return { name, line, heading, over, statements: mergeProse(this.source.text, statements), span };
    });
    return { stages, introduction: mergeProse(this.source.text, this.introduction) };
  }

  // Lines about the whole pattern: sizes, gauge, needles, the key.
  private readFront(at: Cursor): boolean {
    const here = at.at;
    const isFront = readChartLine(at) || this.readFrontLine(at);
    if (isFront) this.keep(prose(at.within(here, at.range.end), this.spanOf(at)));
    return isFront;
  }

  private readFrontLine(at: Cursor): boolean {
    if (readSizesLine(at)) return true;
    const word = at.text();
    const colon = at.text(1) === ':' && !at.within(at.at + 2, at.range.end).done;
    if (word === 'gauge' || word === 'tension' || isGauge(at)) {
      if (!colon && this.stages.length > 0 && at.range.end - at.at < 3) return false;
      return this.addGauge(at);
    }
    if (colon && /^needles?$/u.test(word)) return this.addNeedles(at);
    return colon && readKeyLine(at);
  }

  private addGauge(at: Cursor): boolean {
    const found = readGauge(at.within(at.at, at.range.end));
    if (found.stitchesPer10cm === null && found.rowsPer10cm === null) return false;
    this.gauge = {
      stitchesPer10cm: this.gauge.stitchesPer10cm ?? found.stitchesPer10cm,
      rowsPer10cm: this.gauge.rowsPer10cm ?? found.rowsPer10cm
    };
    return true;
  }

  // "You'll need: … Gauge is 32 sts x 46 rnds = 4 inches."
  private findGauge(at: Cursor): void {
    const inner = at.within(at.at, at.range.end);
    while (!inner.done && !/^(?:gauge|tension)$/u.test(inner.text())) inner.at += 1;
    if (!inner.done) this.addGauge(inner);
  }

  private addNeedles(at: Cursor): boolean {
    const found = readNeedles(at.within(at.at + 2, at.range.end));
    this.scope.holding ||= readSetOf(at.within(at.at + 2, at.range.end));
    this.needles = {
      thicknessMm: this.needles.thicknessMm ?? found.thicknessMm,
      lengthCm: this.needles.lengthCm ?? found.lengthCm
    };
    return true;
  }

  // Lines under "Notes", "Materials" or "Abbreviations", and lines before the first heading.
  private readAside(at: Cursor, stage: OpenStage | null): void {
    const name = stage?.name.toLowerCase() ?? '';
    if (/^(?:gauge|tension)$/u.test(name)) this.addGauge(at);
    else this.findGauge(at);
    if (/^needles?$/u.test(name)) this.addNeedles(at);
    if (/key|abbreviations|terms|stitch/u.test(name)) readKey(at.within(at.at, at.range.end));
    const sections = at.within(at.at, at.range.end).attempt(readSections);
    if (sections) this.sections.push(sections);
    if (isChart(stage)) readChartRows(at.within(at.at, at.range.end), name.slice(6));
    this.readDefinitions(at);
    this.keep(prose(at, this.spanOf(at)));
  }

  private readDefinitions(at: Cursor): void {
    const inner = at.within(at.at, at.range.end);
    while (!inner.done) {
      if (inner.atSentence && readDefinition(inner)) continue;
      inner.at += 1;
    }
  }

  private keep(statement: Statement): void {
    const stage = this.stages.at(-1);
    (stage?.statements ?? this.introduction).push(statement);
    if (stage) stage.to = statement.span.to;
  }

  private startsKnitting(at: Cursor): boolean {
    return at.looksLike(readLabel) || at.looksLike(readCastOn);
  }

  private open(at: Cursor, heading: Heading, line: MeantLine): void {
    const { name, over, isFront, end } = heading;
    const span = at.within(line.first, end);
    span.at = end;
    this.start({ name, over, isFront, line: line.number, heading: span.span(line.first) });
  }

  private openUnnamed(at: Cursor, line: MeantLine): OpenStage {
    const from = at.peek()?.from ?? 0;
    return this.start({ name: 'Start', over: null, isFront: false, line: line.number, heading: { from, to: from } });
  }

  private start(told: Omit<OpenStage, 'statements' | 'to'>): OpenStage {
    const stage: OpenStage = { ...told, statements: [], to: told.heading.to };
    this.stages.push(stage);
    this.scope.stage = told.name;
    this.scope.onlySizes = null;
    return stage;
  }

  private readInto(stage: OpenStage, at: Cursor): void {
    if (at.attempt(() => this.goBack(readReturn(at)) || null)) {
      if (!at.done) this.readInto(this.stages.at(-1)!, at.within(at.at, at.range.end));
      return;
    }
    const statements = this.withSections(readStatements(at));
    stage.statements.push(...statements);
    stage.to = this.spanOf(at).to;
    stage.over ??= this.overOf(statements, at);
  }

  // What stood between the marks is told again here; stages that it goes through are opened again.
  private goBack(back: Return | null): boolean {
    if (!back) return false;
    const { from, piece, to, times } = back;
    const start = piece === null ? this.marks.find(({ sign }) => sign === from) : this.beginningOf(piece);
    const end = this.marks.findLast((place) => place.sign === to && start && isAfter(place, start));
    if (!start || !end) return false;
    const parts = between(this.stages, start, end);
    for (let time = 0; time < Math.min(times, MOST_RETURNS); time += 1) {
      parts.forEach(({ stage, statements }, index) => {
        if (index > 0) this.start({ ...this.stages[stage]! });
        this.stages.at(-1)!.statements.push(...statements);
      });
    }
    return true;
  }

  private beginningOf(piece: string): Place | null {
    const stage = this.stages.findIndex(({ name }) => name.toLowerCase().startsWith(piece));
    return stage < 0 || stage === this.stages.length - 1 ? null : { stage, statement: 0 };
  }

  // Sections that are named before anything is cast on hold from the cast-on.
  private withSections(statements: readonly Statement[]): Statement[] {
    const index = statements.findIndex(({ kind }) => kind === 'cast-on');
    if (index < 0) return [...statements];
    const named = this.sections.splice(0);
    return [...statements.slice(0, index + 1), ...named, ...statements.slice(index + 1)];
  }

  // "The heel flap is worked back and forth on the 32 heel sts." says what a heading may say.
  private overOf(statements: readonly Statement[], at: Cursor): StageText['over'] {
    const isFlat = statements.some(
      (statement) => statement.kind === 'prose' && /back and forth|worked flat/iu.test(statement.text)
    );
    return isFlat ? readOver(at.within(at.range.from, at.range.end)) : null;
  }

  private spanOf(at: Cursor): Span {
    const { tokens } = this.source;
    return { from: tokens[at.range.from]!.from, to: tokens[at.range.end - 1]!.to };
  }
}

// "30 sts and 42 rnds = 10 cm" without a word before it.
function isGauge(at: Cursor): boolean {
  return at.looksLike(() => {
    if (at.number() === null || !at.take('st', 'sts', 'stitches')) return false;
    while (!at.done && at.text() !== '=' && !at.phrase('to', 'per')) at.at += 1;
    return !at.done && /\b(?:cm|inch(?:es)?|in|")/iu.test(at.source.text.slice(at.peek()!.from, at.peek()!.from + 20));
  });
}

function readKeyLine(at: Cursor): boolean {
  if (!/^(?:key|abbreviations|terms)$/u.test(at.text())) return false;
  at.at += 2;
  readKey(at);
  return true;
}

function isAfter(place: Place, start: Place): boolean {
  return place.stage > start.stage || (place.stage === start.stage && place.statement > start.statement);
}

// "CHART A": what stands under it is worked where rows point to it.
function isChart(stage: OpenStage | undefined | null): boolean {
  return /^chart(?: \w)?$/iu.test(stage?.name ?? '');
}

// Nothing but blanks and marks.
function isSilentBetween(text: string, from: number, to: number): boolean {
  return !/[\p{L}\p{N}]/u.test(text.slice(from, to));
}

// Sentences of prose that stand together are one note.
function mergeProse(text: string, statements: readonly Statement[]): Statement[] {
  const merged: Statement[] = [];
  for (const statement of statements) {
    const last = merged.at(-1);
    if (
      statement.kind === 'prose' &&
      last?.kind === 'prose' &&
      isSilentBetween(text, last.span.to, statement.span.from)
    ) {
      const span = { from: last.span.from, to: statement.span.to };
      merged[merged.length - 1] = { kind: 'prose', text: text.slice(span.from, span.to).trim(), span };
    } else merged.push(statement);
  }
  return merged;
}
