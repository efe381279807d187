import { test } from 'vitest';
import { stageOf } from '/work/main/tests/support/stages.ts';
import { DEFAULT_SETTINGS } from '$lib/core/model/settings.ts';
import { SETUPS } from '$lib/core/model/setup.ts';
import { judgeOf } from '$lib/core/solve/judge.ts';
import { questionOf } from '$lib/core/solve/distribute.ts';
import { mostOn } from '$lib/core/solve/capacity.ts';
test('x', () => {
  const j = judgeOf(stageOf({ rows: [['k400', 1]] }), SETUPS['dpn-5'], DEFAULT_SETTINGS);
  const q = questionOf(j, 4);
  console.log(mostOn(SETUPS['dpn-5'], DEFAULT_SETTINGS), q.needle(0, 100), q.needle(100, 200), q.base, q.gaps.slice(0, 4));
});
