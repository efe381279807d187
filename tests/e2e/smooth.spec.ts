import { expect, test, type Page } from '@playwright/test';
import { editorOf, openNeedles, openPattern, words } from './support.ts';

const HEAD = 'Long cowl\n\nBODY\nCO 64 sts. Join to work in the rnd; pm for BOR.\n';
const ROUND = 'Rnd: *K2, p2; rep from * to last 4 sts, k2, p2.\n';

/** About a megabyte: it takes seconds to knit. */
const LONG = HEAD + ROUND.repeat(20_000);

/** Longest time in which the page may answer nothing, in milliseconds, on a busy machine. */
const HOLD_UP = 700;

test('typing in a long text is never held up by the knitting', async ({ page }) => {
  test.setTimeout(120_000);
  await openLong(page);
  await watchHoldUps(page);
  const text = editorOf(page);
  await text.press('Control+Home');
  for (const key of 'A b c d e f ') {
    await page.keyboard.type(key);
    await page.waitForTimeout(400);
  }
  await expect(page.getByText('Working out the stitches …')).toBeVisible();
  await page.keyboard.type('x');
  await expect(text).toContainText('A b c d e f xLong cowl');
  await expect(title(page)).toHaveText('A b c d e f xLong cowl', { timeout: 60_000 });
  await expect(page.getByText('Working out the stitches …')).toHaveCount(0);
  expect(await longestHoldUp(page)).toBeLessThan(HOLD_UP);
});

test('the last answer stays until the new one is there, and an older one never comes after a newer', async ({
  page
}) => {
  test.setTimeout(120_000);
  await openLong(page);
  await watchTitles(page);
  const text = editorOf(page);
  await text.press('Control+Home');
  await page.keyboard.type('Old ');
  await page.waitForTimeout(600);
  await expect(title(page)).toHaveText('Long cowl');
  await text.fill(HEAD.replace('Long', 'Short') + ROUND);
  await expect(title(page)).toHaveText('Short cowl');
  await page.waitForTimeout(6_000);
  expect(await seenTitles(page)).toEqual(['Short cowl']);
});

test('moving a break is judged at once', async ({ page }) => {
  await openNeedles(page, 'CUFF');
  await page.getByRole('slider', { name: 'Break 2' }).focus();
  const drawn = words(page);
  for (let times = 0; times < 5; times += 1) {
    const before = await drawn.innerText();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => drawn.innerText(), { timeout: 500, intervals: [20] }).not.toBe(before);
  }
});

for (const [how, spoil] of [
  ['cannot be had', (page: Page) => page.addInitScript(() => Reflect.deleteProperty(globalThis, 'Worker'))],
  ['cannot be loaded', (page: Page) => page.route('**/workers/**', (route) => route.abort())]
] as const) {
  test.describe(`where a second thread ${how}`, () => {
    test.use({ serviceWorkers: 'block' });

    test('the page does the work itself and says so', async ({ page }) => {
      await spoil(page);
      const text = await openPattern(page);
      await expect(page.getByText('worked out on the page itself')).toBeVisible();
      await text.fill(HEAD + ROUND);
      await expect(title(page)).toHaveText('Long cowl');
      await page.getByRole('link', { name: 'Needles', exact: true }).click();
      await expect(words(page)).toContainText('N1, needle A');
    });
  });
}

test.describe('where the part that knits cannot be had at all', () => {
  test.use({ serviceWorkers: 'block' });

  test('the text can be read, typed and kept', async ({ page }) => {
    await page.route('**/workers/**', (route) => route.abort());
    await page.route('**/*.js', async (route) => {
      const response = await route.fetch();
      if ((await response.body()).includes('broken-off')) await route.abort();
      else await route.fulfill({ response });
    });
    const text = await openPattern(page);
    await expect(page.getByRole('alert')).toContainText('could not be loaded');
    await expect(page.getByText('Every stitch adds up')).toHaveCount(0);
    await text.fill(HEAD + ROUND);
    await page.reload();
    await expect(text).toContainText('Long cowl');
    await page.unrouteAll({ behavior: 'ignoreErrors' });
  });
});

function title(page: Page) {
  return page.getByRole('region', { name: 'Size and needles' }).locator('.title');
}

/** Opens the long text and waits until it is knitted. */
async function openLong(page: Page): Promise<void> {
  await openPattern(page);
  await page
    .getByLabel('Pattern file')
    .setInputFiles({ name: 'long.txt', mimeType: 'text/plain', buffer: Buffer.from(LONG) });
  await expect(page.getByText('Long cowl is open.')).toBeVisible({ timeout: 60_000 });
}

/** Notes how long the page is held up at most, from now on. */
async function watchHoldUps(page: Page): Promise<void> {
  await page.evaluate(() => {
    let last = performance.now();
    const tick = () => {
      const now = performance.now();
      const root = document.documentElement;
      root.dataset.holdUp = `${Math.max(Number(root.dataset.holdUp ?? 0), now - last)}`;
      last = now;
      setTimeout(tick, 10);
    };
    tick();
  });
}

function longestHoldUp(page: Page): Promise<number> {
  return page.evaluate(() => Number(document.documentElement.dataset.holdUp));
}

/** Notes every title that is shown from now on. */
async function watchTitles(page: Page): Promise<void> {
  await page.evaluate(() => {
    const place = document.querySelector('section .title')!;
    const root = document.documentElement;
    root.dataset.titles = '';
    new MutationObserver(() => (root.dataset.titles += `${place.textContent}\n`)).observe(place, {
      characterData: true,
      childList: true,
      subtree: true
    });
  });
}

function seenTitles(page: Page): Promise<string[]> {
  return page.evaluate(() => document.documentElement.dataset.titles!.trim().split('\n'));
}
