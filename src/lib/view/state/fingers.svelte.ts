/** A finger on a break: the layout follows it at once and is kept when it lets go. */

import type { TriedLayout } from '$lib/project/project.ts';
import type { Session } from './session.svelte.ts';
import { moveBreak } from './strip.ts';

/** Gaps that a page key jumps over. */
const FAR = 5;

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: FAR,
  PageDown: -FAR,
  Home: -Infinity,
  End: Infinity
};

/** Moves the breaks of the stage in view. */
export class Fingers {
  readonly #session: Session;
  /** The knitter's layouts when the break was taken; `null` when none is held. */
  #start: readonly TriedLayout[] | null = null;

  readonly #onTake: () => void;

  /** @param onTake - Called when a break is taken. */
  constructor(session: Session, onTake: () => void) {
    this.#session = session;
    this.#onTake = onTake;
  }

  /** Takes hold of a break. */
  take(): void {
    if (this.#start) return;
    this.#start = this.#session.tried;
    this.#onTake();
  }

  /** Moves a break to a gap, or as near as its neighbours let it. */
  move(index: number, to: number): void {
    const { view, layout } = this.#session;
    if (view && layout) this.#session.hold(moveBreak(layout, { index, to, stitches: view.ring.stitches }));
  }

  /** Lets go: the layout is kept. */
  release(): void {
    if (this.#session.held) this.#session.tryLayout(this.#session.held);
  }

  /** Leaves the break: nothing can be put back any more. */
  leave(): void {
    this.release();
    this.#start = null;
  }

  /** Puts everything back to where it was when the break was taken. */
  restore(): void {
    this.#session.restoreTried(this.#start ?? this.#session.tried);
    this.#start = null;
  }

  /** Answers a key on a break; `false` when it is not one of its keys. */
  press(key: string, index: number): boolean {
    const gap = this.#session.layout?.breaks[index];
    const step = STEPS[key];
    if (key === 'Escape') this.restore();
    if (step === undefined || gap === undefined) return key === 'Escape';
    this.take();
    this.move(index, gap + step);
    return true;
  }
}
