import { expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '$lib/project/project.ts';
import { Answerer } from '$lib/view/state/answers/answerer.ts';
import { Receiver, Sender } from '$lib/view/state/answers/errand.ts';
import type { Question } from '$lib/view/state/answers/question.ts';

const TEXT = `Test cowl
Sizes: S (L)

BODY
CO 24 (32) sts. Join to work in the rnd; pm for BOR.
Rnds 1-3: *K2, p2; rep from * to end.
Rnd 4: K2tog, k to end. 22 (31) sts.
`;

const QUESTION: Question = {
  text: TEXT,
  size: 0,
  stage: 0,
  row: 0,
  setup: 'dpn-5',
  limits: DEFAULT_LIMITS,
  tried: [],
  held: null,
  mirrored: false
};

test('an answer is plain data: a copy of it says the same', () => {
  const answer = new Answerer().answer(QUESTION);
  expect(structuredClone(answer)).toEqual(answer);
  expect(answer.view?.scene).not.toBeNull();
});

test('a message names its line and the sizes it happens in', () => {
  const { piece } = new Answerer().answer(QUESTION);
  expect(piece.messages.map(({ line, sizes }) => [line, sizes])).toEqual([[7, [0]]]);
});

test('a size, stage or row beyond the last is the last', () => {
  const { piece, view } = new Answerer().answer({ ...QUESTION, size: 9, stage: 9, row: 99 });
  expect([piece.size, view?.stage]).toEqual([1, 0]);
});

test('another choice about the same text leaves the piece as it is, another size does not', () => {
  const answerer = new Answerer();
  const { piece } = answerer.answer(QUESTION);
  expect(answerer.answer({ ...QUESTION, setup: 'magic-loop', row: 2 }).piece).toBe(piece);
  expect(answerer.answer({ ...QUESTION, size: 1 }).piece.counts[0]!.words).toBe('32');
});

test('a held layout is judged without being kept', () => {
  const answerer = new Answerer();
  const held = { breaks: [0, 5, 12, 18] };
  const { view } = answerer.answer({ ...QUESTION, held });
  expect([view?.origin, view?.chosen?.loads]).toEqual(['tried', [5, 7, 6, 6]]);
  expect(view?.unheld.origin).toBe('best');
  expect(answerer.answer(QUESTION).view?.origin).toBe('best');
});

test('a plan that breaks off is said, and the text keeps its messages', () => {
  const held = { breaks: [] };
  const answer = new Answerer().answer({ ...QUESTION, setup: 'no such thing' as 'dpn-5', held });
  expect([answer.broken, answer.view, answer.piece.messages.length]).toEqual([true, null, 1]);
});

test('a text and a piece travel once, and arrive each time', () => {
  const [sender, receiver] = [new Sender(), new Receiver()];
  const first = sender.question(QUESTION);
  const second = sender.question({ ...QUESTION, row: 1 });
  expect([first.text, second.text]).toEqual([TEXT, null]);
  expect(receiver.question(first)).toEqual(QUESTION);
  expect(receiver.question(second)).toEqual({ ...QUESTION, row: 1 });

  const answerer = new Answerer();
  const answers = [QUESTION, { ...QUESTION, row: 1 }].map((question) => answerer.answer(question));
  const sent = answers.map((answer) => sender.answer(answer));
  expect(sent[1]!.piece).toBeNull();
  expect(sent.map((one) => receiver.answer(one))).toEqual(answers);
});
