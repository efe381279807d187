/** How the knitter likes to see things, kept beside the project. */

import * as v from 'valibot';
import type { Shelf } from './shelf.ts';

/** The name under which the preferences are kept; the page reads the theme from it before anything is drawn. */
const PREFERENCES_KEY = 'roundsplit.preferences';

export const THEME_CHOICES = ['system', 'light', 'dark'] as const;
export type ThemeChoice = (typeof THEME_CHOICES)[number];

export const SPEEDS = [0.5, 1, 2] as const;
export type Speed = (typeof SPEEDS)[number];

const schema = v.object({
  theme: v.fallback(v.picklist(THEME_CHOICES), 'system'),
  mirrored: v.fallback(v.boolean(), false),
  speed: v.fallback(v.picklist(SPEEDS), 1)
});

/** The preferences. */
export type Preferences = Readonly<v.InferOutput<typeof schema>>;

/** Preferences as they come. */
export const DEFAULT_PREFERENCES: Preferences = { theme: 'system', mirrored: false, speed: 1 };

/** The preferences on the shelf; whatever cannot be read is as it comes. */
export function takePreferences(shelf: Shelf): Preferences {
  try {
    const result = v.safeParse(schema, JSON.parse(shelf.getItem(PREFERENCES_KEY) ?? 'null'));
    return result.success ? result.output : DEFAULT_PREFERENCES;
  } catch {
    return DEFAULT_PREFERENCES;
  }
}

/** Keeps the preferences; a browser without room for them does without. */
export function putPreferences(shelf: Shelf, preferences: Preferences): void {
  try {
    shelf.setItem(PREFERENCES_KEY, JSON.stringify(preferences));
  } catch {
    // Nothing is lost but a taste.
  }
}
