/** The one clock of the drawing: how far it is on the way from the picture before to the picture now. */

/** Time from one picture to the next at speed 1, in milliseconds. */
const DURATION = 2_400;

/** Part of the way that one step goes. */
const STEP = 1 / 12;

/** A clock from 0 to 1 that can be played, stopped, stepped and set. */
export class Motion {
  /** 0: the picture before; 1: the picture now. */
  t = $state(1);
  playing = $state(false);
  speed = $state(1);

  #frame = 0;
  #last = 0;

  /** Goes from the beginning; without motion it stands at the end. */
  start(still: boolean): void {
    this.stop();
    this.t = still ? 1 : 0;
    if (!still) this.play();
  }

  /** Plays on, from the beginning when it is at the end. */
  play(): void {
    if (this.t >= 1) this.t = 0;
    this.playing = true;
    this.#last = 0;
    this.#frame = requestAnimationFrame((now) => this.#tick(now));
  }

  stop(): void {
    this.playing = false;
    cancelAnimationFrame(this.#frame);
  }

  /** Stops at a place of the way. */
  set(t: number): void {
    this.stop();
    this.t = Math.max(0, Math.min(1, t));
  }

  step(direction: 1 | -1): void {
    this.set(Math.round(this.t / STEP + direction) * STEP);
  }

  #tick(now: number): void {
    const passed = this.#last === 0 ? 0 : now - this.#last;
    this.#last = now;
    this.t = Math.min(1, this.t + (passed * this.speed) / DURATION);
    if (this.t < 1) this.#frame = requestAnimationFrame((next) => this.#tick(next));
    else this.stop();
  }
}
