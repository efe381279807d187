/** Who answers a session's questions in its tests. */

import { Answerer } from '$lib/view/state/answers/answerer.ts';
import type { Question } from '$lib/view/state/answers/question.ts';
import type { Answers, Tell } from '$lib/view/state/workroom.svelte.ts';

/** Answers while it is asked. */
export class AtOnce implements Answers {
  readonly rest = 0;
  readonly #answerer = new Answerer();
  #tell: Tell = () => undefined;

  listen(tell: Tell): void {
    this.#tell = tell;
  }

  ask(question: Question): void {
    this.#tell(this.#answerer.answer(question), question);
  }
}

/** Answers when it is told to. */
export class Later implements Answers {
  readonly rest = 0;
  readonly asked: Question[] = [];
  readonly #answerer = new Answerer();
  #tell: Tell = () => undefined;

  listen(tell: Tell): void {
    this.#tell = tell;
  }

  ask(question: Question): void {
    this.asked.push(question);
  }

  /** Answers the first question that is still open. */
  answer(): void {
    const question = this.asked.shift()!;
    this.#tell(this.#answerer.answer(question), question);
  }

  /** Lets the first question that is still open go without an answer. */
  breakOff(): void {
    this.#tell(null, this.asked.shift()!);
  }
}
