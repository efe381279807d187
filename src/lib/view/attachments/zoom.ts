/** Moves and magnifies a picture inside its frame: fingers, mouse, wheel with Ctrl, keys. */

import { select, zoom, zoomIdentity, type ZoomTransform } from 'd3';
import type { Attachment } from 'svelte/attachments';

/** Greatest magnification. */
const MOST = 8;
const FACTOR = 1.4;
const SHIFT = 60;

/** The ways to change the view from outside. */
export interface ZoomHandle {
  readonly nearer: () => void;
  readonly farther: () => void;
  readonly fit: () => void;
}

/** Whom the gesture tells. */
export interface ZoomOptions {
  readonly onView: (transform: ZoomTransform) => void;
  readonly onReady: (handle: ZoomHandle) => void;
}

/** The element's first child can be moved and magnified. The wheel alone scrolls the page. */
export function zoomable(options: ZoomOptions): Attachment<HTMLElement> {
  return (element) => {
    const frame = select<HTMLElement, unknown>(element);
    const gesture = zoom<HTMLElement, unknown>()
      .scaleExtent([1, MOST])
      .extent(() => extentOf(element))
      .translateExtent([
        [0, 0],
        [element.clientWidth, element.clientHeight]
      ])
      .filter((event: Event) => isMeant(event, element))
      .on('zoom', ({ transform }: { transform: ZoomTransform }) => options.onView(transform));
    frame.call(gesture).on('dblclick.zoom', null);
    const handle: ZoomHandle = {
      nearer: () => gesture.scaleBy(frame, FACTOR),
      farther: () => gesture.scaleBy(frame, 1 / FACTOR),
      fit: () => gesture.transform(frame, zoomIdentity)
    };
    const keys: Readonly<Record<string, () => void>> = {
      '+': handle.nearer,
      '=': handle.nearer,
      '-': handle.farther,
      '0': handle.fit,
      ArrowLeft: () => gesture.translateBy(frame, SHIFT, 0),
      ArrowRight: () => gesture.translateBy(frame, -SHIFT, 0),
      ArrowUp: () => gesture.translateBy(frame, 0, SHIFT),
      ArrowDown: () => gesture.translateBy(frame, 0, -SHIFT)
    };
    frame.on('keydown', (event: KeyboardEvent) => {
      const act = event.ctrlKey || event.metaKey ? undefined : keys[event.key];
      if (!act) return;
      event.preventDefault();
      act();
    });
    const watch = new ResizeObserver(() => {
      gesture.translateExtent(extentOf(element));
      handle.fit();
    });
    watch.observe(element);
    options.onReady(handle);
    return () => {
      watch.disconnect();
      frame.on('.zoom', null).on('keydown', null);
    };
  };
}

function extentOf(element: HTMLElement): [[number, number], [number, number]] {
  return [
    [0, 0],
    [element.clientWidth, element.clientHeight]
  ];
}

// At fit a single finger scrolls the page; magnified it moves the picture.
function isMeant(event: Event, element: HTMLElement): boolean {
  if (event instanceof WheelEvent) return event.ctrlKey || event.metaKey;
  const magnified = element.dataset.magnified === 'true';
  if ('touches' in event) return magnified || (event as TouchEvent).touches.length > 1;
  return magnified && (event as MouseEvent).button === 0;
}
