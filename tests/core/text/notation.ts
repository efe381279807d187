/**
 * A short way to write instructions and statements, so that a case is one line.
 *
 *   k4 p2 k2tog       stitches; `k2tog x3` three times; `k6|8|10` by size, `-` for a size that has none
 *   k>end k>-3        to the end, to the last 3; `k>m`, `k>A-3`, `k>gap-1`, `k>heel`; `~` for stitches as they present themselves
 *   ~20               20 stitches as they present themselves
 *   [k2 p2]x4 [..]>end  groups; `x?7` where 7 may mean 8
 *   <k1 p1 k1>        into one stitch
 *   m1@6              spread evenly
 *   pm pm:A sm rm     markers; `lock`; `pu15 co3 bo6 bo hold13:thumb turn w&t turn+ds`
 *   instep{k3}        over one section
 */

import type {
  Assertion,
  Extent,
  Instruction,
  RowNumbers,
  RowText,
  Statement,
  Target
} from '$lib/core/model/pattern.ts';
import { printArrangement, printRef, printRefs, printSized } from './notation-needles.ts';
import type { Arrangement } from '$lib/core/model/needle-words.ts';
import type { Sized } from '$lib/core/model/sized.ts';
import { readPattern } from '$lib/core/text/read.ts';

function printTarget(target: Target): string {
  switch (target.kind) {
    case 'end':
      return 'end';
    case 'last':
      return `-${printSized(target.count)}`;
    case 'marker':
      return `${target.name ?? 'm'}${printBefore(target.before)}`;
    case 'gap':
      return `gap${printBefore(target.before)}`;
    case 'next':
      return `+${printSized(target.count)}`;
    case 'double-stitch':
      return `ds${printBefore(target.before)}`;
    case 'centre':
      return `mid ${target.name}`;
    case 'section':
      return target.name;
    case 'needle':
      return `${target.needle ? printRef(target.needle) : 'needle'}${printBefore(target.before)}`;
  }
}

function printBefore(before: Sized<number>): string {
  return before.length === 1 && before[0] === 0 ? '' : `-${printSized(before)}`;
}

function printExtent(extent: Extent): string {
  if (extent.kind === 'to') return `>${printTarget(extent.target)}`;
  return `x${extent.kind === 'unclear-times' ? '?' : ''}${printSized(extent.count)}`;
}

function printWork(name: string, count: Sized<number>): string {
  if (name.length <= 2 && /^(?:k|p|sl)$/u.test(name)) return `${name}${printSized(count)}`;
  return count.length === 1 && count[0] === 1 ? name : `${name} x${printSized(count)}`;
}

/** Prints one instruction. */
function printInstruction(instruction: Instruction): string {
  switch (instruction.kind) {
    case 'work':
      return printWork(instruction.operation.name, instruction.count);
    case 'work-to':
      return `${instruction.operation?.name ?? '~'}>${printTarget(instruction.target)}`;
    case 'work-as-set':
      return `~${printSized(instruction.count)}`;
    case 'group':
      return `[${printBody(instruction.body)}]${printExtent(instruction.extent)}`;
    case 'into-one':
      return `<${printBody(instruction.body)}>`;
    case 'evenly':
      return `${instruction.operation.name}@${printSized(instruction.count)}`;
    case 'shape':
      return `${instruction.change}${printSized(instruction.count)}@${instruction.places}`;
    case 'over':
      return `${instruction.section}{${printBody(instruction.body)}}`;
    case 'over-target':
      return `>${printTarget(instruction.target)}{${printBody(instruction.body)}}`;
    case 'over-needles':
      return `${printRefs(instruction.needles)}{${printBody(instruction.body)}}`;
    case 'move-stitches':
    case 'gather':
    case 'name-needle':
    case 'move-bor':
    case 'work-flat':
    case 'move-yarn':
      return printArrangement(instruction);
    default:
      return printAtEdge(instruction);
  }
}

type AtEdge = Exclude<
  Instruction,
  | {
      kind:
        | 'work'
        | 'work-to'
        | 'work-as-set'
        | 'group'
        | 'into-one'
        | 'evenly'
        | 'shape'
        | 'over'
        | 'over-target'
        | 'over-needles';
    }
  | { kind: Arrangement['kind'] }
>;

function printAtEdge(instruction: AtEdge): string {
  switch (instruction.kind) {
    case 'marker':
      return `${{ place: 'pm', slip: 'sm', remove: 'rm' }[instruction.action]}${instruction.name ? `:${instruction.name}` : ''}`;
    case 'locking-marker':
      return 'lock';
    case 'pick-up':
      return `pu${printSized(instruction.count)}`;
    case 'cast-on-here':
      return `co${printSized(instruction.count)}`;
    case 'bind-off':
      return `bo${instruction.count ? printSized(instruction.count) : ''}`;
    case 'hold':
      return `hold${printSized(instruction.count)}${instruction.name ? `:${instruction.name}` : ''}`;
    case 'remove-markers':
      return 'rm:all';
    case 'waste-yarn':
      return `waste${printSized(instruction.count)}`;
    case 'take-needle':
      return `on ${instruction.needle ? printRef(instruction.needle) : 'own'}`;
    case 'turn':
      return { none: 'turn', wrap: 'w&t', double: 'turn+ds' }[instruction.mark];
  }
}

/** Prints instructions with blanks between. */
export function printBody(body: readonly Instruction[]): string {
  return body.map(printInstruction).join(' ');
}

/** Prints a printed count: `total 62`, `change -2`, `heel 17`, `rows 31`, `loads 16-32-16`. */
function printAssertion(assertion: Assertion): string {
  if (assertion.kind === 'on-needles') return `${printRefs(assertion.needles)} ${printSized(assertion.count)}`;
  if (assertion.kind === 'loads') return `loads ${assertion.loads.map(printSized).join('-')}`;
  const what = assertion.kind === 'part' ? assertion.of : assertion.kind;
  return `${what} ${printSized(assertion.count)}`;
}

function printNumbers(numbers: RowNumbers): string {
  if (numbers.kind === 'next') return 'next';
  return numbers.kind === 'parity' ? `${numbers.parity} from ${numbers.from}` : numbers.numbers.join(',');
}

function printRow(row: RowText): string {
  const label = row.name ?? `${row.noun} ${printNumbers(row.numbers)}`;
  const sizes = row.sizes ? ` {${row.sizes.join(',')}}` : '';
  return `${label}${row.side ? ` ${row.side}` : ''}${sizes}: ${printBody(row.body)}`;
}

/** Prints a statement on one line. */
export function printStatement(statement: Statement): string {
  const assertions = 'assertions' in statement ? statement.assertions.map(printAssertion) : [];
  return [printPlain(statement), ...assertions].join(' | ');
}

function printPlain(statement: Statement): string {
  switch (statement.kind) {
    case 'row':
      return printRow(statement);
    case 'cast-on':
      return `cast on ${printSized(statement.count)}`;
    case 'join':
      return statement.marker ? 'join, pm' : 'join';
    case 'sections':
      return `sections ${statement.runs.map((run) => `${run.name} ${printSized(run.count)}`).join(', ')}`;
    case 'repeat-rows':
      return printRepeat(statement);
    case 'shape-rows':
      return `${statement.during ? 'along: ' : ''}${printBody(statement.body)} every ${statement.plainBetween + 1}${statement.extent ? ` ${printOften(statement.extent)}` : ''}`;
    case 'progression':
      return `go on as before`;
    case 'even':
      return `${statement.as} ${printSized(statement.rows)} rows`;
    case 'even-until':
      return `${statement.as} until ${printSized(statement.lengthCm)} cm from ${statement.from}`;
    case 'free-stop':
      return 'as far as wanted';
    case 'resume':
      return `resume ${statement.name ?? '?'} ${statement.count ? printSized(statement.count) : 'all'}`;
    case 'open':
      return `open ${printSized(statement.count)}`;
    case 'close':
      return `${statement.how} ${statement.count ? printSized(statement.count) : 'all'}`;
    case 'layout':
      return `layout ${statement.loads.map((load) => (load ? printSized(load) : '?')).join('-')}`;
    case 'arrange':
      return statement.actions.map(printArrangement).join(', ');
    case 'multiple':
      return `multiple of ${printSized(statement.of)}+${printSized(statement.plus)}`;
    case 'check':
      return `check ${printAssertion(statement.assertion)}`;
    case 'prose':
      return `"${statement.text}"`;
  }
}

function printRepeat(statement: Extract<Statement, { kind: 'repeat-rows' }>): string {
  const { rows, extent, plainBetween } = statement;
  const which =
    rows.kind === 'numbers' ? rows.numbers.join(',') : rows.kind === 'last' ? `last ${rows.count}` : `"${rows.name}"`;
  const often = plainBetween > 0 ? ` with ${plainBetween} plain between` : '';
  return `repeat ${which}${often} ${printOften(extent)}`;
}

function printOften(extent: Extract<Statement, { kind: 'repeat-rows' }>['extent']): string {
  if (extent.kind === 'all-worked' || extent.kind === 'free') return extent.kind;
  if (extent.kind === 'length') return `until ${printSized(extent.lengthCm)} cm from ${extent.from}`;
  const count = printSized(extent.count);
  if (extent.kind === 'rows') return extent.meaning === 'total' ? `for ${count} rows in all` : `for ${count} rows`;
  if (extent.kind === 'until')
    return `until ${extent.on ? `${printRefs(extent.on)} ` : ''}${extent.of ? `${extent.of} ` : ''}${count}`;
  return `${count} ${extent.meaning}`;
}

/** What a test wants to know about a text under a heading. */
export interface Told {
  readonly statements: readonly string[];
  /** Codes of the diagnostics, in the order of the text. */
  readonly codes: readonly string[];
}

/** Names for so many sizes: "S (M, L)". */
function sizesLine(sizes: number): string {
  const names = ['S', 'M', 'L', 'X', 'Z'].slice(0, sizes);
  return sizes < 2 ? '' : `Sizes: ${names[0]} (${names.slice(1).join(', ')})\n`;
}

/** Reads lines under one heading and prints their statements; `sizes` declares so many sizes. */
export function tell(lines: string, sizes = 1): Told {
  const pattern = readPattern(`Example\n${sizesLine(sizes)}\nLEG\n${lines}\n`);
  return {
    statements: pattern.stages.flatMap((stage) => stage.statements.map(printStatement)),
    codes: pattern.diagnostics.map((diagnostic) => diagnostic.code)
  };
}

/** Reads one row of instructions and prints its body; "!" and the codes when something is wrong with it. */
export function bodyOf(instructions: string, sizes = 1): string {
  const pattern = readPattern(`Example\n${sizesLine(sizes)}\nLEG\nRnd 1: ${instructions}\n`);
  const [row] = pattern.stages[0]?.statements ?? [];
  const codes = pattern.diagnostics.map((diagnostic) => diagnostic.code);
  const body = row?.kind === 'row' ? printBody(row.body) : 'no row';
  return codes.length > 0 ? `! ${codes.join(' ')}: ${body}` : body;
}
