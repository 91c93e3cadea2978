import { AnswerDesk } from './answer-desk.ts';
import type { Request } from './messages.ts';

/** A turn of the event loop that waits for no timer: a message to ourselves queues behind those already waiting. */
const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();
function pause(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve);
    channel.port2.postMessage(null);
  });
}

const desk = new AnswerDesk(
  (reply) => self.postMessage(reply),
  (url) => fetch(url),
  pause,
);
self.onmessage = ({ data }: MessageEvent<Request>) => void desk.take(data);
