import { gzipSync } from 'node:zlib';
import { expect, test, type Page } from '@playwright/test';
import { editorOf } from './support.ts';

/** Most bytes of scripts, compressed, that the first page fetches before the editor is there. */
const MOST = 90_000;

/** What only the editor's own script has in it. */
const EDITOR = 'cm-content';

// What the service worker stores for later is not the page's.
test.use({ serviceWorkers: 'block' });

test('the first page needs few scripts before the editor, and works out nothing before it', async ({ page }) => {
  const { sizes, release } = await holdEditor(page);
  await page.goto('/');
  await expect(page.getByRole('heading', { name: 'Pattern', exact: true })).toBeVisible();
  await expect(page.getByText('Kept in this browser.')).toBeVisible();
  await page.waitForTimeout(1_000);
  const before = [...sizes.values()];
  expect(before.length).toBeGreaterThan(3);
  expect(before.reduce((sum, size) => sum + size)).toBeLessThanOrEqual(MOST);
  release();
  await expect(editorOf(page)).toBeVisible();
  await expect(page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: /CUFF/ })).toBeVisible();
  expect([...sizes.keys()].some((path) => path.includes('worker'))).toBe(true);
  await page.unrouteAll({ behavior: 'ignoreErrors' });
});

/** Weighs every script that the page and its threads fetch, and keeps the editor's back until it is released. */
async function holdEditor(page: Page) {
  const sizes = new Map<string, number>();
  let release: () => void = () => undefined;
  const released = new Promise<void>((resolve) => (release = resolve));
  await page.route('**/*.js', async (route) => {
    const response = await route.fetch();
    const body = await response.body();
    if (body.includes(EDITOR)) await released;
    else sizes.set(new URL(route.request().url()).pathname, gzipSync(body).length);
    await route.fulfill({ response });
  });
  return { sizes, release };
}
