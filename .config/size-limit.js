import { readFileSync } from 'node:fs';

const page = readFileSync('build/index.html', 'utf8');
const firstLoad = [...page.matchAll(/(?:href|import\()="?'?([^"']+\.(?:js|css))/g)].map(
  ([, path]) => `../build/${path}`
);

export default [
  { name: 'first page: scripts and styles', path: [...new Set(firstLoad)], limit: '90 kB' },
  { name: 'whole app: scripts', path: '../build/**/*.js', limit: '900 kB' },
  { name: 'command line: start', path: '../dist/cli.js', limit: '170 kB' }
];
