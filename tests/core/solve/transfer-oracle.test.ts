/** The searches that the planning of moves is checked against, themselves checked against counts made by hand. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  allPairsPlan,
  fewestSlipsAtRest,
  fewestSlipsThenWorking,
  type Transfer
} from '../../support/oracles/transfers.ts';
import { arrangementsOf, loadsOf } from '../../support/rings.ts';

/** `12: 0 4 8 > 0 6 9`, so many needles, so many stitches at most on one. */
function ask(text: string, needles: number, capacity: number): Transfer {
  const [stitches, from, to] = text.split(/[:>]/u).map((part) => part.trim().split(' ').map(Number));
  return { stitches: stitches![0]!, from: from!, to: to!, needles, capacity };
}

const atRest = (text: string, needles: number, capacity: number) => fewestSlipsAtRest(ask(text, needles, capacity));
const working = (text: string, needles: number, capacity: number) =>
  fewestSlipsThenWorking(ask(text, needles, capacity));

const FREE = { slips: 0, moves: 0 };

describe('fewestSlipsAtRest()', () => {
  test('asks nothing where the breaks are right, if they can be held', () => {
    expect(atRest('12: 0 4 8 > 0 4 8', 3, 4)).toEqual(FREE);
    expect(atRest('12: 0 4 8 > 0 4 8', 2, 12)).toBeNull(); // three needles hold, and there are two
    expect(atRest('12: 0 4 8 > 0 4 8', 3, 3)).toBeNull(); // four stitches lie where three have room
  });

  test('slides from needle to needle', () => {
    // 4/4/4 to 6/3/3, a fifth of 20/20/20 to 30/15/15: two from the second to the first, then one from the third to the
    // second. The first needle gains two and the third loses one, and no stitch is in both.
    expect(atRest('12: 0 4 8 > 0 6 9', 3, 6)).toEqual({ slips: 3, moves: 2 });
    // A spare needle helps no further: the stitches that leave are the same.
    expect(atRest('12: 0 4 8 > 0 6 9', 4, 6)).toEqual({ slips: 3, moves: 2 });
    // 3/3/3/3 to 3/4/2/3: one stitch from the third to the second.
    expect(atRest('12: 0 3 6 9 > 0 3 7 9', 4, 4)).toEqual({ slips: 1, moves: 1 });
    // Both ends of both needles move on by one, one of them past the BOR.
    expect(atRest('8: 0 4 > 1 5', 2, 5)).toEqual({ slips: 2, moves: 2 });
    expect(atRest('8: 0 4 > 3 7', 2, 5)).toEqual({ slips: 2, moves: 2 });
  });

  test('empties a needle and begins it elsewhere where that is less', () => {
    // 1/4/5 to 5/4/1: the lone stitch joins the four, and the last of the five goes on to a stick of its own. Moving both
    // breaks over the four would take eight. Without a spare it is the same: the emptied stick is the one that is begun.
    expect(atRest('10: 0 1 5 > 0 5 9', 4, 5)).toEqual({ slips: 2, moves: 2 });
    expect(atRest('10: 0 1 5 > 0 5 9', 3, 5)).toEqual({ slips: 2, moves: 2 });
  });

  test('takes a needle away, or puts one in between', () => {
    // 3/3/3 to 6/3: the middle one on to its neighbour, at once, if the neighbour has room for six.
    expect(atRest('9: 0 3 6 > 0 6', 3, 6)).toEqual({ slips: 3, moves: 1 });
    expect(atRest('9: 0 3 6 > 0 6', 3, 5)).toBeNull();
    // 4/4 to 2/2/4: two on to an empty stick, if there is one.
    expect(atRest('8: 0 4 > 0 2 4', 3, 4)).toEqual({ slips: 2, moves: 1 });
    expect(atRest('8: 0 4 > 0 2 4', 2, 8)).toBeNull();
    // A needle's middle is reached from an end only: 6/2 to 2/2/2/2 is four stitches off in one go, then two of them on.
    expect(atRest('8: 0 6 > 0 2 4 6', 4, 6)).toEqual({ slips: 4, moves: 2 });
  });

  test('turns full needles only with one to spare', () => {
    // 3/3 to 3/3, one further. Both are full, so no first stitch has room; with a third stick it waits there. Fewer than
    // three slips cannot do: the first one fills the third stick, which has to be emptied again (the same stitch slipped
    // twice, and the other one that changes needles) or needs another stick emptied, which then holds two at least.
    expect(atRest('6: 0 3 > 1 4', 2, 3)).toBeNull();
    expect(atRest('6: 0 3 > 1 4', 3, 3)).toEqual({ slips: 3, moves: 3 });
  });

  test('leaves a lone needle without a neighbour', () => {
    // One needle has no other to slip to: the ring cannot turn on it, but with a second stick its stitches can part.
    expect(atRest('4: 0 > 1', 1, 4)).toBeNull();
    expect(atRest('4: 0 > 0 1', 2, 4)).toEqual({ slips: 1, moves: 1 });
    // Round by way of the second stick: the first stitch goes there, and from there on to the far end of the others.
    expect(atRest('4: 0 > 1', 2, 4)).toEqual({ slips: 2, moves: 2 });
  });

  test('costs the same there and back, turned, and mirrored', () => {
    // Every slip can be taken back at its price, and at rest no gap is better than another.
    fc.assert(
      fc.property(questions(7, 3), fc.nat(6), (question, turn) => {
        const turned = (gaps: readonly number[]) => gaps.map((gap) => (gap + turn) % 7).sort((a, b) => a - b);
        const mirrored = (gaps: readonly number[]) => gaps.map((gap) => (7 - gap) % 7).sort((a, b) => a - b);
        const { from, to } = question;
        const effort = fewestSlipsAtRest(question);
        expect(fewestSlipsAtRest({ ...question, from: to, to: from })).toEqual(effort);
        expect(fewestSlipsAtRest({ ...question, from: turned(from), to: turned(to) })).toEqual(effort);
        expect(fewestSlipsAtRest({ ...question, from: mirrored(from), to: mirrored(to) })).toEqual(effort);
      }),
      { seed: 31, numRuns: 60 }
    );
  });
});

describe('fewestSlipsThenWorking()', () => {
  test('knits later breaks for nothing with a needle to spare', () => {
    // 4/4/4 to 6/3/3: the spare takes six, the first old needle (empty since four) three, the second the last three.
    expect(working('12: 0 4 8 > 0 6 9', 4, 6)).toEqual(FREE);
  });

  test('goes on with the stick that worked last where that has room', () => {
    // No spare, so the last needle goes on: its four and six new ones. At six the first old needle is free.
    expect(working('12: 0 4 8 > 0 6 9', 3, 10)).toEqual(FREE);
    // Room for nine: one stitch of the last needle goes to the one before. 3 + 6 = 9, and the second is free at nine.
    expect(working('12: 0 4 8 > 0 6 9', 3, 9)).toEqual({ slips: 1, moves: 1 });
    // Room for six: an old stitch on the last needle is one too many, so a free stick would have to begin. Then two
    // needles hold twelve at the start, six each, and at nine the first round stick, the second and the old six hold all.
    expect(working('12: 0 4 8 > 0 6 9', 3, 6)).toBeNull();
  });

  test('slips for an earlier break unless another needle is free', () => {
    // 6/6 to 4/8. At four the old first needle still holds two, so the needle of the eight has to come from elsewhere.
    // A second spare: nothing to slip.
    expect(working('12: 0 6 > 0 4', 4, 8)).toEqual(FREE);
    // One spare, but the last needle goes on for four (6 + 4 = 10): the spare begins at four.
    expect(working('12: 0 6 > 0 4', 3, 10)).toEqual(FREE);
    // Room for eight: two stitches, off the first needle so that it is empty at four, or off the last so that it can go
    // on (4 + 4). One does neither.
    expect(working('12: 0 6 > 0 4', 3, 8)).toEqual({ slips: 2, moves: 1 });
    // No spare: the last needle must go on and the first be empty at four, 8 + 4 on one stick.
    expect(working('12: 0 6 > 0 4', 2, 12)).toEqual({ slips: 2, moves: 1 });
    expect(working('12: 0 6 > 0 4', 2, 11)).toBeNull();
  });

  test('counts the needles that are still full at a break', () => {
    // 3/3/3/3 to 3/3/2/4, a spare. Begun on the spare, eight comes before the third old needle is empty at nine: one slip.
    // If the last needle goes on (3 + 3 = 6), the spare is still there at eight.
    expect(working('12: 0 3 6 9 > 0 3 6 8', 5, 6)).toEqual(FREE);
    expect(working('12: 0 3 6 9 > 0 3 6 8', 5, 5)).toEqual({ slips: 1, moves: 1 });
  });

  test('works round and round with the BOR in the middle of a needle', () => {
    // 3/3/3, the third one round the BOR: at the start it lies on two sticks, two stitches before the BOR and one behind.
    // The last stick goes on for one, the emptied one takes three, and so on; four sticks hold the worked round.
    expect(working('9: 1 4 7 > 1 4 7', 4, 3)).toEqual(FREE);
    // Three sticks cannot hold the four pieces 1, 3, 3 and 2.
    expect(working('9: 1 4 7 > 1 4 7', 3, 9)).toBeNull();
  });

  test('moves the BOR into a needle, and out of it', () => {
    // 4/4 to one needle of 2 + 2 round the BOR and one of four: the last needle goes on for two (4 + 2 = 6), the spare
    // takes four, the old first needle the last two.
    expect(working('8: 0 4 > 2 6', 3, 6)).toEqual(FREE);
    // Room for five: one stitch off the last needle before it goes on.
    expect(working('8: 0 4 > 2 6', 3, 5)).toEqual({ slips: 1, moves: 1 });
    // Room for four, and two sticks free: a needle round the BOR is one that goes on there, so beginning a free stick at
    // the BOR is another layout. The last needle is full; its last stitch gets a free stick, which then goes on.
    expect(working('8: 0 4 > 2 6', 4, 4)).toEqual({ slips: 1, moves: 1 });
    // Back: three sticks hold at the start, so the last one goes on for four, 2 + 4 = 6; the first one is free for the rest.
    expect(working('8: 2 6 > 0 4', 3, 6)).toEqual(FREE);
    expect(working('8: 2 6 > 0 4', 3, 5)).toEqual({ slips: 1, moves: 1 });
    // A fourth stick begins at the BOR instead, and holds four.
    expect(working('8: 2 6 > 0 4', 4, 4)).toEqual(FREE);
    // Without a third stick the two halves of the needle round the BOR cannot part, so one end of it has to come to the
    // BOR first; the last needle then goes on for four, and the first has to be empty by then. That is 4/4 at the start,
    // two breaks moved by two, with eight on the stick that goes on.
    expect(working('8: 2 6 > 0 4', 2, 8)).toEqual({ slips: 4, moves: 2 });
    expect(working('8: 2 6 > 0 4', 2, 7)).toBeNull();
  });

  test('needs a second stick to knit with', () => {
    expect(working('4: 0 > 0', 2, 4)).toEqual(FREE);
    expect(working('4: 0 > 0', 1, 4)).toBeNull();
  });

  test('refuses a needle that holds too much at the end', () => {
    expect(working('8: 0 4 > 0 6', 4, 5)).toBeNull();
  });

  test('is free exactly where counting the free sticks says so', () => {
    // Begun on a free stick, the needles of j + 1 breaks need j + 1 sticks at the j-th, and those of the old needles that
    // still hold (solver.md 7). The stick that goes on saves one if it has room for its old stitches and the new.
    for (const question of anchored(7)) {
      const { from, to, stitches, needles, capacity } = question;
      const loads = loadsOf(from, stitches);
      const wanted = loadsOf(to, stitches);
      const isFreeWith = (spare: number) =>
        to.every((gap, index) => index + 1 - spare < 1 || gap >= (from[index + 1 - spare] ?? stitches));
      const spare = needles - from.length;
      const begins = spare > 0 && isFreeWith(spare);
      const goesOn = loads.at(-1)! + wanted[0]! <= capacity && isFreeWith(spare + 1);
      expect([question, equalsFree(question)]).toEqual([question, begins || goesOn]);
    }
  });
});

function equalsFree(question: Transfer): boolean {
  const effort = fewestSlipsThenWorking(question);
  return effort?.slips === 0 && effort.moves === 0;
}

/** All pairs of needles that both end at the BOR, with and without a spare, with little and with much room. */
function anchored(stitches: number): Transfer[] {
  return [2, 3].flatMap((count) => {
    const all = arrangementsOf(stitches, count).filter(([first]) => first === 0);
    return all.flatMap((from) =>
      all.flatMap((to) => {
        const most = Math.max(...loadsOf(from, stitches), ...loadsOf(to, stitches));
        return [count, count + 1].flatMap((needles) =>
          [...new Set([most, stitches - 1])].map((capacity) => ({ stitches, from, to, needles, capacity }))
        );
      })
    );
  });
}

/** Rings of so many stitches on so many needles, with or without a spare. */
function questions(stitches: number, count: number): fc.Arbitrary<Transfer> {
  const layouts = fc.constantFrom(...arrangementsOf(stitches, count));
  return fc
    .record({ from: layouts, to: layouts, spare: fc.nat(1), room: fc.nat(2) })
    .map(({ from, to, spare, room }) => ({
      ...{ stitches, from, to, needles: count + spare },
      capacity: Math.max(...loadsOf(from, stitches), ...loadsOf(to, stitches)) + room
    }));
}

describe('allPairsPlan()', () => {
  const steps = (_stage: number, from: number, to: number) => 2 * Math.abs(from - to);

  test('weighs a dearer stage against the moves', () => {
    // 0 0: 1 + 0; 1 0: 0 + 2 + 0; 1 1: 0 + 3; 0 1: 1 + 2 + 3. The cheapest of each stage alone, 1 0, costs two.
    expect(allPairsPlan(sums('1 0 / 0 3'), steps)).toEqual({ total: 1, choices: [0, 0] });
    // Stay on 1 (0 + 1 + 0) rather than go for the free 0 in between (0 + 2 + 0 + 2 + 0).
    expect(allPairsPlan(sums('9 0 / 0 1 / 9 0'), steps)).toEqual({ total: 1, choices: [1, 1, 1] });
  });

  test('takes the first of its equals by index', () => {
    expect(allPairsPlan(sums('0 0 / 0 0 / 0 0'), () => 0)).toEqual({ total: 0, choices: [0, 0, 0] });
    // To change is free and to stay is not: 0 1 and 1 0 are equal.
    expect(allPairsPlan(sums('0 0 / 0 0'), (_stage, from, to) => (from === to ? 1 : 0))).toEqual({
      ...{ total: 0, choices: [0, 1] }
    });
  });

  test('tells the transfer which stage is entered', () => {
    // The change into stage 1 is dear, the one into stage 2 is not.
    const change = (stage: number, from: number, to: number) => (from === to ? 0 : { 1: 9, 2: 1 }[stage]!);
    expect(allPairsPlan(sums('0 0 / 0 5 / 5 0'), change)).toEqual({ total: 1, choices: [0, 0, 1] });
  });

  test('says so when there is no way', () => {
    expect(allPairsPlan(sums('0 / 0'), () => Infinity)).toBeNull();
    expect(allPairsPlan([[0], []], () => 0)).toBeNull();
    expect(allPairsPlan([[4, 2]], steps)).toEqual({ total: 2, choices: [1] });
    expect(allPairsPlan([], steps)).toEqual({ total: 0, choices: [] });
  });

  test('agrees with a list of all plans', () => {
    const price = fc.constantFrom(0, 1, 2, 3, Infinity);
    const table = fc.array(fc.array(price, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(table, fc.array(price, { minLength: 36, maxLength: 36 }), (prices, changes) => {
        const transfer = (stage: number, from: number, to: number) => changes[(stage - 1) * 9 + from * 3 + to]!;
        const plans = lists(prices.length).map((choices) => ({ total: totalOf(choices, prices, transfer), choices }));
        const best = plans.reduce((first, other) => (other.total < first.total ? other : first));
        expect(allPairsPlan(prices, transfer)).toEqual(best.total === Infinity ? null : best);
      }),
      { seed: 32, numRuns: 300 }
    );
  });
});

function sums(text: string): number[][] {
  return text.split(' / ').map((row) => row.split(' ').map(Number));
}

/** All lists of so many choices among three, in the order of their indices. */
function lists(length: number): number[][] {
  return length === 0 ? [[]] : lists(length - 1).flatMap((list) => [0, 1, 2].map((choice) => [...list, choice]));
}

function totalOf(
  choices: readonly number[],
  prices: readonly (readonly number[])[],
  transfer: (stage: number, from: number, to: number) => number
): number {
  return choices.reduce(
    (sum, choice, stage) =>
      sum + prices[stage]![choice]! + (stage > 0 ? transfer(stage, choices[stage - 1]!, choice) : 0),
    0
  );
}
