/** What opening a file gives, and the pages from which a text is put together. */

/** A file that was opened. */
export interface Opened {
  /** The pattern text; empty when nothing could be read. Lines end in "\n". */
  readonly text: string;
  /** Name of the file as it was given. */
  readonly name: string;
  /** Whole sentences on what was left out or could not be read; empty when all was taken. */
  readonly unread: readonly string[];
}

/** A text together with what could not be taken into it. */
export interface Reading {
  readonly text: string;
  /** As `Opened.unread`. */
  readonly unread: readonly string[];
}

/** A piece of printed text. Lengths are points; `x` grows to the right, `y` downwards from the top of the page. */
export interface Item {
  readonly text: string;
  /** Left edge. */
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly fontSize: number;
  /** True when the font is a bold one; left out when that is not known. */
  readonly bold?: boolean;
}

/** A printed page. Lengths are points. */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** In any order. */
  readonly items: readonly Item[];
  /** How many pictures the page holds; 0 when left out. */
  readonly pictures?: number;
  /** How many pieces of text run sideways and are not among the items; 0 when left out. */
  readonly sideways?: number;
}
