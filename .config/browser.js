/**
 * Finds a Chromium for the browser tests. Run as a program, it also installs one if there is none:
 * the browser that Playwright brings or, where that can't be fetched, Debian's.
 */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { chromium } from '@playwright/test';

/** Where a browser may be, best first. */
const PLACES = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/google-chrome',
  chromium.executablePath()
];

/** What a browser needs to run as root, on a machine without a graphics card or a network. */
export const LAUNCH_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync'
];

/** The first browser that starts, if any does. */
export function findBrowser() {
  return PLACES.find((place) => place && spawnSync(place, ['--version']).status === 0);
}

/**
 * Runs a command in full view; a failure is for the next look for a browser to find.
 *
 * @param {string} command
 * @param {string[]} options
 */
function run(command, ...options) {
  console.log(`> ${command} ${options.join(' ')}`);
  spawnSync(command, options, { stdio: 'inherit' });
}

function installPlaywrightBrowser() {
  run(process.execPath, createRequire(import.meta.url).resolve('@playwright/test/cli'), 'install', 'chromium');
}

function installDebianBrowser() {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || spawnSync('apt-get', ['--version']).status !== 0) return;
  run('apt-get', 'update');
  run('apt-get', 'install', '-y', '--no-install-recommends', 'chromium-headless-shell');
}

function installBrowser() {
  for (const install of [installPlaywrightBrowser, installDebianBrowser]) {
    if (findBrowser()) break;
    install();
  }
  const found = findBrowser();
  if (!found) {
    console.error('No Chromium was found or could be installed. Install one and name it in CHROMIUM_PATH.');
    process.exit(1);
  }
  console.log(`Browser for the tests: ${found}`);
}

if (process.argv[1]?.endsWith('browser.js')) installBrowser();
