/** The helping hand of the editor: words to choose from, and what words mean. It comes after the editor itself. */

import type { Extension } from '@codemirror/state';
import type { Names } from '../editor.svelte.ts';
import { completion } from './complete.ts';
import { readingTips } from './reading-tips.ts';

/** Everything that helps while a pattern is written. */
export function helpingHand(names: () => Names): Extension {
  return [completion(names), readingTips(() => names().terms)];
}
