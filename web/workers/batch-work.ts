import { packFetch } from '../kept/pack-files.ts';
import { BatchDesk } from './batch-desk.ts';
import type { BatchRequest } from './batch-messages.ts';

const desk = new BatchDesk((reply) => self.postMessage(reply), packFetch);

/** What the worker does with a message. */
export function take({ data }: MessageEvent<BatchRequest>): void {
  void desk.take(data);
}
