import { packFetch } from '../kept/pack-files.ts';
import type { LifeRequest } from './life-messages.ts';
import { LifeDesk } from './life-desk.ts';
import { messagesDelivered } from './messages-delivered.ts';

const desk = new LifeDesk(
  (reply) => self.postMessage(reply),
  packFetch,
  messagesDelivered(),
  () => performance.now(),
);

/** What the worker does with a message. */
export function take({ data }: MessageEvent<LifeRequest>): void {
  void desk.take(data);
}
