/** The walls round the core stand: each case is code that must be refused, or its harmless neighbour. */
import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import ts from 'typescript';
import { describe, expect, test, vi } from 'vitest';

vi.setConfig({ testTimeout: 20_000 });

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const CORE = join(ROOT, 'src/lib/core');
const eslint = new ESLint({ cwd: ROOT, overrideConfigFile: join(ROOT, '.config/eslint.config.js') });

/** Names of the rules that a file with this text would break, if it stood at this place. */
async function broken(place: string, code: string): Promise<string[]> {
  const text = place.endsWith('.svelte') ? `<script lang="ts">\n${code}\n</script>\n` : code;
  const [result] = await eslint.lintText(text, { filePath: join(ROOT, place) });
  return [...new Set(result?.messages.map((message) => message.ruleId ?? message.message))];
}

/** An import of a file that exists, or of the first one in a folder: what does not exist is no neighbour. */
function importing(target: string): string {
  if (/\.\w+$|^[^$.]/.test(target)) return `import { other } from '${target}';\nother;\n`;
  const file = readdirSync(join(CORE, basename(target))).find((name) => /(?<!\.d)\.ts$/.test(name));
  return importing(`${target}/${file}`);
}

const IMPORTS = 'boundaries/dependencies';
const PACKAGES = 'no-restricted-imports';

describe('who imports whom', () => {
  test.each([
    ['src/lib/core/model/a.ts', '../solve'],
    ['src/lib/core/text/a.ts', '../knit'],
    ['src/lib/core/knit/a.ts', '../text'],
    ['src/lib/core/solve/a.ts', '../knit'],
    ['src/lib/core/say/a.ts', '../solve'],
    ['src/lib/core/draw/a.ts', '../solve'],
    ['src/lib/core/solve/a.ts', '../compile.ts'],
    ['src/lib/core/solve/a.ts', '../index.ts'],
    ['src/lib/core/model/a.ts', '../../view/theme.css'],
    ['src/lib/drawing/A.svelte', '$lib/core/draw'],
    ['src/lib/drawing/A.svelte', '$lib/core/compile.ts'],
    ['src/lib/project/a.ts', '$lib/core/model'],
    ['src/lib/view/state/a.svelte.ts', '$lib/core/solve'],
    ['src/lib/view/attachments/a.ts', '$lib/core/text'],
    ['src/lib/view/components/A.svelte', '$lib/core/solve'],
    ['src/lib/view/components/A.svelte', '../../core/solve'],
    ['src/routes/+page.svelte', '$lib/core/say'],
    ['src/cli/a.ts', '../lib/core/knit'],
    ['src/cli/a.ts', '$lib/view/theme.css']
  ])('%s may not import %s', async (place, target) => {
    expect(await broken(place, importing(target))).toContain(IMPORTS);
  });

  test('no file may fetch its way round a wall while it runs', async () => {
    const code = importing('$lib/core/model').replace(/^.*('.*');\n.*/, 'import($1);');
    expect(await broken('src/lib/view/components/A.svelte', code)).toContain(IMPORTS);
  });

  test.each([
    ['src/lib/core/solve/a.ts', '../model'],
    ['src/lib/core/draw/a.ts', '../model'],
    ['src/lib/core/compile.ts', './solve'],
    ['src/lib/drawing/A.svelte', '$lib/core/index.ts'],
    ['src/lib/view/components/A.svelte', '$lib/core/index.ts'],
    ['src/cli/a.ts', '$lib/core/index.ts']
  ])('%s may import %s', async (place, target) => {
    expect(await broken(place, importing(target))).not.toContain(IMPORTS);
  });

  test.each(['src/lib/helpers/a.ts', 'src/lib/core/helpers/a.ts', 'src/lib/view/helpers/a.ts'])(
    '%s would lie in a folder that no table knows',
    async (place) => expect(await broken(place, 'export {};\n')).toEqual(['no-restricted-syntax'])
  );
});

describe('which packages a folder may use', () => {
  test.each([
    ['src/lib/core/model/a.ts', 'valibot'],
    ['src/lib/core/text/a.ts', 'd3'],
    ['src/lib/core/text/a.ts', 'node:fs'],
    ['src/lib/core/knit/a.ts', 'node:fs'],
    ['src/lib/core/solve/a.ts', 'd3'],
    ['src/lib/core/say/a.ts', 'svelte'],
    ['src/lib/core/draw/a.ts', '@lezer/lr'],
    ['src/lib/core/compile.ts', 'highs'],
    ['src/lib/view/components/A.svelte', 'd3'],
    ['src/lib/view/state/a.svelte.ts', 'codemirror'],
    ['src/lib/drawing/A.svelte', 'd3'],
    ['src/cli/a.ts', 'idb']
  ])('%s may not use %s', async (place, name) => {
    expect(await broken(place, importing(name))).toContain(PACKAGES);
  });

  test('a package may not be fetched while the core runs either', async () => {
    expect(await broken('src/lib/core/solve/a.ts', "await import('d3');\n")).toContain('no-restricted-syntax');
  });

  test('draw/ may use the shapes of d3, not its hands on the page', async () => {
    expect(await broken('src/lib/core/draw/a.ts', "import { arc } from 'd3';\narc();\n")).toEqual([]);
    expect(await broken('src/lib/core/draw/a.ts', "import { select } from 'd3';\nselect();\n")).toEqual([PACKAGES]);
  });

  test.each([
    ['src/lib/core/text/a.ts', '@lezer/lr'],
    ['src/lib/view/attachments/a.ts', '@codemirror/view'],
    ['src/cli/a.ts', 'commander']
  ])('%s may use %s', async (place, name) => {
    expect(await broken(place, importing(name))).not.toContain(PACKAGES);
  });
});

describe('the core is pure and small', () => {
  const body = (lines: number) => 'void 0;\n'.repeat(lines);

  test.each([
    ['no-restricted-properties', 'dice', 'Math.random();\n'],
    ['no-restricted-globals', 'the time', 'Date.now();\n'],
    ['no-restricted-globals', 'a new date', 'new Date();\n'],
    ['no-console', 'a console', "console.log('x');\n"],
    ['max-lines', '301 lines', body(301)],
    ['max-lines-per-function', 'a function of 61 lines', `function a() {\n${body(59)}}\na();\n`],
    ['max-params', 'four parameters', '((a, b, c, d) => [a, b, c, d])();\n'],
    ['complexity', 'thirteen ways through a function', `((a) => ${'a ? a : '.repeat(12)}a)();\n`],
    ['jsdoc/require-jsdoc', 'a function without a docstring', 'export function a() {}\n'],
    ['jsdoc/require-jsdoc', 'a constant without a docstring', 'export const a = 1;\n'],
    ['jsdoc/require-jsdoc', 'an interface without a docstring', 'export interface A {\n  b: 1;\n}\n'],
    ['jsdoc/require-jsdoc', 'a type without a docstring', 'export type A = 1;\n'],
    [
      'jsdoc/no-types',
      'types in a docstring',
      '/**\n * A.\n *\n * @param {string} b C.\n */\nexport function a(b: string) {\n  return b;\n}\n'
    ],
    ['no-restricted-syntax', 'a default export', 'export default 1;\n']
  ])('%s refuses %s', async (rule, _name, code) => {
    expect(await broken('src/lib/core/solve/a.ts', code)).toContain(rule);
  });

  test('a file of 300 lines is still allowed', async () => {
    expect(await broken('src/lib/core/solve/a.ts', body(300))).not.toContain('max-lines');
  });

  test('a function of three parameters with a docstring is still allowed', async () => {
    const code = '/** Lists them. */\nexport function a(b: 1, c: 1, d: 1) {\n  return [b, c, d];\n}\n';
    expect(await broken('src/lib/core/solve/a.ts', code)).toEqual([]);
  });

  test('a component of 120 lines is still allowed', async () => {
    expect(await broken('src/lib/view/components/A.svelte', body(117))).not.toContain('max-lines');
  });

  test('a component of more than 120 lines is refused', async () => {
    expect(await broken('src/lib/view/components/A.svelte', body(118))).toContain('max-lines');
  });
});

describe('the types of the core', () => {
  const options = coreOptions();

  test.each(['document', 'window', 'process', 'console', 'setTimeout', 'localStorage'])('know no %s', (name) => {
    expect(typeErrors(`${name};\n`)).toEqual([expect.stringContaining(`Cannot find name '${name}'`)]);
  });

  test('take nothing in a list for granted', () => {
    expect(typeErrors('const list: number[] = [];\nexport const one: number = list[0];\n')).toHaveLength(1);
  });

  test('accept plain code', () => {
    expect(typeErrors('export const sum = [1, 2].reduce((a, b) => a + b, 0);\n')).toEqual([]);
  });

  function coreOptions(): ts.CompilerOptions {
    const file = join(CORE, 'tsconfig.json');
    const { config } = ts.readConfigFile(file, (name) => ts.sys.readFile(name));
    return ts.parseJsonConfigFileContent(config, ts.sys, dirname(file)).options;
  }

  /** What the compiler says about one file in the core that exists only here. */
  function typeErrors(code: string): string[] {
    const place = join(CORE, 'only-in-this-test.ts');
    const host = ts.createCompilerHost(options);
    const { readFile, fileExists } = host;
    host.readFile = (name) => (name === place ? code : readFile(name));
    host.fileExists = (name) => name === place || fileExists(name);
    const program = ts.createProgram([place], options, host);
    return ts
      .getPreEmitDiagnostics(program)
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
  }
});
