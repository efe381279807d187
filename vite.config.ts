import { chmodSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { lezer } from '@lezer/generator/rollup';
import { sveltekit } from '@sveltejs/kit/vite';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin, UserConfig } from 'vite';
import { defineConfig } from 'vitest/config';

/** Packages with binaries of their own: loaded from node_modules when the program runs. */
const NATIVE = ['@resvg/resvg-js', 'highs'];

/** What only the benchmarks use, and cannot be bundled. */
const TOOLS = ['@playwright/test', 'vite'];

/** A module of the core does nothing by being loaded: a page takes only those that it uses. */
const LEAN = { moduleSideEffects: [{ test: /\/src\/lib\/core\//u, sideEffects: false }] };

/** The app (`vite build`), its tests, the command line (`--mode cli`), the benchmarks (`--mode bench`) and the long tests (`--mode fuzz`). */
export default defineConfig(({ mode }) => {
  if (mode === 'cli') return program('src/cli/main.ts', 'dist/cli.js');
  if (mode === 'bench') return program('tests/bench/main.ts', 'dist/bench/main.js');
  if (mode === 'fuzz') return program('tests/nightly/fuzz.ts', 'dist/fuzz/main.js');
  return {
    plugins: [lezer(), sveltekit()],
    build: { rolldownOptions: { treeshake: LEAN } },
    worker: { format: 'es', plugins: () => [lezer()], rolldownOptions: { treeshake: LEAN } },
    test: {
      include: ['tests/**/*.test.ts'],
      testTimeout: 30_000,
      exclude: ['tests/e2e/**'],
      passWithNoTests: false
    }
  };
});

/** One program for Node, with everything but native packages bundled into it. */
function program(entry: string, file: string): UserConfig {
  const folder = file.slice(0, file.lastIndexOf('/'));
  return {
    plugins: [lezer(), svelte({ configFile: false, compilerOptions: { runes: true } }), executable(file)],
    resolve: { alias: { $lib: fileURLToPath(new URL('src/lib', import.meta.url)) } },
    publicDir: false,
    ssr: { noExternal: true, external: [...NATIVE, ...TOOLS] },
    build: {
      ssr: entry,
      outDir: folder,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: file.slice(folder.length + 1) } }
    }
  };
}

/** Lets the built file be started by its name. */
function executable(file: string): Plugin {
  return { name: 'executable', writeBundle: () => chmodSync(file, 0o755) };
}
