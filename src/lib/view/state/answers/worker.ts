/** The workroom's own thread: one question in, one answer out. */

import { Answerer } from './answerer.ts';
import { Receiver, Sender, type Sent, type SentQuestion } from './errand.ts';

/** The part of a worker's scope that is used. */
interface Scope {
  onmessage: ((event: MessageEvent<SentQuestion>) => void) | null;
  postMessage(sent: Sent): void;
}

const scope = globalThis as unknown as Scope;
const answerer = new Answerer();
const [receiver, sender] = [new Receiver(), new Sender()];

scope.onmessage = ({ data }) => {
  scope.postMessage(sender.answer(answerer.answer(receiver.question(data))));
};
scope.postMessage('open');
