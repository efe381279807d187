import { readFileSync } from 'node:fs';
import adapter from '@sveltejs/adapter-static';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

/** @type {import('@sveltejs/kit').Config} */
const config = {
  compilerOptions: { runes: true },
  kit: {
    adapter: adapter({ strict: true }),
    // A fixed name: the same source always builds the same bytes.
    version: { name: version },
    typescript: {
      config: (tsconfig) => ({
        ...tsconfig,
        include: [...tsconfig.include, '../.config/*.js', '../.config/*.ts', '../svelte.config.js']
      })
    }
  }
};

export default config;
