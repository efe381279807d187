/** Every message that reading can give, by code. Codes are never reused. */

import type { Diagnostic, DiagnosticSeverity } from '../model/diagnostic.ts';
import type { Span } from '../model/span.ts';

/** What a message is about. */
export interface Facts {
  /** Stage and row in words: "Leg, Rnd 3"; "" before the first heading. */
  readonly where?: string;
  /** The words or name it is about, as they stand in the text. */
  readonly about?: string;
  /** The known name that comes nearest, if one is close. */
  readonly nearest?: string | null;
  readonly expected?: number;
  readonly found?: number;
}

interface Entry {
  readonly severity: DiagnosticSeverity;
  readonly message: (facts: Facts) => string;
  readonly remedy: string | ((facts: Facts) => string | null) | null;
}

const near = (facts: Facts) => (facts.nearest ? `Did you mean "${facts.nearest}"?` : null);

/** The catalogue. */
export const READ_MESSAGES = {
  'text-too-long': {
    severity: 'error',
    message: (f) => `The text has ${f.found} characters; at most ${f.expected} are read.`,
    remedy: 'Paste one pattern at a time.'
  },
  'unknown-stitch': {
    severity: 'warning',
    message: (f) => `${at(f)}a stitch or instruction was expected, but "${f.about}" is not known.`,
    remedy: (f) => near(f) ?? 'Explain it in a line like "Key: inc = kfb", or use a standard abbreviation.'
  },
  'not-understood': {
    severity: 'warning',
    message: (f) => `${at(f)}this looks like an instruction, but it is not understood from "${f.about}" on.`,
    remedy: (f) => near(f) ?? 'Say it in other words, one step at a time.'
  },
  'sizes-differ': {
    severity: 'error',
    message: (f) => `${at(f)}numbers for ${f.expected} sizes were expected, but ${f.found} are given.`,
    remedy: 'Give one number for each size, with a dash where a size has none.'
  },
  'unknown-size': {
    severity: 'warning',
    message: (f) => `${at(f)}there is no size called "${f.about}"; the line is read for every size.`,
    remedy: 'Use the names of the Sizes line.'
  },
  'unclosed-bracket': {
    severity: 'warning',
    message: (f) => `${at(f)}a bracket opens here ("${f.about}") and does not close before the line ends.`,
    remedy: 'Add the closing bracket.'
  },
  'bracket-unclear': {
    severity: 'warning',
    message: (f) => `${at(f)}how often to work the brackets was expected after "${f.about}"; they are worked once.`,
    remedy: 'Add "2 times", "to end" or "in next st" after the bracket.'
  },
  'repeat-end-missing': {
    severity: 'warning',
    message: (f) => `${at(f)}an asterisk starts a repeat, but nothing says how often; it is read as "to end".`,
    remedy: 'Add "rep from * to end" or "rep from * 3 more times".'
  },
  'repeat-start-missing': {
    severity: 'warning',
    message: (f) => `${at(f)}"${f.about}" points to an asterisk, but there is none before it in this row.`,
    remedy: 'Put an asterisk where the repeat starts.'
  },
  'too-deep': {
    severity: 'warning',
    message: (f) => `${at(f)}groups lie more than ${f.expected} deep here.`,
    remedy: 'Write the repeat out in simpler groups.'
  },
  'row-not-found': {
    severity: 'error',
    message: (f) => `${at(f)}the text says "${f.about}", but no such row stands above.`,
    remedy: 'Check the number of the row, or write the row out.'
  },
  'other-side': {
    severity: 'note',
    message: (f) => `${at(f)}what is told for the ${f.about} one is kept as a note; the other one is knitted.`,
    remedy: null
  },
  'key-not-understood': {
    severity: 'warning',
    message: (f) => `The key says what "${f.about}" means, but the meaning is not understood.`,
    remedy: 'Explain it with standard stitches: "2/2 RC = sl 2 to cn, hold back, k2, k2 from cn".'
  }
} as const satisfies Record<string, Entry>;

/** A code of the catalogue. */
export type ReadCode = keyof typeof READ_MESSAGES;

function at(facts: Facts): string {
  return facts.where ? `${facts.where}: ` : '';
}

/** Makes a diagnostic; the code decides severity and words. */
export function readDiagnostic(code: ReadCode, span: Span, facts: Facts = {}): Diagnostic {
  const entry: Entry = READ_MESSAGES[code];
  const message = entry.message(facts);
  return {
    severity: entry.severity,
    code,
    span,
    message: message.charAt(0).toUpperCase() + message.slice(1),
    remedy: typeof entry.remedy === 'function' ? entry.remedy(facts) : entry.remedy,
    expected: facts.expected ?? null,
    found: facts.found ?? null,
    sizes: []
  };
}
