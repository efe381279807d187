/** Which label the next row may have, by the rows above it. */

/** A line above the one being written. */
export interface LineAbove {
  readonly text: string;
  readonly isHeading: boolean;
}

/** A label with what is said about it. */
export interface LabelOffer {
  readonly label: string;
  readonly detail: string;
}

const LABEL =
  /^\s*(?:[^:]*\bonly:\s*)?(rnd|round|row)s?\s+(\d[\d\s,&–-]*(?:(?:and|to)\s+\d[\d\s,&–-]*)*)(?:\(([RW]S)\b[^)]*\))?\s*:/iu;
const PARITY = /^\s*all\s+(even|odd)\b/iu;
const FLAT = /back and forth|\bflat?\b|\bflap\b|heel turn|turn(?:ing)? the heel/iu;

interface Told {
  readonly noun: string;
  readonly numbers: readonly number[];
  readonly side: string | null;
}

/** What stands above, up to the heading. */
interface Above {
  /** The last numbered row; `null` under a heading without one. */
  readonly last: Told | null;
  /** Number of the first row since the last ones were numbered anew. */
  readonly first: number;
  readonly parity: 'even' | 'odd' | null;
  readonly isFlat: boolean;
  /** "Rnd", "Round" or "Row", as the text has it elsewhere; "" when it has none. */
  readonly noun: string;
}

/** Labels for the next row, the likeliest first. `lines`: those above, the nearest first. */
export function nextLabels(lines: Iterable<LineAbove>): LabelOffer[] {
  const above = lookUp(lines);
  const { last, isFlat } = above;
  const noun = last?.noun ?? (isFlat ? 'Row' : above.noun === 'Row' ? 'Rnd' : above.noun || 'Rnd');
  const number = last ? after(above, last) : 1;
  const side = last ? sideOf(last, number) : isFlat ? 'RS' : null;
  const label = `${noun} ${number}${side ? ` (${side})` : ''}: `;
  const next = { label: `Next ${noun.toLowerCase()}: `, detail: 'worked once, where it stands' };
  const about = last ? `after ${noun.toLowerCase()} ${last.numbers.at(-1)}` : 'the first under this heading';
  return [{ label, detail: about }, next, ...(last ? [again(above, last)] : [])];
}

function lookUp(lines: Iterable<LineAbove>): Above {
  let last: Told | null = null;
  let first = Infinity;
  let parity: Above['parity'] = null;
  let heading: string | null = null;
  for (const { text, isHeading } of lines) {
    const told: Told | null = heading === null || last === null ? readLabel(text) : null;
    if (heading !== null && told) return { last, first, parity, isFlat: FLAT.test(heading), noun: told.noun };
    if (heading !== null) continue;
    last ??= told;
    if (told && Math.min(...told.numbers) < first) first = Math.min(...told.numbers);
    parity ??= (PARITY.exec(text)?.[1]?.toLowerCase() as Above['parity']) ?? null;
    if (isHeading) heading = text;
  }
  return { last, first, parity, isFlat: FLAT.test(heading ?? ''), noun: '' };
}

function readLabel(text: string): Told | null {
  const found = LABEL.exec(text);
  if (!found) return null;
  const noun = found[1]!.charAt(0).toUpperCase() + found[1]!.slice(1).toLowerCase();
  const numbers = found[2]!.match(/\d+/gu)!.map(Number);
  return { noun, numbers, side: found[3]?.toUpperCase() ?? null };
}

// "All even rnds" take the even numbers.
function after({ parity }: Above, { numbers }: Told): number {
  const next = Math.max(...numbers) + 1;
  return (parity === 'even') === (next % 2 === 0) && parity !== null ? next + 1 : next;
}

function sideOf({ side, numbers }: Told, number: number): string | null {
  if (side === null) return null;
  const isSame = (number - numbers.at(-1)!) % 2 === 0;
  return isSame ? side : side === 'RS' ? 'WS' : 'RS';
}

function again({ first }: Above, { noun, numbers }: Told): LabelOffer {
  const last = Math.max(...numbers);
  const which = first < last ? `s ${first}-${last}` : ` ${last}`;
  return { label: `Rep ${noun.toLowerCase()}${which} `, detail: 'then how often: 3 more times' };
}
