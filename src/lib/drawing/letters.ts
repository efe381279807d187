/** How text is set. */

/** The bundled typeface, and others that tell 1 from l and 0 from O nearly as well. */
export const FAMILY = 'Atkinson Hyperlegible, Verdana, DejaVu Sans, sans-serif';

/** Distance from line to line in font sizes. */
export const LINE_HEIGHT = 1.22;

/** How far below the middle of a line its letters stand. */
export function baseline(size: number): number {
  return size * 0.33;
}
