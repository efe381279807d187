/** A picture as SVG text, without a page: for files, paper and the command line. */

import { render } from 'svelte/server';
import type { Picture } from '$lib/core/index.ts';
import Drawing from './Drawing.svelte';

/** What may be added to the text. */
export interface SvgOptions {
  /** Put before every id, when several drawings go into one document. */
  readonly idPrefix?: string;
  /** Said instead of the picture's own title. */
  readonly title?: string;
}

/** The SVG of a picture: well-formed XML, the same bytes for the same picture. */
export function svgText(picture: Picture, options: SvgOptions = {}): string {
  const { body } = render(Drawing, { props: { picture, ...options } });
  // What is left of the components' own marks; text of the picture is escaped, so nothing else can look like one.
  return body.replaceAll(/<!--.*?-->/gsu, '').trim();
}
