import type { Chosen } from '../../analysis/answer/choosing.ts';
import type { LifeAnswer } from '../../analysis/answer/life.ts';
import type { YearAnswer } from '../../analysis/answer/year.ts';
import type { AskedOfCustomer } from '../../analysis/answer/advice-here.ts';
import type { CounterAnswer, CounterAsk, CounterNights } from '../state/counter-port.ts';
import type { ChooseQuestion, LifeQuestion } from '../state/ports.ts';

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
export type LifeRequest =
  | {
      [K in LifeTaskKind]: {
        readonly id: number;
        readonly kind: K;
        readonly question: LifeTasks[K]['question'];
      };
    }[LifeTaskKind]
  | { readonly kind: 'drop'; readonly id: number };

/** From the worker; nothing comes of a question that was dropped. */
export type LifeReply =
  | { readonly id: number; readonly done: number }
  | { readonly id: number; readonly answer: LifeTasks[LifeTaskKind]['answer'] }
  | { readonly id: number; readonly failure: string };
