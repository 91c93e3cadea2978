import { packFetch } from '../kept/pack-files.ts';
import { AnswerDesk } from './answer-desk.ts';
import { messagesDelivered } from './messages-delivered.ts';
import type { Request } from './messages.ts';

const desk = new AnswerDesk((reply) => self.postMessage(reply), packFetch, messagesDelivered());
self.onmessage = ({ data }: MessageEvent<Request>) => void desk.take(data);
