/** The whole journey of a sock against one JSON round trip of its own result. */

import { readFileSync } from 'node:fs';
import { knitText, planJson, planWorkpiece, SETUP_IDS } from '$lib/core/index.ts';
import { median, type Ratio } from './measure.ts';

/** Every size on every set-up, from text to JSON, against parsing and printing that JSON once. */
export function wholeCompile(): Ratio {
  const text = readFileSync('static/examples/harbour-steps-sock.txt', 'utf8');
  const compile = () => {
    const workpiece = knitText(text);
    return workpiece.fabrics.flatMap((_, size) =>
      SETUP_IDS.map((setup) => planJson(workpiece, planWorkpiece(workpiece, { setup, size })))
    );
  };
  const result = compile();
  const ours = median(compile, 5);
  const trip = median(() => JSON.parse(JSON.stringify(result)) as unknown, 10);
  const name = `sock, all sizes and set-ups (${ours.toFixed(0)} ms), against one JSON round trip of the result`;
  return { name, value: ours / trip, aim: 'at most 10' };
}
