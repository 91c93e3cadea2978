import type { Chosen } from '../../analysis/answer/choosing.ts';
import type { LifeAnswer } from '../../analysis/answer/life.ts';
import type { YearAnswer } from '../../analysis/answer/year.ts';
import type { AskedOfCustomer } from '../../analysis/answer/advice-here.ts';
import type { CounterAnswer, CounterAsk, CounterNights } from '../state/counter-port.ts';
import type { ChooseQuestion, LifeQuestion } from '../state/ports.ts';
import type { Drop, ReplyOf, RequestOf } from './task-messages.ts';

/** What can be asked of the worker that goes through nights, with its question and its answer. */
export interface LifeTasks {
  life: { question: LifeQuestion; answer: LifeAnswer };
  lifeRanges: { question: LifeQuestion; answer: LifeAnswer };
  year: { question: LifeQuestion; answer: YearAnswer };
  choose: { question: ChooseQuestion; answer: Chosen };
  advice: { question: CounterAsk; answer: CounterAnswer };
  adviceQuestions: { question: CounterAsk; answer: readonly AskedOfCustomer[] };
  adviceNights: { question: LifeQuestion; answer: CounterNights };
}
export type LifeTaskKind = keyof LifeTasks;

/** To the worker: a question, or that nobody waits for one any more. */
export type LifeRequest = RequestOf<LifeTasks> | Drop;

/** From the worker; progress is the share that is done, 0-1. */
export type LifeReply = ReplyOf<LifeTasks, number>;
