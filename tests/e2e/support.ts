/** What the browser tests share: opening the app, and reading what it says. */

import { expect, type Locator, type Page } from '@playwright/test';

/** The editor, ready to be typed in. */
export async function openPattern(page: Page): Promise<Locator> {
  await page.goto('/');
  const text = editorOf(page);
  await expect(text).toBeVisible();
  return text;
}

/** The text as it can be typed in. */
export function editorOf(page: Page): Locator {
  return page.getByRole('textbox', { name: 'Pattern text' });
}

/** Opens the needles of a stage. */
export async function openNeedles(page: Page, stage?: string): Promise<void> {
  await page.goto('/needles');
  await expect(drawing(page)).toBeVisible();
  if (stage) await chooseStage(page, stage);
}

async function chooseStage(page: Page, stage: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: stage }).click();
  await expect(page.getByRole('heading', { level: 1, name: stage })).toBeVisible();
}

export function drawing(page: Page): Locator {
  return page.getByRole('region', { name: / on / }).locator('svg').first();
}

/** The panel that says the drawing in words. */
export function words(page: Page): Locator {
  return page.getByRole('region', { name: 'In words' });
}

/** Chooses a set-up among the tiles. */
export async function chooseSetup(page: Page, name: string): Promise<void> {
  await page.getByRole('radio', { name }).check({ force: true });
}

/** Opens one of the examples. */
export async function openExample(page: Page, title: string): Promise<void> {
  await page.getByLabel('Open an example').selectOption({ label: title });
  await expect(page.getByText(`${title} is open.`)).toBeVisible();
}
