/** Rows with their labels: "Rnd 5 (RS):", "Rnds 1-4:", "All even rnds:", "Dec rnd:", "Next 7 rnds:". */

import type { Assertion, RowText } from '../../model/pattern.ts';
import { assertion, isSentence } from './assertions.ts';
import { endsOnNeedle, rowBody } from './instructions.ts';
import { capital, ordinal, ranges } from './numbers.ts';

/** A row with its printed counts. `lead` stands before its first instruction. */
export function row(told: RowText, lead = ''): string {
  const start = `${label(told)}: ${lead}${rowBody(told.body)}`;
  if (endsOnNeedle(told.body)) return `${start}${bracketed(told.assertions)}.`;
  return `${start}.${counts(told.assertions, true)}`;
}

function bracketed(assertions: readonly Assertion[]): string {
  return assertions.map((one) => ` (${assertion(one)})`).join('');
}

/** Printed counts behind a full stop: "62 sts." first, what says more in brackets; the needles of a row by name without. */
export function counts(assertions: readonly Assertion[], isRow: boolean): string {
  return assertions
    .map((one, index) => {
      const isPlain = index === 0 && (one.kind === 'total' || one.kind === 'part');
      return isPlain || (isRow && isSentence(one)) ? ` ${capital(assertion(one))}.` : ` (${assertion(one)})`;
    })
    .join('');
}

function label(told: RowText): string {
  const side = told.side ?? '';
  const remarks = [side, purpose(told)].filter((remark) => remark !== '').join(', ');
  return `${words(told)}${remarks === '' ? '' : ` (${remarks})`}`;
}

// The purpose is told where the name does not tell it.
function purpose({ name, purpose: of }: RowText): string {
  if (of === null || (name && new RegExp(`\\b${of}`, 'iu').test(name))) return '';
  return of;
}

function words({ noun, numbering, numbers, name }: RowText): string {
  if (name !== null) return name;
  if (numbers.kind === 'next') return numbers.times === undefined ? `Next ${lower(noun)}` : next(noun, numbers.times);
  if (numbers.kind === 'parity') return parity(noun, numbers);
  if (numbering === 'bare') return ranges(numbers.numbers);
  if (numbering === 'letter') return `R${ranges(numbers.numbers)}`;
  const plural = numbers.numbers.length > 1 ? 's' : '';
  if (numbering === 'ordinal') return `${ranges(numbers.numbers, ordinal, ' to ')} ${lower(noun)}${plural}`;
  return `${noun}${plural} ${ranges(numbers.numbers)}`;
}

function next(noun: string, times: number): string {
  return `Next ${times} ${lower(noun)}${times === 1 ? '' : 's'}`;
}

function parity(noun: string, told: { readonly parity: 'odd' | 'even'; readonly from: number }): string {
  const isFirst = told.from === (told.parity === 'odd' ? 1 : 2);
  return `All ${told.parity} ${lower(noun)}s${isFirst ? '' : ` from ${told.from}`}`;
}

function lower(noun: string): string {
  return noun.toLowerCase();
}
