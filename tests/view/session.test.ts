import { expect, test } from 'vitest';
import { parseProject, printProject } from '$lib/project/project.ts';
import { Session } from '$lib/view/state/session.svelte.ts';

const TEXT = `Test cowl
Sizes: S (L)

BODY
CO 24 (32) sts. Join to work in the rnd; pm for BOR.
Rnds 1-3: K.

EDGE
Rnd 1: P.
`;

function opened(text = TEXT): Session {
  const session = new Session();
  session.open(text);
  return session;
}

test('a session opens at the first stage, row and size', () => {
  const session = opened();
  expect(session.stagePlan?.stage.name).toBe('BODY');
  expect(session.moment?.needles.reduce((sum, needle) => sum + needle.stitches.length, 0)).toBe(24);
});

test('a size that the text no longer has falls back to the last', () => {
  const session = opened();
  session.chooseSize(1);
  expect(session.fabric.size).toBe('L');
  session.write(TEXT.replace(' (L)', '').replace(' (32)', ''));
  session.settle();
  expect(session.size).toBe(0);
});

test('a row stays within its stage', () => {
  const session = opened();
  session.chooseRow(99);
  expect(session.row).toBe(3);
  session.chooseStage(1);
  expect(session.row).toBe(0);
});

test('a held layout is seen at once and kept only when it is let go', () => {
  const session = opened();
  const { breaks } = session.stagePlan!.chosen!.layout;
  session.held = { breaks: breaks.with(1, breaks[1]! + 1) };
  expect(session.stagePlan?.origin).toBe('tried');
  expect(session.tried).toEqual([]);
  session.tryLayout(session.held);
  expect(session.held).toBeNull();
  expect(session.stagePlan?.chosen?.layout.breaks[1]).toBe(breaks[1]! + 1);
  session.forgetTried();
  expect(session.stagePlan?.origin).toBe('best');
});

test('opening another text keeps the one before', () => {
  const session = opened();
  session.open('Other');
  expect(session.former).toBe(TEXT);
  session.swapFormer();
  expect(session.text).toBe(TEXT);
  expect(session.former).toBe('Other');
});

test('a project brings back the whole session', () => {
  const session = opened();
  session.chooseSize(1);
  session.chooseSetup('two-circulars');
  session.chooseStage(1);
  session.chooseRow(1);
  const outcome = parseProject(printProject(session.project));
  const again = new Session();
  if (outcome.kind === 'project') again.adopt(outcome.project);
  expect(again.project).toEqual(session.project);
  expect(again.title).toBe('Test cowl');
});

test.each(['', '   \n\n', '((((', 'CUFF\n'.repeat(50), '\u0000\uFFFF', '9'.repeat(5000)])(
  'a session survives the text %j',
  (text) => {
    const session = opened(text);
    expect(() => [session.plan, session.moment, session.stagePlan, session.title]).not.toThrow();
  }
);

test('followLine() goes to the stage and row of a line', () => {
  const session = opened();
  session.followLine(9);
  expect(session.stagePlan?.stage.name).toBe('EDGE');
  session.followLine(2);
  expect(session.stagePlan?.stage.name).toBe('EDGE');
});
