/** Prints a diagnostic with the line it is about, so that a sample can be read. */

import type { Diagnostic } from '$lib/core/model/diagnostic.ts';

/** `severity[code] message`, the line with its number, marks under the place, and the remedy. */
export function frame(text: string, diagnostic: Diagnostic): string {
  const { from, to } = diagnostic.span;
  const start = text.lastIndexOf('\n', from - 1) + 1;
  const end = text.indexOf('\n', from) < 0 ? text.length : text.indexOf('\n', from);
  const line = String(text.slice(0, from).split('\n').length);
  const marks = '^'.repeat(Math.max(1, Math.min(to, end) - from));
  return [
    `${diagnostic.severity}[${diagnostic.code}] ${diagnostic.message}`,
    `  ${line} | ${text.slice(start, end)}`,
    `  ${' '.repeat(line.length)} | ${' '.repeat(from - start)}${marks}`,
    ...(diagnostic.remedy ? [`  ${diagnostic.remedy}`] : [])
  ].join('\n');
}
