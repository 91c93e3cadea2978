import { packFetch } from '../kept/pack-files.ts';
import { AnswerDesk } from './answer-desk.ts';
import { messagesDelivered } from './messages-delivered.ts';
import type { Request } from './messages.ts';

const desk = new AnswerDesk((reply) => self.postMessage(reply), packFetch, messagesDelivered());

/** What the worker does with a message. */
export function take({ data }: MessageEvent<Request>): void {
  void desk.take(data);
}
