/** A keystroke in a long pattern against loading the page: both in a browser, from the built app. */

import { chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import { findBrowser, LAUNCH_FLAGS } from '../../.config/browser.js';
import { knitText, planWorkpiece } from '$lib/core/index.ts';
import { median, type Ratio } from './measure.ts';

const PORT = 4176;
const ADDRESS = `http://127.0.0.1:${PORT}`;

/** Three hundred rows in three sizes, and a last row that fits until a stitch too many is typed. */
function longPattern(): string {
  const rows = Array.from({ length: 149 }, (_, index) => [
    `Rnd ${2 * index + 1}: *K2, p2; rep from * to last 4 (8, 4) sts, k2tog, yo, k2 (6, 2).`,
    `Rnd ${2 * index + 2}: K to last 2 sts, p2.`
  ]);
  return [
    'Long tube',
    'Sizes: S (M, L)',
    '',
    'LEG',
    'CO 64 (72, 80) sts. Join to work in the rnd; pm for BOR.',
    ...rows.flat(),
    'Rnd 299: K.',
    'Rnd 300: K64 (72, 80'
  ].join('\n');
}

/** What one keystroke makes the core do, against opening the page with the same text; and how long its message takes. */
export async function keystroke(): Promise<Ratio> {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error('No browser: run `node .config/browser.js` to install one.');
  const server = await preview({ preview: { host: '127.0.0.1', port: PORT, strictPort: true }, logLevel: 'error' });
  const browser = await chromium.launch({ executablePath, args: LAUNCH_FLAGS });
  const page = await browser.newPage({ serviceWorkers: 'block' });
  await open(page);
  await page.getByLabel('Pattern file').setInputFiles({
    name: 'long.txt',
    mimeType: 'text/plain',
    buffer: Buffer.from(`${longPattern()}).`)
  });
  await page.getByText('Long tube is open.').waitFor();
  const key = await middle(7, () => typed(page));
  await page.waitForTimeout(500); // the text is kept in the browser
  const load = await middle(5, () => loaded(page));
  await browser.close();
  await server.close();
  const anew = median(() => planWorkpiece(knitText(`${longPattern()}).`), { setup: 'dpn-5' }), 7);
  const name = [
    `a keystroke in 300 rows of three sizes: reading, knitting and laying out anew (${anew.toFixed(0)} ms; ${key.toFixed(0)} ms`,
    `from the key to the message, the pause for more typing included) against loading the page (${load.toFixed(0)} ms)`
  ].join(' ');
  return { name, value: anew / load, aim: 'at most 0.1' };
}

async function open(page: Page): Promise<void> {
  await page.goto(ADDRESS);
  await page.getByRole('textbox', { name: 'Pattern text' }).waitFor();
}

async function loaded(page: Page): Promise<number> {
  const start = performance.now();
  await open(page);
  await page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: /LEG/ }).waitFor();
  return performance.now() - start;
}

// The text ends with "80)."; a digit before the bracket makes the row too long for the last size.
async function typed(page: Page): Promise<number> {
  const text = page.getByRole('textbox', { name: 'Pattern text' });
  await text.press('Control+End');
  await text.press('ArrowLeft');
  await text.press('ArrowLeft');
  const start = performance.now();
  await page.keyboard.type('0');
  await page.getByText('Rnd 300: the row needs').first().waitFor();
  const time = performance.now() - start;
  await page.keyboard.press('Backspace');
  await page.getByText('Rnd 300: the row needs').first().waitFor({ state: 'detached' });
  return time;
}

async function middle(times: number, work: () => Promise<number>): Promise<number> {
  const found: number[] = [];
  for (let time = 0; time < times; time += 1) found.push(await work());
  return found.sort((left, right) => left - right)[Math.floor(times / 2)]!;
}
