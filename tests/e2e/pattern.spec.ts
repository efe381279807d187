import { expect, test } from '@playwright/test';
import { openExample, openPattern } from './support.ts';

const GOOD = `Test cowl

BODY
CO 20 sts. Join to work in the rnd; pm for BOR.
Rnd 1: *K2, p2; rep from * to end.
Rnd 2: K8, k2tog, k10. 19 sts.
`;

test('the first visit opens an example with its stages and counts', async ({ page }) => {
  const text = await openPattern(page);
  await expect(text).toContainText('Harbour Steps sock');
  await expect(page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: /CUFF/ })).toContainText(
    '56'
  );
  await expect(page.locator('.counts').getByText('56').first()).toBeVisible();
  await expect(page.getByText('Kept in this browser.')).toBeVisible();
});

test('a mistake is shown at its place and goes when it is mended', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD.replace('19 sts', '18 sts'));
  const message = page.getByRole('list', { name: 'Messages' }).getByRole('listitem');
  await expect(message).toHaveCount(1);
  await expect(message).toContainText('line 6');
  await expect(page.locator('.cm-lintRange-error')).toBeVisible();
  await message.getByRole('button', { name: /^Mistake/u }).click();
  await expect(text).toBeFocused();
  await text.fill(GOOD);
  await expect(message).toHaveCount(0);
  await expect(page.getByRole('heading', { name: 'Every stitch adds up' })).toBeVisible();
});

test('the count before and after stands beside each row, for the chosen size', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await expect(page.locator('.counts').getByText('20 → 19')).toBeVisible();
  await openExample(page, 'Winter Crossing Mitten');
  await page.getByRole('radio', { name: 'Large' }).check({ force: true });
  await expect(page.locator('.counts').getByText('48 → 49')).toBeVisible();
});

test('a stage of the outline puts the cursor at its heading', async ({ page }) => {
  const text = await openPattern(page);
  await page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: /TOE/ }).click();
  await expect(text).toBeFocused();
  await page.keyboard.type('BIG ');
  await expect(page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: /BIG TOE/ })).toBeVisible();
});

test('another text can be opened, and the one before comes back', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await openExample(page, 'Ferry Lane Hat');
  await expect(text).toContainText('Ferry Lane Hat');
  await page.getByRole('button', { name: 'Bring back the text before' }).click();
  await expect(text).toContainText('Test cowl');
});

test('a text file is opened and saved again under its title', async ({ page }) => {
  const text = await openPattern(page);
  await page
    .getByLabel('Pattern file')
    .setInputFiles({ name: 'x.txt', mimeType: 'text/plain', buffer: Buffer.from(GOOD) });
  await expect(text).toContainText('Test cowl');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a text file' }).click();
  expect((await saving).suggestedFilename()).toBe('test-cowl.txt');
});

test('a file over the limit or without text is refused and changes nothing', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  const open = (buffer: Buffer) =>
    page.getByLabel('Pattern file').setInputFiles({ name: 'x.txt', mimeType: 'text/plain', buffer });
  await open(Buffer.alloc(1_000_001, 'k'));
  await expect(page.getByText('the most that is read')).toBeVisible();
  await open(Buffer.from([0, 1, 2, 0]));
  await expect(page.getByText('This is not a text file')).toBeVisible();
  await expect(text).toContainText('Test cowl');
});

test('text and choices are there again after closing at once and after two quick reloads', async ({ page }) => {
  const text = await openPattern(page);
  await text.fill(GOOD);
  await page.getByRole('radio', { name: 'Magic loop' }).check({ force: true });
  await text.press('End');
  await page.keyboard.type('!');
  await page.reload({ waitUntil: 'commit' });
  await page.reload();
  await expect(text).toContainText('19 sts.');
  await expect(text).toContainText('!');
  await expect(page.getByRole('radio', { name: 'Magic loop' })).toBeChecked();
});

test('what another version kept is left untouched until the knitter gives it up', async ({ page }) => {
  const kept = JSON.stringify({ roundsplit: 'project', version: 99, text: 'a treasure' });
  await page.addInitScript((json) => {
    if (!localStorage.getItem('seen')) localStorage.setItem('roundsplit.project', json);
    localStorage.setItem('seen', 'yes');
  }, kept);
  const text = await openPattern(page);
  await expect(page.getByRole('alert')).toContainText('another version');
  await text.fill(GOOD);
  await expect(text).toContainText('Test cowl');
  expect(await page.evaluate(() => localStorage.getItem('roundsplit.project'))).toBe(kept);
  await page.getByRole('button', { name: 'Give it up' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.reload();
  await expect(text).toContainText('Test cowl');
});

test('two windows show the same project', async ({ page, context }) => {
  const text = await openPattern(page);
  const other = await context.newPage();
  const otherText = await openPattern(other);
  await text.fill(GOOD);
  await expect(otherText).toContainText('Test cowl');
  await otherText.press('Control+End');
  await other.keyboard.type('More.');
  await expect(text).toContainText('More.');
});

test('a file dropped anywhere on the page is opened', async ({ page }) => {
  const text = await openPattern(page);
  const files = await page.evaluateHandle((words) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([words], 'cowl.txt', { type: 'text/plain' }));
    return transfer;
  }, GOOD);
  await text.dispatchEvent('drop', { dataTransfer: files });
  await expect(page.getByText('Test cowl is open.')).toBeVisible();
  await expect(text).toContainText('19 sts.');
});
