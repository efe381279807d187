import { expect, test, type Page } from '@playwright/test';
import { openExample, openPattern, words } from './support.ts';

const HEAD = `Test cowl
Sizes: S (L)
Key: dagger = sl 1, k2tog, psso

BODY
CO 20 (24) sts. Join to work in the rnd; pm for BOR.
`;

const GOOD = `${HEAD}Rnd 1: K1, ssk, k to last 3 sts, k2tog, k1.
Rnd 2: K.
Rep rnds 1 and 2 twice more. 14 (18) sts.

EDGE
Rnd 1: P.
`;

/** The offered words. */
const offers = (page: Page) => page.getByRole('listbox', { name: 'Completions' }).getByRole('option');

/** The line under the text. */
const line = (page: Page) => page.getByRole('group', { name: 'The line at the cursor' });

/** Types behind the last line. */
async function typeAtEnd(page: Page, words: string): Promise<void> {
  await page.keyboard.press('Control+End');
  await page.keyboard.type(words, { delay: 20 });
}

/** Puts the cursor behind the first place where some words stand. */
async function goBehind(page: Page, text: string, words: string): Promise<void> {
  await page.keyboard.press('Control+Home');
  const before = text.slice(0, text.indexOf(words) + words.length);
  const lines = before.split('\n');
  for (let down = 1; down < lines.length; down += 1) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Home');
  for (let right = 0; right < lines.at(-1)!.length; right += 1) await page.keyboard.press('ArrowRight');
}

test('stitches are offered with what they take and make, and written by an arrow and Enter', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await typeAtEnd(page, 'Rnd 2: k2t');
  await expect(offers(page).first()).toContainText('knit 2 together; takes 2, makes 1, leans right');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.keyboard.type(', da', { delay: 20 });
  await expect(offers(page)).toHaveText(/dagger.*takes 3, makes 1, leans left; key/u);
  await page.keyboard.press('Escape');
  await expect(offers(page)).toHaveCount(0);
  await expect(text).toContainText('Rnd 2: k2tog, da');
});

test('nothing is offered in prose or for a number, and Enter is never taken away', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await typeAtEnd(page, 'Rnd 2: *k2, p2; re');
  await expect(offers(page).first()).toContainText('rep from * to end');
  await page.keyboard.press('Enter');
  await page.keyboard.type('It is a soft cowl, ss', { delay: 20 });
  await page.waitForTimeout(500);
  await expect(offers(page)).toHaveCount(0);
  await expect(text).toContainText('It is a soft cowl, ss');
});

test('the label of the next row is offered when it is asked for', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await expect(page.getByRole('heading', { name: 'Every stitch adds up' })).toBeVisible();
  await page.keyboard.press('Control+End');
  await page.keyboard.press('Control+Space');
  await expect(offers(page).first()).toContainText('Rnd 2:');
  await expect(offers(page).filter({ hasText: 'Rep rnd 1' })).toBeVisible();
});

test('F2 shows and says what the word at the cursor means, and so does the pointer', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await expect(page.getByRole('heading', { name: 'Every stitch adds up' })).toBeVisible();
  await goBehind(page, GOOD, 'k2tog, k1');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('F2');
  await expect(page.locator('.reading')).toContainText('knit 1 stitch');
  await expect(page.locator('[aria-live]', { hasText: 'k1: knit 1 stitch; takes 1, makes 1' })).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(page.locator('.reading')).toHaveCount(0);
  await page.keyboard.press('F2');
  await page.keyboard.press('ArrowLeft');
  await expect(page.locator('.reading')).toHaveCount(0);
  await page.locator('.cm-line span', { hasText: /^ssk$/u }).hover();
  await expect(page.locator('.reading')).toContainText('takes 2, makes 1, leans left');
});

test('a mistake is mended from the list, by a key, and taken back', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD.replace('14 (18) sts', '14 (17) sts'));
  await page.getByRole('button', { name: 'Print 14 (18) in line 9' }).click();
  await expect(text).toBeFocused();
  await expect(page.getByRole('heading', { name: 'Every stitch adds up' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(text).toContainText('14 (17) sts');
  await expect(page.getByRole('button', { name: 'Print 14 (18) in line 9' })).toBeVisible();
  await goBehind(page, GOOD, 'Rep rnds');
  await page.keyboard.press('Control+.');
  await expect(text).toContainText('14 (18) sts');
  await expect(page.getByRole('button', { name: /^Print/u })).toHaveCount(0);
});

test('a mistake is mended at its place in the text', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD.replace('ssk', 'sskk'));
  await page.locator('.cm-lintRange').first().hover();
  await page
    .locator('.cm-tooltip')
    .getByRole('button', { name: /Write "ssk"/u })
    .click();
  await expect(text).toContainText('K1, ssk, k to last 3 sts');
  await expect(page.getByRole('heading', { name: 'Every stitch adds up' })).toBeVisible();
});

test('a stage is folded under its heading and comes back', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await expect(page.getByRole('heading', { name: 'Every stitch adds up' })).toBeVisible();
  await page.getByTitle('Fold line', { exact: true }).first().click();
  await expect(text).not.toContainText('Rep rnds 1 and 2');
  await expect(text).toContainText('EDGE');
  await text.focus();
  await goBehind(page, GOOD, 'BODY');
  await page.keyboard.press('Control+Shift+BracketRight');
  await expect(text).toContainText('Rep rnds 1 and 2');
});

test('the line under the text tells every size, also for a repeat, and shows its row on the needles', async ({
  page
}) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await expect(page.locator('.counts').getByText('18 → 14')).toBeVisible();
  await goBehind(page, GOOD, 'Rep rnds');
  await expect(line(page)).toContainText('Line 9');
  await expect(line(page).getByRole('listitem')).toHaveText([/S.*18 → 14/u, /L.*22 → 18/u]);
  await page.keyboard.press('Alt+Enter');
  await expect(words(page)).toBeVisible();
  await expect(page.getByRole('heading', { level: 1, name: 'BODY' })).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: '3 of 6' })).toBeVisible();
});

test('a row leads to its picture, and the picture back to its row', async ({ page }) => {
  await openPattern(page);
  await openExample(page, 'Winter Crossing Mitten');
  await page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: /^Top/u }).click();
  await page.keyboard.press('ArrowDown');
  await line(page).getByRole('button', { name: 'Show on needles' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Top' })).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: 'Round 1, 1 of' })).toBeVisible();
  await page.getByRole('button', { name: 'Next row' }).click();
  await page.getByRole('button', { name: /^line \d+$/u }).click();
  await expect(line(page)).toContainText('Round 2');
});
