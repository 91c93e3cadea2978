import { packFetch } from '../kept/pack-files.ts';
import { GatherDesk } from './gather-desk.ts';
import type { GatherRequest } from './gather-messages.ts';
import { messagesDelivered } from './messages-delivered.ts';

const desk = new GatherDesk((reply) => self.postMessage(reply), packFetch, messagesDelivered());

/** What the worker does with a message. */
export function take({ data }: MessageEvent<GatherRequest>): void {
  void desk.take(data);
}
