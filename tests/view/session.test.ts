import { expect, test } from 'vitest';
import { parseProject, printProject } from '$lib/project/project.ts';
import { Session } from '$lib/view/state/session.svelte.ts';
import { AtOnce, Later } from './answers.ts';

const TEXT = `Test cowl
Sizes: S (L)

BODY
CO 24 (32) sts. Join to work in the rnd; pm for BOR.
Rnds 1-3: K.

EDGE
Rnd 1: P.
`;

function opened(text = TEXT): Session {
  const session = new Session(new AtOnce());
  session.open(text);
  return session;
}

test('a session opens at the first stage, row and size', () => {
  const session = opened();
  expect(session.view?.name).toBe('BODY');
  expect(session.view?.scene?.loads.reduce((sum, load) => sum + load)).toBe(24);
});

test('a size that the text no longer has falls back to the last', () => {
  const session = opened();
  session.chooseSize(1);
  expect(session.piece.sizes[session.size]).toBe('L');
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
  const { breaks } = session.view!.chosen!.layout;
  session.hold({ breaks: breaks.with(1, breaks[1]! + 1) });
  expect(session.view?.origin).toBe('tried');
  expect(session.tried).toEqual([]);
  session.tryLayout(session.held!);
  expect(session.held).toBeNull();
  expect(session.view?.chosen?.layout.breaks[1]).toBe(breaks[1]! + 1);
  session.forgetTried();
  expect(session.view?.origin).toBe('best');
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
  const again = new Session(new AtOnce());
  if (outcome.kind === 'project') again.adopt(outcome.project);
  expect(again.project).toEqual(session.project);
  expect(again.piece.title).toBe('Test cowl');
});

test.each(['', '   \n\n', '((((', 'CUFF\n'.repeat(50), '\u0000\uFFFF', '9'.repeat(5000)])(
  'a session survives the text %j',
  (text) => {
    const session = opened(text);
    expect(() => [session.view, session.piece]).not.toThrow();
  }
);

test('followLine() goes to the stage and row of a line', () => {
  const session = opened();
  session.followLine(9);
  expect(session.view?.name).toBe('EDGE');
  session.followLine(2);
  expect(session.view?.name).toBe('EDGE');
});

test('the last answer stays in view until the next one is there', () => {
  const answers = new Later();
  const session = new Session(answers);
  session.open(TEXT);
  answers.answer();
  session.chooseStage(1);
  expect([session.stage, session.view?.name]).toEqual([1, 'BODY']);
  answers.answer();
  expect(session.view?.name).toBe('EDGE');
});

test('a choice while a text is typed asks about the text that was knitted last', () => {
  const answers = new Later();
  const session = new Session(answers);
  session.open(TEXT);
  session.write('Other');
  session.chooseRow(1);
  expect(answers.asked.map(({ text }) => text)).toEqual([TEXT, TEXT]);
  session.settle();
  expect(answers.asked.at(-1)?.text).toBe('Other');
});

test('settled() waits for the answer to the last question', async () => {
  const answers = new Later();
  const session = new Session(answers);
  session.open(TEXT);
  session.open('Other');
  let settled = false;
  const waiting = session.settled().then(() => (settled = true));
  answers.answer();
  await Promise.resolve();
  expect(settled).toBe(false);
  answers.answer();
  await waiting;
  expect(session.piece.title).toBe('Other');
});

test('a question without an answer keeps the text and says so, and can be asked again', async () => {
  const answers = new Later();
  const session = new Session(answers);
  session.open(TEXT);
  answers.answer();
  session.chooseStage(1);
  answers.breakOff();
  await session.settled();
  expect([session.broken, session.view, session.text, session.piece.title]).toEqual([true, null, TEXT, 'Test cowl']);
  session.askAgain();
  answers.answer();
  expect([session.broken, session.view?.name]).toEqual([false, 'EDGE']);
});

test('what is done to a layout is done to the stage that is seen, not to the one asked for', () => {
  const answers = new Later();
  const session = new Session(answers);
  session.open(TEXT);
  answers.answer();
  const { breaks } = session.view!.chosen!.layout;
  session.chooseStage(1);
  session.tryLayout({ breaks: breaks.with(1, breaks[1]! + 1) });
  expect(session.tried.map(({ stage }) => stage)).toEqual(['BODY']);
});

test('a layout that goes back to the best one after another was tried is taken', () => {
  const answers = new Later();
  const session = new Session(answers);
  session.open(TEXT);
  answers.answer();
  const { layout } = session.view!.chosen!;
  session.tryLayout({ breaks: layout.breaks.with(1, layout.breaks[1]! + 1) });
  session.tryLayout(layout);
  expect(session.layout).toEqual(layout);
  answers.answer();
  answers.answer();
  expect(session.layout).toEqual(layout);
});

test('the cursor in a line that repeats rows goes to the first of them', () => {
  const session = opened(TEXT.replace('Rnds 1-3: K.', 'Rnd 1: K.\nRnd 2: P.\nRep rnds 1 and 2 twice more.'));
  session.followLine(8);
  expect([session.stage, session.row]).toEqual([0, 2]);
  session.followLine(11);
  expect([session.stage, session.row]).toEqual([1, 0]);
});
