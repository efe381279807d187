/** Every message that knitting can give, by code. Codes are never reused. */

import type { Diagnostic, DiagnosticSeverity } from '../model/diagnostic.ts';
import type { Span } from '../model/span.ts';

interface Entry {
  readonly severity: DiagnosticSeverity;
  readonly message: (facts: Facts) => string;
  readonly remedy: string | null;
}

/** What a message is about. Numbers are stitches unless the message says otherwise. */
export interface Facts {
  /** Stage and row in words: "Leg, Rnd 3". */
  readonly where: string;
  readonly expected?: number;
  readonly found?: number;
  /** A name or unit that the sentence needs. */
  readonly about?: string;
}

/** The catalogue. */
export const KNIT_MESSAGES = {
  'row-too-short': {
    severity: 'error',
    message: (f) => `${f.where}: the row works ${f.found} of ${f.expected} stitches and leaves the rest.`,
    remedy: 'Add what is missing, say "k to end", or say "turn" where the rest is to stay unworked.'
  },
  'row-too-long': {
    severity: 'error',
    message: (f) => `${f.where}: the row needs ${f.expected} stitches, but there are only ${f.found}.`,
    remedy: 'Check the numbers in this row, or an earlier row that lost stitches.'
  },
  'repeat-does-not-fit': {
    severity: 'error',
    message: (f) =>
      `${f.where}: the repeat takes ${f.expected} stitches at a time, and ${f.found} stitches do not divide by that.`,
    remedy: 'Check the stitches before the repeat, its length, or the cast-on number.'
  },
  'count-mismatch': {
    severity: 'error',
    message: (f) => `${f.where}: ${f.expected} ${f.about ?? 'stitches'} are printed, but knitting gives ${f.found}.`,
    remedy: 'Check the printed number and the row before it.'
  },
  'marker-missing': {
    severity: 'error',
    message: (f) => `${f.where}: there is no marker ${f.about ?? ''} ahead in this row.`,
    remedy: 'Place the marker (pm) in an earlier row, or check its name.'
  },
  'gap-missing': {
    severity: 'error',
    message: (f) => `${f.where}: no turn has left a gap ahead in this row.`,
    remedy: 'Check that the row before turned before its end.'
  },
  'section-missing': {
    severity: 'error',
    message: (f) => `${f.where}: there is no section called "${f.about ?? ''}" here.`,
    remedy: 'Name it in a line like "Sections: instep 32, heel 32."'
  },
  'needle-missing': {
    severity: 'error',
    message: (f) => `${f.where}: the text speaks of the ${f.about ?? 'needle'}, but no stitches have been put on it.`,
    remedy: 'Say how the stitches are divided, "N1: 16 sts, N2: 16 sts …", or name sections instead of needles.'
  },
  'sections-do-not-add-up': {
    severity: 'error',
    message: (f) => `${f.where}: the sections add up to ${f.expected} stitches, but there are ${f.found}.`,
    remedy: 'Give every stitch of the round to one section.'
  },
  'wrong-side': {
    severity: 'error',
    message: (f) => `${f.where}: a ${f.about ?? ''} row cannot start here, because the yarn hangs at the other end.`,
    remedy: 'Work one more row, work across the stitches first, or change the side that is named.'
  },
  'unreachable-count': {
    severity: 'error',
    message: (f) => `${f.where}: repeating never reaches exactly ${f.expected} stitches; it comes to ${f.found}.`,
    remedy: 'Check the number to stop at and how many stitches each repeat changes.'
  },
  'rows-missing': {
    severity: 'error',
    message: (f) => `${f.where}: ${f.about ?? 'the rows to repeat'} cannot be found above.`,
    remedy: 'Check the row numbers, or write the rows under this heading.'
  },
  'nothing-on-needles': {
    severity: 'error',
    message: (f) => `${f.where}: there are no stitches on the needles yet.`,
    remedy: 'Cast on first: "CO 64 sts".'
  },
  'no-cast-on': {
    severity: 'warning',
    message: (f) => `${f.where}: no cast-on was found, so that there is nothing to knit.`,
    remedy: 'Write how many stitches to begin with: "CO 64 sts".'
  },
  'held-missing': {
    severity: 'error',
    message: (f) => `${f.where}: no stitches were set aside${f.about ? ` as ${f.about}` : ''}.`,
    remedy: 'Say earlier which stitches go on waste yarn or a holder.'
  },
  'needs-row-gauge': {
    severity: 'warning',
    message: (f) => `${f.where}: a length is given, but the pattern has no row gauge, so the rows cannot be counted.`,
    remedy: 'Add rows or rounds to the gauge line: "Gauge: 32 sts and 44 rnds = 10 cm".'
  },
  'ambiguous-repeats': {
    severity: 'warning',
    message: (f) =>
      `${f.where}: "${f.found} times" after the asterisk can mean ${f.found} or ${f.expected} in all; no printed count decides. Taken as ${f.found}.`,
    remedy: 'Write "more times" or "times in total", or print the stitch count after the row.'
  },
  'never-all-worked': {
    severity: 'error',
    message: (f) => `${f.where}: repeating never takes in the ${f.found} stitches that the turns left unworked.`,
    remedy: 'Check how many stitches each row works before it turns.'
  },
  'ambiguous-row-repeats': {
    severity: 'warning',
    message: (f) =>
      `${f.where}: repeating "${f.found} times" can mean ${f.found} or ${f.expected} in all; no printed count decides. Taken as ${f.expected}.`,
    remedy: 'Write "more times" or "times in total", or print the stitch count after the rows.'
  },
  'repeats-decided': {
    severity: 'note',
    message: (f) =>
      `${f.where}: "${f.about} times" can be read in two ways; ${f.found} in all is what the count of stitches says.`,
    remedy: null
  },
  'implied-repeat': {
    severity: 'warning',
    message: (f) =>
      `${f.where}: worked once, the row takes ${f.found} of ${f.expected} stitches; it is read as a repeat to the end.`,
    remedy: 'Put an asterisk before the repeat and write "rep from * to end".'
  },
  'implied-repeat-decided': {
    severity: 'note',
    message: (f) =>
      `${f.where}: worked once, the row takes ${f.found} of ${f.expected} stitches; it is repeated to the end, as the printed count says.`,
    remedy: null
  },
  'free-stop': {
    severity: 'note',
    message: (f) => `${f.where}: how far to work is left to you here, so that no rows are counted for it.`,
    remedy: 'Write a number of rows, or a length and the row gauge, to have them counted.'
  },
  'step-missing': {
    severity: 'warning',
    message: (f) => `${f.where}: what changes from row to row is not said; it is taken from the last two shaped rows.`,
    remedy: 'Say the step: "working 1 fewer st between decs each time".'
  },
  'purpose-differs': {
    severity: 'warning',
    message: (f) => `${f.where}: the row is called ${f.about}, but it comes from ${f.expected} to ${f.found} stitches.`,
    remedy: 'Check the name of the row and its stitches.'
  },
  'not-a-multiple': {
    severity: 'warning',
    message: (f) => `${f.where}: the pattern needs a multiple of ${f.about} stitches, but there are ${f.found}.`,
    remedy: 'Check the number that was cast on, or how many stitches the pattern is worked over.'
  },
  'too-many-stitches': {
    severity: 'error',
    message: (f) =>
      `${f.where}: the round would have more than ${f.expected} stitches, the most that are knitted here.`,
    remedy: 'Check the number that was cast on or the increases.'
  },
  'too-many-rows': {
    severity: 'error',
    message: (f) => `${f.where}: the pattern has more than ${f.expected} rows, the most that are knitted here.`,
    remedy: 'Check how often rows are repeated.'
  }
} as const satisfies Record<string, Entry>;

/** Code of a message. */
export type KnitCode = keyof typeof KNIT_MESSAGES;

/** Makes a diagnostic for one size; the code decides severity and words. */
export function knitDiagnostic(code: KnitCode, span: Span, facts: Facts): Diagnostic {
  const entry: Entry = KNIT_MESSAGES[code];
  return {
    severity: entry.severity,
    code,
    span,
    message: entry.message(facts),
    remedy: entry.remedy,
    expected: facts.expected ?? null,
    found: facts.found ?? null,
    sizes: []
  };
}
