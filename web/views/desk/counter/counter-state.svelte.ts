import type { AskedOfCustomer } from '../../../../analysis/answer/advice-here.ts';
import type { CounterAnswer, CounterAsk, CounterNights, CounterPort } from '../../../state/counter-port.ts';
import { LaterAnswer } from '../../../state/later-answer.svelte.ts';
import type { LifeQuestion } from '../../../state/ports.ts';

/** What the counter shows: classes first, then the questions to the buyer, and nights once somebody had them counted. */
export class CounterState {
  readonly advice: LaterAnswer<CounterAsk, CounterAnswer>;
  readonly questions: LaterAnswer<CounterAsk, readonly AskedOfCustomer[]>;
  /** Nights as counted last, and what for. */
  nights = $state.raw<{ readonly key: string; readonly nights: CounterNights } | null>(null);

  constructor(port: CounterPort) {
    this.advice = new LaterAnswer((question) => port.advice(question));
    this.questions = new LaterAnswer((question) => port.adviceQuestions(question));
  }

  /** Classes, and right after them the questions. */
  async ask(question: CounterAsk): Promise<void> {
    await this.advice.ask(question);
    if (this.advice.answered === question) await this.questions.ask(question);
  }

  async retry(): Promise<void> {
    await this.advice.retry();
    if (this.advice.answered) await this.questions.ask(this.advice.answered);
  }
}

/** Tells nights counted for a place, spot and planting from all others: cover, age and load don't change them. */
export function nightsKey({
  packUrl,
  place,
  protection,
  tree,
  planting,
}: Omit<LifeQuestion, 'nights'>): string {
  const { condition, rootstock } = tree;
  const stands = protection !== null && (protection.spot !== null || protection.measured !== null);
  const spot = stands ? { ...protection, cover: null, container: false } : null;
  return JSON.stringify({ packUrl, place, condition, rootstock, planting, spot });
}
