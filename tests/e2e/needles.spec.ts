import { expect, test } from '@playwright/test';
import { chooseSetup, drawing, openNeedles, words } from './support.ts';

test('the needles open with a drawing and the same in words', async ({ page }) => {
  await openNeedles(page);
  await expect(drawing(page)).toBeVisible();
  await expect(words(page)).toContainText('N1, needle A, feeding');
});

test('every set-up holds all the stitches of the stage', async ({ page }) => {
  await openNeedles(page, 'LEG');
  for (const name of ['Set of five', 'Set of four', 'Two circulars', 'Magic loop', 'Three flexible']) {
    await chooseSetup(page, name);
    await expect.poll(async () => sum(await words(page).innerText())).toBe(56);
  }
});

test('a size changes the stitches on the needles', async ({ page }) => {
  await openNeedles(page, 'LEG');
  await page.getByRole('radio', { name: 'L', exact: true }).check({ force: true });
  await expect.poll(async () => sum(await words(page).innerText())).toBe(72);
});

test('the rows of a stage can be stepped through to its end', async ({ page }) => {
  await openNeedles(page, 'LEG');
  await page.getByRole('button', { name: 'Next row' }).click();
  await expect(page.getByText(/, 2 of \d+/)).toBeVisible();
  await page.getByRole('button', { name: 'After the last row' }).click();
  await expect(page.getByText('After the last row')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Next row' })).toBeDisabled();
});

test('another layout on offer is taken, kept over a reload, and given back', async ({ page }) => {
  await openNeedles(page, 'LEG');
  const offers = page.getByRole('region', { name: 'Layouts' }).getByRole('button', { name: /pays/ });
  await offers.nth(1).click();
  await expect(offers.nth(1)).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('Your own layout.')).toBeVisible();
  await page.reload();
  await expect(offers.nth(1)).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'Back to the best' }).click();
  await expect(offers.first()).toHaveAttribute('aria-pressed', 'true');
});

test('a break moves with the arrow keys, says what it pays, and Escape puts it back', async ({ page }) => {
  await openNeedles(page, 'CUFF');
  const second = page.getByRole('slider', { name: 'Break 2' });
  const start = Number(await second.getAttribute('aria-valuenow'));
  await second.focus();
  await page.keyboard.press('ArrowRight');
  await expect(second).toHaveAttribute('aria-valuenow', `${start + 1}`);
  await expect(second).toHaveAttribute(
    'aria-valuetext',
    new RegExp(`^break 2 after stitch ${start + 1}, (pays|cannot)`)
  );
  await expect(page.getByText('Your own layout.')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(second).toHaveAttribute('aria-valuenow', `${start}`);
  await expect(page.getByText('The best layout found.')).toBeVisible();
});

test('a dragged break is judged on the way and stays where it is let go', async ({ page }) => {
  await openNeedles(page, 'CUFF');
  const second = page.getByRole('slider', { name: 'Break 2' });
  await second.scrollIntoViewIfNeeded();
  const start = Number(await second.getAttribute('aria-valuenow'));
  const box = (await second.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 40, y, { steps: 4 });
  await expect(second).not.toHaveAttribute('aria-valuenow', `${start}`);
  await expect(page.getByText(/; the best, .*, pays/)).toBeVisible();
  await page.mouse.up();
  const moved = Number(await second.getAttribute('aria-valuenow'));
  expect(moved).toBeGreaterThan(start);
  await page.reload();
  await expect(second).toHaveAttribute('aria-valuenow', `${moved}`);
});

test('stitches travel when another set-up is chosen, and the way can be played, stepped and set', async ({ page }) => {
  await openNeedles(page, 'LEG');
  await chooseSetup(page, 'Magic loop');
  const motion = page.getByRole('region', { name: 'The stitches on their way' });
  await expect(motion).toContainText(/From 4 needles [\d/]+ to 2 groups [\d/]+/);
  const scrub = motion.getByRole('slider');
  await expect(scrub).toHaveValue('1');
  await motion.getByRole('button', { name: 'One step back' }).click();
  await expect(scrub).not.toHaveValue('1');
  await motion.getByRole('button', { name: 'Back', exact: true }).click();
  await expect(scrub).toHaveValue('0');
  await motion.getByRole('button', { name: 'Play' }).click();
  await motion.getByRole('button', { name: 'Pause' }).click();
  await expect(motion.getByRole('button', { name: 'Play' })).toBeVisible();
});

test('with reduced motion there are two still pictures', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await openNeedles(page, 'LEG');
  await chooseSetup(page, 'Two circulars');
  const motion = page.getByRole('region', { name: 'The stitches on their way' });
  await expect(motion.getByRole('button', { name: 'After' })).toHaveAttribute('aria-pressed', 'true');
  const title = () => drawing(page).locator('title').textContent();
  expect(await title()).toContain('two circular needles');
  await motion.getByRole('button', { name: 'Before' }).click();
  await expect.poll(title).toContain('set of five');
  await expect(motion.getByRole('slider')).toHaveCount(0);
});

test('the drawing is magnified by button and key, and fits again', async ({ page }) => {
  await openNeedles(page);
  const frame = page.getByRole('region', { name: / on / });
  await page.getByRole('button', { name: 'Nearer' }).click();
  await expect(frame).toHaveAttribute('data-magnified', 'true');
  await page.getByRole('button', { name: 'Fit' }).click();
  await expect(frame).toHaveAttribute('data-magnified', 'false');
  await frame.focus();
  await page.keyboard.press('+');
  await expect(frame).toHaveAttribute('data-magnified', 'true');
  await page.keyboard.press('0');
  await expect(frame).toHaveAttribute('data-magnified', 'false');
});

test('a limit changes the plan and goes back to its usual value', async ({ page }) => {
  await openNeedles(page);
  await page.getByText('Lengths and limits').click();
  const minimum = page.getByLabel('Fewest stitches at ease on a needle');
  await minimum.fill('99');
  await minimum.press('Tab');
  await expect(page.getByText('Between 2 and 20, please.')).toBeVisible();
  await minimum.fill('6');
  await minimum.press('Tab');
  await page.getByRole('button', { name: 'Back to the usual values' }).click();
  await expect(minimum).toHaveValue('4');
});

/** Stitches of all needles that the words name. */
function sum(text: string): number {
  return [...text.matchAll(/(\d+) stitch(?:es)?[:.]/g)].reduce((total, [, count]) => total + Number(count), 0);
}
