/** The needles on the table: the picture of the moment, and its way there from the picture before. */

import { between, drawMoment, type Layout, type Picture, type SetupId } from '$lib/core/index.ts';
import type { Speed } from '$lib/project/preferences.ts';
import { Motion } from './motion.svelte.ts';
import type { Session } from './session.svelte.ts';
import type { Taste } from './taste.svelte.ts';
import { sayChange, type Scene } from './words.ts';

/** What is seen of the session, and every choice that sets the stitches travelling. */
export class Bench {
  readonly motion = new Motion();
  readonly #session: Session;
  readonly #taste: Taste;
  #before = $state.raw<Scene | null>(null);

  constructor(session: Session, taste: Taste) {
    this.#session = session;
    this.#taste = taste;
  }

  /** What stands on the table now, once everything has arrived. */
  readonly scene: Scene | null = $derived.by(() => {
    const { moment, stagePlan } = this.#session;
    return moment && stagePlan?.chosen
      ? { moment, loads: stagePlan.chosen.loads, mirrored: this.#taste.mirrored }
      : null;
  });
  readonly #target = $derived(this.scene && this.#draw(this.scene));
  readonly #source = $derived(this.#before && this.#draw(this.#before));

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
    this.#travel(() => this.#session.chooseSetup(setup));
  }

  chooseStage(stage: number): void {
    this.#travel(() => this.#session.chooseStage(stage));
  }

  tryLayout(layout: Layout): void {
    this.#travel(() => this.#session.tryLayout(layout));
  }

  forgetTried(): void {
    this.#travel(() => this.#session.forgetTried());
  }

  mirror(mirrored: boolean): void {
    this.#travel(() => this.#taste.change({ mirrored }));
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
    this.motion.set(1);
    this.#before = null;
  }

  #travel(change: () => void): void {
    const before = this.scene;
    this.motion.set(1);
    change();
    this.#before = before === this.scene ? null : before;
    if (this.#before && this.scene) {
      this.motion.speed = this.#taste.speed;
      this.motion.start(this.#taste.still);
    }
  }

  #draw(scene: Scene): Picture {
    return drawMoment(scene.moment, { mirrored: scene.mirrored, theme: this.#taste.drawn });
  }
}
