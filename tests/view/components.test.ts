import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { SETUP_IDS, SETUPS } from '$lib/core/index.ts';
import Messages from '$lib/view/components/Messages.svelte';
import MotionControls from '$lib/view/components/MotionControls.svelte';
import SetupSwitch from '$lib/view/components/SetupSwitch.svelte';

const NOTHING = () => undefined;

test('SetupSwitch names every set-up and marks the one in use', () => {
  const { body } = render(SetupSwitch, { props: { setup: 'magic-loop', onSetup: NOTHING } });
  for (const id of SETUP_IDS) expect(body).toContain(SETUPS[id].name);
  expect(body).toMatch(/value="magic-loop"\s+checked/u);
});

test('Messages tells severity, line, sizes, message and remedy in words', () => {
  const { body } = render(Messages, {
    props: {
      diagnostics: [
        {
          severity: 'error',
          code: 'count-mismatch',
          span: { from: 4, to: 9 },
          message: '40 expected, 38 found.',
          remedy: 'Look at the row before.',
          expected: 40,
          found: 38,
          sizes: [1]
        }
      ],
      sizes: ['S', 'M'],
      lineOf: () => 12,
      onGo: NOTHING
    }
  });
  for (const words of ['Mistake, line 12, size M', '40 expected, 38 found.', 'Look at the row before.'])
    expect(body.replace(/<!--.*?-->/gu, '')).toContain(words);
});

test('MotionControls offers two still pictures where motion is not wanted', () => {
  const props = {
    t: 1,
    playing: false,
    speed: 1 as const,
    sentence: 'From here to there.',
    onPlay: NOTHING,
    onStop: NOTHING,
    onSet: NOTHING,
    onStep: NOTHING,
    onSpeed: NOTHING
  };
  const still = render(MotionControls, { props: { ...props, still: true } }).body;
  expect(still).toContain('Before');
  expect(still).not.toContain('range');
  expect(render(MotionControls, { props: { ...props, still: false } }).body).toContain('range');
});
