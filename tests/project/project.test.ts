import { expect, test } from 'vitest';
import { DEFAULT_LIMITS, parseProject, printProject, type Project } from '$lib/project/project.ts';

const PROJECT: Project = {
  text: 'Pier End mitten',
  former: null,
  size: 1,
  setup: 'magic-loop',
  stage: 2,
  row: 7,
  limits: DEFAULT_LIMITS,
  tried: [{ size: 1, setup: 'magic-loop', stage: 'CUFF', nth: 0, stitches: 44, breaks: [0, 24] }]
};

test('parseProject() gives back what printProject() wrote', () => {
  expect(parseProject(printProject(PROJECT))).toEqual({ kind: 'project', project: PROJECT });
});

test('printProject() of a project that was read writes the same text', () => {
  const json = printProject(PROJECT);
  const outcome = parseProject(json);
  expect(outcome.kind === 'project' && printProject(outcome.project)).toBe(json);
});

test('parseProject() refuses another version', () => {
  const json = JSON.stringify({ ...JSON.parse(printProject(PROJECT)), version: 2 });
  expect(parseProject(json)).toEqual({ kind: 'other-version' });
});

test.each([
  ['no JSON', '{'],
  ['null', 'null'],
  ['a list', '[]'],
  ['a missing text', '{"roundsplit":"project","version":1}'],
  ['an unknown set-up', printProject({ ...PROJECT, setup: 'chopsticks' as 'dpn-5' })],
  ['a negative size', printProject({ ...PROJECT, size: -1 })],
  ['a length of nothing', printProject({ ...PROJECT, limits: { ...DEFAULT_LIMITS, stitchesPer10cm: 0 } })],
  ['too long a text', printProject({ ...PROJECT, text: 'k'.repeat(1_000_001) })]
])('parseProject() refuses %s', (_, json) => {
  expect(parseProject(json)).toEqual({ kind: 'unreadable' });
});
