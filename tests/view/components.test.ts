import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { SETUP_IDS, SETUPS } from '$lib/core/index.ts';
import Messages from '$lib/view/components/Messages.svelte';
import MotionControls from '$lib/view/components/MotionControls.svelte';
import SetupSwitch from '$lib/view/components/SetupSwitch.svelte';
import StageSwitch from '$lib/view/components/StageSwitch.svelte';

const NOTHING = () => undefined;

test('SetupSwitch names every set-up and marks the one in use', () => {
  const { body } = render(SetupSwitch, { props: { setup: 'magic-loop', onSetup: NOTHING } });
  for (const id of SETUP_IDS) expect(body).toContain(SETUPS[id].name);
  expect(body).toMatch(/value="magic-loop"\s+checked/u);
});

test('Messages tells severity, line, sizes, message, remedy and what mends it in words', () => {
  const { body } = render(Messages, {
    props: {
      messages: [
        {
          severity: 'error',
          code: 'count-mismatch',
          span: { from: 4, to: 9 },
          message: '40 expected, 38 found.',
          remedy: 'Look at the row before.',
          expected: 40,
          found: 38,
          sizes: [1],
          line: 12,
          fixes: [{ words: 'Print 38', edits: [] }]
        }
      ],
      sizes: ['S', 'M'],
      onGo: NOTHING,
      onMend: NOTHING
    }
  });
  for (const words of ['Mistake, line 12, size M', '40 expected, 38 found.', 'Look at the row before.', 'Print 38'])
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

test('StageSwitch lists the stages around the present one when there are very many', () => {
  const stages = Array.from({ length: 1_000 }, (_, index) => ({
    name: `PART ${index}`,
    line: index,
    flat: false,
    stitches: { entry: 8, start: 8, exit: 8 },
    rows: []
  }));
  const { body } = render(StageSwitch, { props: { stages, known: true, current: 500, onChoose: NOTHING } });
  expect(body).toContain('401 to 600 of 1000');
  expect(body.match(/aria-current="true"[^]*?<span[^>]*>(.*?)<\/span>/u)?.[1]).toContain('PART 500');
  expect(body).not.toContain('PART 399<');
});

test('Messages shows the first of very many, and how many more there are', () => {
  const message = {
    severity: 'note' as const,
    code: 'x',
    span: { from: 0, to: 1 },
    message: 'Look.',
    remedy: null,
    expected: null,
    found: null,
    sizes: [],
    line: 1,
    fixes: []
  };
  const messages = Array.from({ length: 250 }, () => message);
  const { body } = render(Messages, { props: { messages, sizes: [''], onGo: NOTHING, onMend: NOTHING } });
  expect(body.match(/<li/gu)).toHaveLength(100);
  expect(body.replace(/<!--.*?-->/gu, '')).toContain('Show 100 of 150 more');
});
