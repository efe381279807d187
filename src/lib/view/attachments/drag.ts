/** Drags something along a strip. */

import { drag, select, type D3DragEvent } from 'd3';
import type { Attachment } from 'svelte/attachments';

/** Whom a drag tells. Places are in pixels from the left edge of the element's parent. */
export interface DragOptions {
  readonly onTake: () => void;
  readonly onMove: (x: number) => void;
  readonly onRelease: () => void;
}

type Drag = D3DragEvent<SVGGElement, unknown, unknown>;

/** The element can be dragged with mouse, pen or finger. */
export function dragAlong(options: DragOptions): Attachment<SVGGElement> {
  return (element) => {
    const gesture = drag<SVGGElement, unknown>()
      .container(() => element.ownerSVGElement!)
      .subject((event: Drag) => ({ x: event.x, y: event.y }))
      .on('start', () => options.onTake())
      .on('drag', (event: Drag) => options.onMove(event.x))
      .on('end', () => options.onRelease());
    select(element).call(gesture);
    return () => void select(element).on('.drag', null);
  };
}
