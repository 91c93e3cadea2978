import { AnswerDesk } from './answer-desk.ts';
import { messagesDelivered } from './messages-delivered.ts';
import type { Request } from './messages.ts';

const desk = new AnswerDesk(
  (reply) => self.postMessage(reply),
  (url) => fetch(url),
  messagesDelivered(),
);
self.onmessage = ({ data }: MessageEvent<Request>) => void desk.take(data);
