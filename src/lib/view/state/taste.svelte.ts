/** How the knitter likes to see things: theme, mirrored drawing, pace of the motion. */

import { flushSync } from 'svelte';
import {
  DEFAULT_PREFERENCES,
  putPreferences,
  takePreferences,
  type Preferences,
  type Speed,
  type ThemeChoice
} from '$lib/project/preferences.ts';
import { browserShelf } from '$lib/project/shelf.ts';

/** Preferences, and what the device asks for. */
export class Taste {
  #own = $state.raw<Preferences>(DEFAULT_PREFERENCES);
  #darkDevice = $state(false);
  #printing = $state(false);
  /** True when the device asks for no motion. */
  still = $state(false);

  readonly theme: ThemeChoice = $derived(this.#own.theme);
  readonly mirrored: boolean = $derived(this.#own.mirrored);
  readonly speed: Speed = $derived(this.#own.speed);
  /** The theme in which pictures are drawn now. */
  readonly drawn: 'light' | 'dark' | 'print' = $derived.by(() => {
    if (this.#printing) return 'print';
    const dark = this.theme === 'system' ? this.#darkDevice : this.theme === 'dark';
    return dark ? 'dark' : 'light';
  });

  change(part: Partial<Preferences>): void {
    this.#own = { ...this.#own, ...part };
    const shelf = browserShelf();
    if (shelf) putPreferences(shelf, this.#own);
    this.#mark();
  }

  /** Reads what is kept, and listens to the device from now on. Gives back how to stop. */
  start(): () => void {
    const shelf = browserShelf();
    if (shelf) this.#own = takePreferences(shelf);
    this.#mark();
    const stops = [
      listen('(prefers-color-scheme: dark)', (dark) => (this.#darkDevice = dark)),
      listen('(prefers-reduced-motion: reduce)', (still) => (this.still = still)),
      listen('print', (printing) => flushSync(() => (this.#printing = printing)))
    ];
    return () => stops.forEach((stop) => stop());
  }

  #mark(): void {
    document.documentElement.dataset.theme = this.theme;
  }
}

function listen(query: string, tell: (matches: boolean) => void): () => void {
  const media = matchMedia(query);
  const answer = () => tell(media.matches);
  if (query === 'print') media.addEventListener('change', answer);
  else {
    tell(media.matches);
    media.addEventListener('change', answer);
  }
  return () => media.removeEventListener('change', answer);
}
