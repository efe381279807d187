/** What the compiled grammar gives. */

declare module '*.grammar' {
  import type { LRParser } from '@lezer/lr';

  export const parser: LRParser;
}

declare module '*.grammar.terms' {
  export const StitchWord: number;
  export const HandWord: number;
  export const RowWord: number;
}
