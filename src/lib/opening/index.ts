/** The front door: opening files and tidying what was pasted. */

export { openFile } from './open-file.ts';
export { pagesToText } from './pages-to-text.ts';
export { tidyPasted } from './tidy.ts';
export type { Item, Page } from './types.ts';
