/** Knitting that always gives an answer, so that the text can be mended whatever happens. */

import { knitText, type Diagnostic, type Workpiece } from '$lib/core/index.ts';

/** Reads and knits a text; if that breaks off, nothing is knitted and one message says so. */
export function knitSafely(text: string): Workpiece {
  try {
    return knitText(text);
  } catch {
    return { ...knitText(''), text, diagnostics: [brokenOff(text)] };
  }
}

function brokenOff(text: string): Diagnostic {
  return {
    severity: 'error',
    code: 'broken-off',
    span: { from: 0, to: Math.min(text.length, 1) },
    message: 'This text could not be worked out.',
    remedy: 'The text is safe. Take back the last change, or shorten the text until the place is found.',
    expected: null,
    found: null,
    sizes: []
  };
}
