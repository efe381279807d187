/**
 * What it takes to bring stitches from one arrangement on the needles to another, found by trying everything. Slow on
 * purpose and written from the rules of the hands alone, apart from the solver that it checks: rings up to a dozen stitches.
 *
 * A needle that holds gap 0 is one needle at rest; at the start of a round it lies on two sticks, which meet at the BOR.
 */

/** What is asked: gaps count from the BOR, breaks ascend, and the stitches between two neighbouring breaks share a needle. */
export interface Transfer {
  readonly stitches: number;
  /** The breaks now. */
  readonly from: readonly number[];
  /** The breaks wanted. */
  readonly to: readonly number[];
  /** Sticks in all, those without stitches among them. */
  readonly needles: number;
  /** Most stitches that one stick holds at any time. */
  readonly capacity: number;
}

/** How much is slipped: stitches first, then the times that some are slipped together. */
export interface Effort {
  readonly slips: number;
  readonly moves: number;
}

interface Arrangement extends Effort {
  readonly breaks: readonly number[];
}

/** The least effort with nothing knitted; null when the needles cannot do it. */
export function fewestSlipsAtRest(question: Transfer): Effort | null {
  return least(arrangements(question).filter(({ breaks }) => isSame(breaks, question.to)));
}

/** The least effort when one round is knitted after the slipping, with other needle ends; null when it cannot be. */
export function fewestSlipsThenWorking(question: Transfer): Effort | null {
  return least(arrangements(question).filter(({ breaks }) => isWorkable(breaks, question)));
}

/** The price of a plan, and which choice it takes in each stage. */
export interface Plan {
  readonly total: number;
  readonly choices: readonly number[];
}

/**
 * The cheapest plan, every choice of a stage compared with every choice of the next; among equally cheap ones the first in
 * the order of their indices. Null when each plan meets an infinite price.
 *
 * @param prices - What each choice costs, by stage.
 * @param transfer - What the change into `stage` (1 and up) costs, from a choice of the stage before to one of its own.
 */
export function allPairsPlan(
  prices: readonly (readonly number[])[],
  transfer: (stage: number, from: number, to: number) => number
): Plan | null {
  // Told backwards: what each choice of a stage costs with the best of all that follows. Read forwards, the first cheapest
  // choice each time, so that the plan is the first of its equals.
  const onwards: number[][] = [];
  for (const [stage, row] of [...prices.entries()].reverse()) {
    const next = onwards[0] ?? [0];
    const change = (from: number, to: number) => (stage + 1 < prices.length ? transfer(stage + 1, from, to) : 0);
    onwards.unshift(row.map((price, from) => price + Math.min(...next.map((rest, to) => change(from, to) + rest))));
  }
  const choices: number[] = [];
  for (const [stage, row] of onwards.entries()) {
    const totals = row.map((rest, to) => (stage > 0 ? transfer(stage, choices.at(-1)!, to) : 0) + rest);
    choices.push(totals.indexOf(Math.min(...totals)));
  }
  const total = Math.min(...(onwards[0] ?? [0]));
  return total === Infinity ? null : { total, choices };
}

/** Every arrangement that slipping leads to, each with its least effort: the shortest ways from `from`, nearest first. */
function arrangements(question: Transfer): Arrangement[] {
  const open = new Map<string, Arrangement>();
  const done = new Map<string, Arrangement>();
  if (isHeld(question.from, question)) open.set(String(question.from), { breaks: question.from, slips: 0, moves: 0 });
  while (open.size > 0) {
    const nearest = [...open.values()].reduce((best, other) => (isLess(other, best) ? other : best));
    open.delete(String(nearest.breaks));
    done.set(String(nearest.breaks), nearest);
    for (const next of slipsFrom(nearest, question)) {
      const name = String(next.breaks);
      const known = open.get(name);
      if (!done.has(name) && (!known || isLess(next, known))) open.set(name, next);
    }
  }
  return [...done.values()];
}

/** What one slip of any number of stitches from either end of any needle leads to. */
function slipsFrom({ breaks, slips, moves }: Arrangement, question: Transfer): Arrangement[] {
  const { stitches } = question;
  const found = breaks.flatMap((start, needle) => {
    const end = breaks[(needle + 1) % breaks.length]!;
    const counts = Array.from({ length: lengthOf(start, end, stitches) }, (_, index) => index + 1);
    return counts.flatMap((count) =>
      [toNeighbour(breaks, start, start + count), toNeighbour(breaks, end, end - count)]
        // On to an empty stick: a break more. (All the stitches on another stick would be no change.)
        .concat(count < counts.length ? [breaks.concat(start + count), breaks.concat(end - count)] : [])
        .map((gaps) => ({ breaks: ring(gaps, stitches), slips: slips + count, moves: moves + 1 }))
    );
  });
  return found.filter((next) => isHeld(next.breaks, question));
}

/**
 * The break moves past the stitches that the neighbour takes; past all of them, it falls together with the next. A lone
 * needle has no neighbour, and its break stays.
 */
function toNeighbour(breaks: readonly number[], gap: number, now: number): number[] {
  return breaks.map((other) => (other === gap && breaks.length > 1 ? now : other));
}

/**
 * Whether a round knitted from this arrangement leaves the wanted breaks. Every change of the working stick begins a needle,
 * so it changes at the wanted breaks and nowhere else; only gap 0 leaves a choice, because the stick that worked last
 * can go on there, or a free one begins. A needle that is to hold gap 0 is the one that goes on.
 */
function isWorkable(breaks: readonly number[], question: Transfer): boolean {
  return canKnit(breaks, question, true) || (question.to.includes(0) && canKnit(breaks, question, false));
}

/** What lies on a stick while the round is knitted: stitches of the round before, and stitches of this one. */
interface Stick {
  old: number;
  fresh: number;
}

function canKnit(breaks: readonly number[], { stitches, to, needles, capacity }: Transfer, goesOn: boolean): boolean {
  const cuts = ring([0, ...breaks], stitches);
  if (cuts.length > needles) return false;
  const sticks = Array.from({ length: needles }, (_, index): Stick => {
    const [from, end] = [cuts[index] ?? stitches, cuts[index + 1] ?? stitches];
    return { old: end - from, fresh: 0 };
  });
  let working = goesOn ? sticks[cuts.length - 1] : undefined;
  for (let at = 0; at < stitches; at += 1) {
    if (to.includes(at) && !(at === 0 && goesOn)) working = sticks.find(({ old, fresh }) => old + fresh === 0);
    const feeding = sticks.find(({ old }) => old > 0)!;
    // A stick cannot knit its own stitches on to itself.
    if (!working || working === feeding) return false;
    feeding.old -= 1;
    working.fresh += 1;
    if (working.old + working.fresh > capacity) return false;
  }
  return true;
}

/** Whether there are sticks enough, and none holds too much. */
function isHeld(breaks: readonly number[], { stitches, needles, capacity }: Transfer): boolean {
  const loads = breaks.map((start, index) => lengthOf(start, breaks[(index + 1) % breaks.length]!, stitches));
  return breaks.length <= needles && loads.every((load) => load <= capacity);
}

/** Stitches from one gap on to another; from a gap to itself lies the whole ring. */
function lengthOf(start: number, end: number, stitches: number): number {
  return end > start ? end - start : end - start + stitches;
}

/** Gaps counted from the BOR, each once, ascending. */
function ring(gaps: readonly number[], stitches: number): number[] {
  return [...new Set(gaps.map((gap) => (gap + stitches) % stitches))].sort((left, right) => left - right);
}

function least(found: readonly Arrangement[]): Effort | null {
  const [first, ...others] = found;
  if (!first) return null;
  const { slips, moves } = others.reduce((best, other) => (isLess(other, best) ? other : best), first);
  return { slips, moves };
}

function isLess(left: Effort, right: Effort): boolean {
  return left.slips < right.slips || (left.slips === right.slips && left.moves < right.moves);
}

function isSame(left: readonly number[], right: readonly number[]): boolean {
  return String(left) === String(right);
}
