/** How questions and answers travel: what the other side has already is left out. */

import type { Answer, Piece, Question } from './question.ts';

/** A question on its way; `text` is `null` when it is the text of the question before. */
export interface SentQuestion {
  readonly text: string | null;
  readonly choices: Omit<Question, 'text'>;
}

/** An answer on its way; `piece` is `null` when it is the piece of the answer before. */
export interface SentAnswer {
  readonly piece: Piece | null;
  readonly rest: Omit<Answer, 'piece'>;
}

/** What comes out of the workroom: first that it is open, then answers in the order of the questions. */
export type Sent = 'open' | SentAnswer;

/** Leaves out what was sent before. */
export class Sender {
  #text: string | null = null;
  #piece: Piece | null = null;

  question({ text, ...choices }: Question): SentQuestion {
    const known = text === this.#text;
    this.#text = text;
    return { text: known ? null : text, choices };
  }

  answer({ piece, ...rest }: Answer): SentAnswer {
    const known = piece === this.#piece;
    this.#piece = piece;
    return { piece: known ? null : piece, rest };
  }
}

/** Puts back what was left out. */
export class Receiver {
  #text = '';
  #piece: Piece | null = null;

  question({ text, choices }: SentQuestion): Question {
    this.#text = text ?? this.#text;
    return { ...choices, text: this.#text };
  }

  /** @throws RangeError if the first answer comes without a piece: a bug in the sender. */
  answer({ piece, rest }: SentAnswer): Answer {
    this.#piece = piece ?? this.#piece;
    if (!this.#piece) throw new RangeError('Receiver.answer() got no piece to begin with');
    return { ...rest, piece: this.#piece };
  }
}
