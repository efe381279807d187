/** Statements under a heading, each as one line. */

import type { Statement } from '../../model/pattern.ts';
import { arrangement } from './arrangements.ts';
import { assertion, loads } from './assertions.ts';
import { and, capital, inWords, sized, stitches } from './numbers.ts';
import { even, evenUntil, progression, repeatRows, shapeRows } from './repeats.ts';
import { counts, row } from './rows.ts';

type Of<Kind extends Statement['kind']> = Extract<Statement, { kind: Kind }>;

/** What the wording of a statement depends on. */
export interface Around {
  /** Names of the sizes, for what only some of them work. */
  readonly names: readonly string[];
  /** What the rows before are called: "rnd", "row". */
  readonly noun: string;
  /** What a row begins with; "" for nothing. */
  readonly lead: string;
}

/** One statement that is no prose. */
export function statement(told: Exclude<Statement, Of<'prose'>>, { names, noun, lead }: Around): string {
  const only = 'sizes' in told && told.sizes !== null ? sizePrefix(told.sizes, names) : '';
  if (told.kind === 'row') return `${only}${row(told, lead)}`;
  return `${only}${plain(told, noun)}.${'assertions' in told ? counts(told.assertions, false) : ''}`;
}

function sizePrefix(sizes: readonly number[], names: readonly string[]): string {
  const told = sizes.map((size) => names[size] ?? String(size + 1));
  return `${told.length === 1 ? 'Size' : 'Sizes'} ${and(told)} only: `;
}

function plain(told: Exclude<Statement, Of<'prose' | 'row'>>, noun: string): string {
  switch (told.kind) {
    case 'cast-on':
      return `CO ${stitches(told.count)}`;
    case 'join':
      return `Join to work in the rnd, being careful not to twist${told.marker ? '; pm for BOR' : ''}`;
    case 'sections':
      return `Sections: ${told.runs.map(({ name, count }) => `${name} ${sized(count)}`).join(', ')}`;
    case 'repeat-rows':
      return repeatRows(told, noun);
    case 'shape-rows':
      return shapeRows(told, noun);
    case 'progression':
      return progression(told, noun);
    case 'even':
      return even(told, noun);
    case 'even-until':
      return evenUntil(told, noun);
    case 'free-stop':
      return 'Work even until piece is desired length';
    default:
      return plainAtEnd(told);
  }
}

type AtEnd = Of<'resume' | 'open' | 'close' | 'layout' | 'arrange' | 'check' | 'multiple'>;

function plainAtEnd(told: AtEnd): string {
  switch (told.kind) {
    case 'resume':
      return `Return ${told.count ? `${sized(told.count)} ` : ''}held ${told.name === null ? '' : `${told.name} `}sts to needles`;
    case 'open':
      return `Remove the waste yarn and place ${stitches(told.count)} on needles`;
    case 'close':
      return close(told);
    case 'layout':
      return layout(told);
    case 'arrange':
      return capital(told.actions.map(arrangement).join('; then '));
    case 'check':
      return told.assertion.kind === 'loads' ? `(${assertion(told.assertion)})` : capital(assertion(told.assertion));
    case 'multiple':
      return `The number of sts is a multiple of ${sized(told.of)} plus ${sized(told.plus)}`;
  }
}

function close({ how, count }: Of<'close'>): string {
  if (how === 'graft') return count ? `Graft ${stitches(count)} on each side` : 'Graft the sts';
  if (how === 'bind-off') return `BO all ${count ? stitches(count) : 'sts'}`;
  return `Cut yarn, draw through ${count ? `rem ${stitches(count)}` : 'all sts'}, pull tight`;
}

function layout({ loads: list, names }: Of<'layout'>): string {
  const known = list.filter((load) => load !== null);
  const needles = `${inWords([list.length])} needles`;
  if (known.length < list.length) return `Divide the sts evenly over ${needles}`;
  return `Divide the sts over ${needles}: ${loads({ loads: known, names })}`;
}
