/** Values that differ from size to size. */

/**
 * One value for each size, smallest size first. A list of one value serves every size.
 * `null` means that the instruction does not apply to that size (a dash in the text).
 */
export type Sized<T> = readonly (T | null)[];

/** A value that is the same in every size. */
export function everySize<T>(value: T): Sized<T> {
  return [value];
}

/**
 * The value for one size; `null` when the text gives none for it.
 *
 * @param size - Index of the size, from 0.
 */
export function forSize<T>(sized: Sized<T>, size: number): T | null {
  return (sized.length === 1 ? sized[0] : sized[size]) ?? null;
}
