import { test } from 'vitest';
import { readFileSync } from 'node:fs';
import { knitText, planWorkpiece, planJson } from '$lib/core/compile.ts';
import { planText } from '$lib/core/say/report.ts';
import { SETUP_IDS } from '$lib/core/model/setup.ts';
test('dump', () => {
  for (const n of ['harbour-steps-sock', 'winter-crossing-mitten', 'ferry-lane-hat']) {
    const t0 = performance.now();
    const w = knitText(readFileSync(`static/examples/${n}.txt`, 'utf8'));
    const t1 = performance.now();
    for (const setup of SETUP_IDS) {
      const p = planWorkpiece(w, { setup, size: 1 });
      console.log(setup, n, p.stages.map((s) => `${s.stage.name}:${s.chosen?.loads.join('/') ?? (s.distribution.kind === 'impossible' ? s.distribution.because.code : '?')} ${s.chosen?.price}`).join(' | '));
      if (setup === 'dpn-5' && n.startsWith('harb')) console.log(planText(planJson(w, p)).slice(0, 3500));
    }
    console.log('knit', t1 - t0, 'plan', performance.now() - t1);
  }
});
