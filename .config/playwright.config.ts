import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { findBrowser, LAUNCH_FLAGS } from './browser.js';

const ADDRESS = 'http://127.0.0.1:4174';

const executablePath = findBrowser();
if (!executablePath) throw new Error('No browser: run `node .config/browser.js` to install one.');

export default defineConfig({
  testDir: '../tests/e2e',
  outputDir: '../test-results',
  forbidOnly: !!process.env.CI,
  fullyParallel: true,
  workers: 2,
  reporter: 'list',
  use: { baseURL: ADDRESS, launchOptions: { executablePath, args: LAUNCH_FLAGS } },
  webServer: {
    command: 'node .config/start.js --strict-port',
    cwd: fileURLToPath(new URL('..', import.meta.url)),
    env: { PORT: '4174' },
    url: ADDRESS,
    timeout: 180_000
  }
});
