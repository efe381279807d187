/** Answers every question about the text: reads and knits it, lays it out, draws it. Knows nothing of pages and workers. */

import { DEFAULT_SETTINGS, planWorkpiece, type Plan, type Workpiece } from '$lib/core/index.ts';
import { triedByStage } from '../tried.ts';
import { knitSafely } from './knit-safely.ts';
import { Last } from './last.ts';
import { outlinePiece } from './piece.ts';
import { limitsOf, type Answer, type Piece, type Question } from './question.ts';
import { viewStage } from './stage-view.ts';

/** Remembers the last text and plan, so that a question about the same ones is answered at once. */
export class Answerer {
  readonly #workpiece = new Last<Workpiece>();
  readonly #piece = new Last<Piece>();
  readonly #plan = new Last<Plan>();

  /** Answers a question. Never throws; a piece that has not changed is the same object. */
  answer(question: Question): Answer {
    const workpiece = this.#workpiece.of([question.text], () => knitSafely(question.text));
    const size = Math.min(question.size, workpiece.fabrics.length - 1);
    const piece = this.#piece.of([workpiece, size], () => outlinePiece(workpiece, size));
    try {
      const plan = this.#planOf(question, workpiece, piece);
      const view = viewStage(plan, question.stage, question);
      return { piece, inUse: limitsOf(plan.settings), view, broken: false };
    } catch {
      return { piece, inUse: question.limits, view: null, broken: true };
    }
  }

  #planOf({ setup, limits, tried }: Question, workpiece: Workpiece, { size, stages }: Piece): Plan {
    return this.#plan.of([workpiece, size, setup, JSON.stringify([limits, tried])], () =>
      planWorkpiece(workpiece, {
        setup,
        size,
        settings: { ...DEFAULT_SETTINGS, ...limits },
        tried: triedByStage(tried, stages, { setup, size })
      })
    );
  }
}
