/** The needles on the table: the picture of the moment, and its way there from the picture before. */

import { between, type Layout, type Picture, type SetupId } from '$lib/core/index.ts';
import type { Speed } from '$lib/project/preferences.ts';
import type { Scene } from './answers/question.ts';
import { Motion } from './motion.svelte.ts';
import type { Session } from './session.svelte.ts';
import type { Taste } from './taste.svelte.ts';
import { sayChange } from './words.ts';

/** What is seen of the session, and every choice that sets the stitches travelling. */
export class Bench {
  readonly motion = new Motion();
  readonly #session: Session;
  readonly #taste: Taste;
  #before = $state.raw<Scene | null>(null);
  /** Counts the choices: only the last one sets the stitches travelling. */
  #choices = 0;

  constructor(session: Session, taste: Taste) {
    this.#session = session;
    this.#taste = taste;
  }

  /** What stands on the table now, once everything has arrived. */
  readonly scene: Scene | null = $derived.by(() => this.#session.view?.scene ?? null);
  readonly #target = $derived(this.scene && this.#paint(this.scene));
  readonly #source = $derived(this.#before && this.#paint(this.#before));

  /** The picture to show. */
  readonly picture: Picture | null = $derived.by(() => {
    const { t } = this.motion;
    if (!this.#target || !this.#source || t >= 1) return this.#target;
    return t <= 0 ? this.#source : between(this.#source, this.#target, t);
  });
  /** True when there is a way to show. */
  readonly moves = $derived(this.#source !== null && this.#target !== null);
  /** What changes on the way, in a sentence. */
  readonly sentence = $derived(this.#before && this.scene ? sayChange(this.#before, this.scene) : '');

  chooseSetup(setup: SetupId): void {
    void this.#travel(() => this.#session.chooseSetup(setup));
  }

  chooseStage(stage: number): void {
    void this.#travel(() => this.#session.chooseStage(stage));
  }

  tryLayout(layout: Layout): void {
    void this.#travel(() => this.#session.tryLayout(layout));
  }

  forgetTried(): void {
    void this.#travel(() => this.#session.forgetTried());
  }

  mirror(mirrored: boolean): void {
    this.#taste.change({ mirrored });
    void this.#travel(() => this.#session.mirror(mirrored));
  }

  chooseSize(size: number): void {
    this.rest();
    this.#session.chooseSize(size);
  }

  chooseRow(row: number): void {
    this.rest();
    this.#session.chooseRow(row);
  }

  setSpeed(speed: Speed): void {
    this.#taste.change({ speed });
    this.motion.speed = speed;
  }

  /** Shows the picture of now, with no way to it. */
  rest(): void {
    this.#choices += 1;
    this.motion.set(1);
    this.#before = null;
  }

  // The way begins when the answer is there: until then the picture before stays.
  async #travel(change: () => void): Promise<void> {
    const before = this.scene;
    this.rest();
    const choice = this.#choices;
    change();
    await this.#session.settled();
    if (choice !== this.#choices || !before || !this.scene || isSame(before, this.scene)) return;
    this.#before = before;
    this.motion.speed = this.#taste.speed;
    this.motion.start(this.#taste.still);
  }

  #paint({ picture }: Scene): Picture {
    return { ...picture, theme: this.#taste.drawn };
  }
}

function isSame(one: Scene, other: Scene): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
