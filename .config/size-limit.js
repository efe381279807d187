import { readFileSync } from 'node:fs';

const CLIENT = '../.svelte-kit/output/client';

/** @type {Record<string, { file: string, imports?: string[], dynamicImports?: string[] }>} */
const manifest = JSON.parse(readFileSync(new URL(`${CLIENT}/.vite/manifest.json`, import.meta.url), 'utf8'));

/** What the first page takes before the text can be typed: the start of the app, its first route, and what that asks for. */
const FIRST = [
  /client\/entry\.js$/,
  /client-optimized\/app\.js$/,
  /client-optimized\/nodes\/0\.js$/,
  /client-optimized\/nodes\/2\.js$/,
  /components\/Shell\.svelte$/,
  /components\/PatternPage\.svelte$/
];

/**
 * The one module of the build with this name.
 *
 * @param {RegExp} name
 */
function named(name) {
  const found = Object.keys(manifest).filter((key) => name.test(key));
  if (found.length !== 1) throw new Error(`The build has ${found.length} modules named ${name}, not one.`);
  return /** @type {string} */ (found[0]);
}

/**
 * A module of the build with everything it imports at once.
 *
 * @param {string} key
 * @param {Set<string>} known
 */
function withImports(key, known = new Set()) {
  if (known.has(key)) return known;
  known.add(key);
  for (const other of manifest[key]?.imports ?? []) withImports(other, known);
  return known;
}

const firstScripts = new Set(FIRST.flatMap((name) => [...withImports(named(name))]));

export default [
  {
    name: 'first page: scripts before the editor',
    path: [...firstScripts].map((key) => `${CLIENT}/${manifest[key]?.file}`),
    limit: '90 kB',
    gzip: true
  },
  { name: 'whole app: scripts', path: '../build/**/*.js', limit: '900 kB', gzip: true },
  { name: 'command line: start', path: '../dist/cli.js', limit: '200 kB' }
];
