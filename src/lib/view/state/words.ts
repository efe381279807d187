/** Short names and sentences of the screen. */

import type { Diagnostic, DiagnosticSeverity, Severity, SetupId, StagePlan } from '$lib/core/index.ts';
import type { RowOutline, Scene, StageView } from './answers/question.ts';
import type { Keeping } from './keeper.svelte.ts';

/** Short names of the set-ups, and what is in the hands. */
export const SHORT_SETUPS: Readonly<Record<SetupId, { readonly name: string; readonly count: string }>> = {
  'dpn-5': { name: 'Set of five', count: '4 hold, 1 works' },
  'dpn-4': { name: 'Set of four', count: '3 hold, 1 works' },
  'two-circulars': { name: 'Two circulars', count: '2 needles' },
  'magic-loop': { name: 'Magic loop', count: '1 long circular' },
  'flexible-3': { name: 'Three flexible', count: '2 hold, 1 works' },
  'short-circular': { name: 'Small circular', count: '1 needle' }
};

/** The words for what speaks against a break. */
export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  blocker: 'Blocker',
  awkward: 'Awkward',
  note: 'Note'
};

/** Where the layout in use comes from. */
export const ORIGIN_WORDS: Readonly<Record<StagePlan['origin'], string>> = {
  best: 'The best layout found.',
  stated: 'As the pattern states it.',
  tried: 'Your own layout.'
};

/** "From 4 needles 16/16/16/16 to 2 groups 32/32." */
export function sayChange(before: Scene, after: Scene): string {
  if (before.mirrored !== after.mirrored) {
    return after.mirrored ? 'Mirrored: the round runs the other way.' : 'Right-handed: the round runs clockwise.';
  }
  const [from, to] = [placeOf(before, after), placeOf(after, before)];
  return `From ${from}${sayLoads(before)} to ${to}${sayLoads(after)}.`;
}

function placeOf({ stage }: Scene, other: Scene): string {
  return stage === other.stage ? '' : `${stage}, `;
}

/** "4 needles 16/16/16/16". */
function sayLoads({ works, loads }: Scene): string {
  const noun = works === 'back-tip' ? 'group' : 'needle';
  return `${loads.length} ${noun}${loads.length === 1 ? '' : 's'} ${loads.join('/')}`;
}

/** "64 → 62", or "64" when nothing changes. */
export function sayCounts(before: number, after: number): string {
  return before === after ? `${after}` : `${before} → ${after}`;
}

/** The words for trouble with the text. */
export const DIAGNOSTIC_WORDS: Readonly<Record<DiagnosticSeverity, string>> = {
  error: 'Mistake',
  warning: 'Unclear',
  note: 'Note'
};

/** ", sizes M, L"; nothing when it does not depend on the size. */
export function saySizes(sizes: readonly number[], names: readonly string[]): string {
  if (sizes.length === 0) return '';
  if (sizes.length === names.length) return ', every size';
  return `, ${sizes.length === 1 ? 'size' : 'sizes'} ${sizes.map((size) => names[size]).join(', ')}`;
}

/** What happens to changes, in words. */
export const KEEPING_WORDS: Readonly<Record<Keeping, string>> = {
  opening: '',
  kept: 'Kept in this browser.',
  'no-room': 'Not kept: this browser has no room. Save it as a text file.',
  'no-shelf': 'Not kept: this browser keeps nothing for this page. Save it as a text file.',
  'other-version': 'Not kept.',
  unreadable: 'Not kept.'
};

/** "2 mistakes, 1 unclear place", or that there are none. */
export function sayTrouble(messages: readonly Pick<Diagnostic, 'severity'>[]): string {
  const count = (severity: DiagnosticSeverity) => messages.filter((one) => one.severity === severity).length;
  const parts = [
    plural(count('error'), 'mistake'),
    plural(count('warning'), 'unclear place'),
    plural(count('note'), 'note')
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'Every stitch adds up' : parts.join(', ');
}

/** "2 notes"; nothing for none. */
export function plural(count: number, noun: string): string {
  return count === 0 ? '' : `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** "Rnd 3, row 3 of 42", or the moment after the last row. */
export function sayRowPlace(rows: readonly RowOutline[], row: number): string {
  const here = rows[row];
  if (rows.length === 0) return 'No rows';
  if (!here) return 'After the last row';
  return `${here.label}${here.side === 'WS' ? ' (WS)' : ''}, ${row + 1} of ${rows.length}`;
}

/** "17/16/16/15 pays 12; the best pays 2." */
export function sayPays({ chosen, offers }: StageView): string {
  if (!chosen) return '';
  const cuts = chosen.reasons.filter((reason) => reason.severity === 'blocker').length;
  const words = `${chosen.loads.join('/')} pays ${chosen.price}`;
  const blocked = cuts === 0 ? '' : `, with ${plural(cuts, 'blocker')}`;
  const best = offers[0];
  if (!best || best.layout.breaks.join() === chosen.layout.breaks.join()) return `${words}${blocked}.`;
  return `${words}${blocked}; the best, ${best.loads.join('/')}, pays ${best.price}.`;
}
