/** Runs the benchmarks one after the other and prints a ratio for each: `npm run bench`. */

import { wholeCompile } from './compile.ts';
import { againstEnumeration, growth } from './distribute.ts';

for (const benchmark of [againstEnumeration, growth, wholeCompile]) {
  const { name, value, aim } = benchmark();
  console.log(`${value.toFixed(2).padStart(10)}  ${name} (aim: ${aim})`);
}
