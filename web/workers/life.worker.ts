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
self.onmessage = ({ data }: MessageEvent<LifeRequest>) => void desk.take(data);
