import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import boundaries from 'eslint-plugin-boundaries';
import jsdoc from 'eslint-plugin-jsdoc';
import svelte from 'eslint-plugin-svelte';
import { defineConfig, globalIgnores } from 'eslint/config';
import ts from 'typescript-eslint';
import svelteConfig from '../svelte.config.js';

/** The folders of the source; a folder stands before the one that holds it. */
const FOLDER = {
  model: 'src/lib/core/model',
  text: 'src/lib/core/text',
  knit: 'src/lib/core/knit',
  solve: 'src/lib/core/solve',
  say: 'src/lib/core/say',
  draw: 'src/lib/core/draw',
  core: 'src/lib/core',
  drawing: 'src/lib/drawing',
  opening: 'src/lib/opening',
  project: 'src/lib/project',
  state: 'src/lib/view/state',
  attachments: 'src/lib/view/attachments',
  components: 'src/lib/view/components',
  view: 'src/lib/view',
  routes: 'src/routes',
  cli: 'src/cli',
  worker: 'src/service-worker'
};

/** @typedef {keyof typeof FOLDER} Folder */

const FOLDERS = /** @type {Folder[]} */ (Object.keys(FOLDER));

/** The folders of the table that hold files only. A folder inside them is a new one: it belongs into the tables. */
const FILES_ONLY = ['core', 'view'];

/** Every place of the source that the tables know. */
const KNOWN_PLACES = FOLDERS.map((folder) => `${FOLDER[folder]}/${FILES_ONLY.includes(folder) ? '*.*' : '**'}`);

/**
 * Which folder may import which. Anything not listed is refused; `door` is `core/index.ts` and nothing else in core.
 *
 * @type {Record<Folder, readonly (Folder | 'door')[]>}
 */
const MAY_IMPORT = {
  model: [],
  text: ['model'],
  knit: ['model'],
  solve: ['model'],
  say: ['model'],
  draw: ['model'],
  core: ['model', 'text', 'knit', 'solve', 'say', 'draw'],
  drawing: ['door'],
  opening: [],
  project: ['door'],
  state: ['door', 'project', 'opening'],
  attachments: ['door'],
  components: ['door', 'drawing', 'project', 'state', 'attachments'],
  view: [],
  routes: ['door', 'drawing', 'project', 'state', 'attachments', 'components', 'view'],
  cli: ['door', 'drawing', 'project'],
  worker: []
};

/**
 * Which packages each folder may use; `*` stands for anything.
 *
 * @type {Record<Folder, readonly string[]>}
 */
const MAY_USE = {
  model: [],
  text: ['@lezer/*'],
  knit: [],
  solve: [],
  say: [],
  draw: ['d3'],
  core: [],
  drawing: ['svelte', 'svelte/*'],
  opening: ['pdfjs-dist', 'pdfjs-dist/*'],
  project: ['idb', 'valibot', 'fflate', 'pdfkit', 'pdfkit/*', 'svg-to-pdfkit', '@expo-google-fonts/*'],
  state: ['svelte', 'svelte/*', '$app/*'],
  attachments: ['svelte', 'svelte/*', 'd3', 'codemirror', '@codemirror/*', '@lezer/*'],
  components: ['svelte', 'svelte/*', '$app/*'],
  view: [],
  routes: ['svelte', 'svelte/*', '@sveltejs/kit', '$app/*'],
  cli: ['commander', 'node:*', 'svelte/server', '@resvg/resvg-js', 'pdfkit', 'pdfkit/*', 'svg-to-pdfkit'],
  worker: ['$service-worker']
};

/** Names of d3 that need a page or a clock: core draws with the rest of it. */
const D3_OF_THE_PAGE = [
  ...['brush', 'brushX', 'brushY', 'create', 'creator', 'drag', 'dragDisable', 'dragEnable', 'interrupt', 'interval'],
  ...['now', 'pointer', 'pointers', 'select', 'selectAll', 'selection', 'timeout', 'timer', 'transition', 'zoom']
];

/**
 * Turns the names of MAY_USE into the part of a pattern that accepts them.
 *
 * @param {readonly string[]} packages
 */
function accept(packages) {
  return packages.map((name) => `|${name.replaceAll(/[$.]/g, '\\$&').replace('*', '.+')}$`).join('');
}

/**
 * What every folder under `src` refuses: packages that are not its own, however they are imported.
 *
 * @param {Folder} folder
 * @returns {import('eslint').Linter.RulesRecord}
 */
function packageRules(folder) {
  const packages = MAY_USE[folder];
  const regex = `^(?!\\.|\\$lib/${accept(packages)})`;
  const message = `${folder}/ may use ${packages.join(', ') || 'no package'}.`;
  const dynamic = { selector: `ImportExpression > Literal[value=/${regex.replaceAll('/', '\\/')}/]`, message };
  const unnamed = { selector: 'ExportDefaultDeclaration', message: 'Export it by its name.' };
  const paths = isCore(folder) ? [{ name: 'd3', importNames: D3_OF_THE_PAGE, message: 'Core has no page.' }] : [];
  return {
    'no-restricted-imports': ['error', { paths, patterns: [{ regex, message }] }],
    'no-restricted-syntax': ['error', dynamic, ...(folder === 'routes' ? [] : [unnamed])]
  };
}

/** @param {Folder} folder */
function isCore(folder) {
  return FOLDER[folder].startsWith(FOLDER.core);
}

/**
 * How MAY_IMPORT's names are told apart: folders by where they lie, the front door by its file.
 *
 * @param {Folder | 'door'} name
 */
function target(name) {
  return name === 'door' ? { file: { categories: 'door' } } : { element: { type: name } };
}

const NO_RANDOM = { object: 'Math', property: 'random', message: 'Core throws no dice: pass the number in.' };
const NO_CLOCK = { name: 'Date', message: 'Core has no clock: pass the time in.' };

export default defineConfig(
  globalIgnores(['.svelte-kit/', 'build/', 'dist/', 'test-results/']),
  js.configs.recommended,
  ts.configs.recommended,
  svelte.configs.recommended,
  prettier,
  svelte.configs.prettier,
  {
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      'max-lines': ['error', 300],
      'no-undef': 'off', // TypeScript's work
      eqeqeq: 'error',
      '@typescript-eslint/consistent-type-definitions': ['error', 'interface'],
      '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }]
    }
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } }
  },
  {
    name: 'sizes of components',
    files: ['src/**/*.svelte'],
    rules: { 'max-lines': ['error', 120] }
  },

  {
    name: 'wall: who imports whom',
    files: ['src/**/*.{ts,svelte}'],
    plugins: { boundaries },
    settings: {
      'import/resolver': { typescript: { project: './tsconfig.json' } },
      'boundaries/elements': FOLDERS.map((type) => ({
        type,
        pattern: FOLDER[type],
        partialMatch: false
      })),
      'boundaries/files': [{ category: 'door', pattern: 'src/lib/core/index.ts' }]
    },
    rules: {
      'boundaries/dependencies': [
        'error',
        {
          default: 'disallow',
          policies: FOLDERS.map((from) => ({
            from: { element: { type: from } },
            allow: [from, ...MAY_IMPORT[from]].map((name) => ({ to: target(name) }))
          }))
        }
      ]
    }
  },
  FOLDERS.toReversed().map((folder) => ({
    name: `wall: packages of ${folder}`,
    files: [`${FOLDER[folder]}/**/*.{ts,svelte}`],
    rules: packageRules(folder)
  })),
  {
    name: 'wall: every file has a folder of the tables',
    files: ['src/lib/**/*.{ts,svelte}'],
    ignores: KNOWN_PLACES,
    rules: {
      'no-restricted-syntax': ['error', { selector: 'Program', message: 'No table knows this folder.' }]
    }
  },
  {
    name: 'wall: core is pure and small',
    files: ['src/lib/core/**/*.ts'],
    ignores: ['**/*.d.ts'],
    plugins: { jsdoc },
    rules: {
      complexity: ['error', 12],
      'max-lines-per-function': ['error', 60],
      'max-params': ['error', 3],
      'no-console': 'error',
      'no-restricted-globals': ['error', NO_CLOCK],
      'no-restricted-properties': ['error', NO_RANDOM],
      'jsdoc/no-types': 'error',
      'jsdoc/require-jsdoc': [
        'error',
        {
          publicOnly: true,
          require: { ClassDeclaration: true, FunctionDeclaration: true },
          contexts: ['TSInterfaceDeclaration', 'TSTypeAliasDeclaration', 'ExportNamedDeclaration > VariableDeclaration']
        }
      ]
    }
  }
);
