import { test } from 'vitest';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { readPattern } from '$lib/core/text/read.ts';
import { knitPattern } from '$lib/core/knit/knit.ts';
import { countsOf, expectedOf, readCounts } from '../support/counts.ts';
test('dump', () => {
  let out = '';
  for (const n of ['harbour-steps-sock', 'winter-crossing-mitten', 'ferry-lane-hat']) {
    const text = readFileSync(`static/examples/${n}.txt`, 'utf8');
    const p = readPattern(text);
    const exp = readCounts(`examples/${n}.counts.json`);
    out += `#### ${n} sizes ${p.sizes}\n`;
    for (const d of p.diagnostics)
      out += ` R ${d.severity} ${d.code} ${text.slice(0, d.span.from).split('\n').length} ${d.message}\n`;
    p.sizes.forEach((s, i) => {
      const f = knitPattern(p, i, (o) => text.slice(0, o).split('\n').length);
      for (const d of f.diagnostics)
        if (!out.includes(d.message.slice(0, 60)))
          out += ` K ${s} ${d.severity} ${d.code} ${text.slice(0, d.span.from).split('\n').length} ${d.message}\n`;
      const got = countsOf(f, exp),
        want = expectedOf(exp, i);
      want.forEach((w, k) => {
        const g = got[k];
        if (JSON.stringify(w) !== JSON.stringify(g))
          out += ` DIFF ${s} ${w.name}\n   want ${JSON.stringify(w)}\n   got  ${JSON.stringify(g)}\n`;
      });
    });
  }
  for (const n of readdirSync('/work/shared/patterns').filter((f) => f.endsWith('.txt'))) {
    const text = readFileSync('/work/shared/patterns/' + n, 'utf8');
    const p = readPattern(text);
    out += `#### ${n} sizes ${p.sizes}\n`;
    for (const d of p.diagnostics)
      out += ` R ${d.severity} ${d.code} ${text.slice(0, d.span.from).split('\n').length} ${d.message}\n`;
    p.sizes.forEach((s, i) => {
      const f = knitPattern(p, i, (o) => text.slice(0, o).split('\n').length);
      for (const d of f.diagnostics)
        if (!out.includes(d.message.slice(0, 60)))
          out += ` K ${s} ${d.severity} ${d.code} ${text.slice(0, d.span.from).split('\n').length} ${d.message}\n`;
      for (const st of f.stages)
        out += `   ${st.name}: ${st.shape} ${st.entry.stitches.length}->${st.exit.stitches.length} rows ${st.rows.length} stated ${JSON.stringify(st.stated.map((x) => [x.row, x.loads]))}\n`;
    });
  }
  writeFileSync('/tmp/me/dump.txt', out);
});
