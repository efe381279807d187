import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { openNeedles, openPattern, words } from './support.ts';

const PLACES = [
  { path: '/', ready: (page: Page) => page.getByRole('textbox', { name: 'Pattern text' }) },
  { path: '/needles', ready: (page: Page) => words(page) },
  { path: '/guide', ready: (page: Page) => page.getByRole('heading', { name: 'Take care' }) }
];

for (const { path, ready } of PLACES) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test(`${path} has no accessibility problem in ${colorScheme}`, async ({ page }) => {
      await page.emulateMedia({ colorScheme });
      await page.goto(path);
      await expect(ready(page)).toBeVisible();
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    });
  }

  test(`${path} does not scroll sideways on a phone`, async ({ page }) => {
    for (const width of [390, 360]) {
      await page.setViewportSize({ width, height: 800 });
      await page.goto(path);
      await expect(ready(page)).toBeVisible();
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over).toBeLessThanOrEqual(0);
    }
  });

  test(`${path} opens without a network`, async ({ page, context }) => {
    await page.goto(path);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await page.reload();
    await expect(ready(page)).toBeVisible();
  });
}

test('examples open without a network', async ({ page, context }) => {
  await openPattern(page);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await context.setOffline(true);
  await page.reload();
  await page.getByLabel('Open an example').selectOption({ label: 'Ferry Lane Hat' });
  await expect(page.getByText('Ferry Lane Hat is open.')).toBeVisible();
});

test('the keyboard alone leads from the text to a moved break', async ({ page }) => {
  await openPattern(page);
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
  await tabTo(page, 'Needles');
  await page.keyboard.press('Enter');
  await expect(words(page)).toBeVisible();
  await tabTo(page, 'Break 2');
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText('Your own layout.')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByText('The best layout found.')).toBeVisible();
});

test('the page colours follow the choice, also after a reload', async ({ page }) => {
  await openNeedles(page);
  await page.getByLabel('Page colours').selectOption('Dark');
  const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const dark = await paper();
  await page.reload();
  expect(await paper()).toBe(dark);
  await page.getByLabel('Page colours').selectOption('Light');
  await expect.poll(paper).not.toBe(dark);
});

/** Presses Tab until the element of this name has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  const named = () =>
    page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent);
  for (let presses = 0; presses < 80 && (await named())?.trim() !== name; presses += 1)
    await page.keyboard.press('Tab');
  expect((await named())?.trim()).toBe(name);
}
