/** Runs the benchmarks one after the other and prints a ratio for each: `npm run bench`. */

import { wholeCompile } from './compile.ts';
import { keystroke } from './page.ts';
import { againstEnumeration, againstSolver, growth, growthWhileGrowing } from './distribute.ts';

for (const benchmark of [againstEnumeration, againstSolver, growth, growthWhileGrowing, wholeCompile, keystroke]) {
  const { name, value, aim } = await benchmark();
  console.log(`${value.toFixed(2).padStart(10)}  ${name} (aim: ${aim})`);
}
