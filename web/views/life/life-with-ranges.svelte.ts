import { untrack } from 'svelte';
import type { LifeAnswer } from '../../../analysis/answer/life.ts';
import { LaterAnswer } from '../../state/later-answer.svelte.ts';
import type { LifePort, LifeQuestion } from '../../state/ports.ts';
import { steady } from '../../state/steady.ts';
import { StoppableAnswer } from '../../state/stoppable-answer.svelte.ts';
import { wholeLife } from '../nights/whole-life.ts';
import { hasShares } from './life-words.ts';

/**
 * Lives and, once they stand, their ranges, asked anew whenever the question is another. Made while a component is set up,
 * and ended with it.
 */
export class LifeWithRanges {
  /** The answer without ranges, which comes first. */
  readonly life = new LaterAnswer<LifeQuestion, LifeAnswer>((asked) => this.port.life(asked));
  readonly ranges = new StoppableAnswer<LifeQuestion, LifeAnswer>(
    (asked, onProgress) => this.port.lifeRanges(asked, onProgress),
    () => this.port.cancel('lifeRanges'),
  );
  readonly #same = steady<Omit<LifeQuestion, 'nights'>>();
  readonly #planted = $derived.by(() => this.#same(wholeLife(this.question())));
  readonly #nights = $derived.by(() => this.question().nights);
  /** What is asked now. */
  readonly asked = $derived.by<LifeQuestion>(() => ({ ...this.#planted, nights: this.#nights }));
  /** The newest answer, with its ranges as soon as they stand; `null` before the first. */
  readonly told = $derived.by(() => {
    const { answer, answered } = this.life;
    return this.ranges.answered === answered ? (this.ranges.answer ?? answer) : answer;
  });

  constructor(
    private readonly port: Pick<LifePort, 'life' | 'lifeRanges' | 'cancel'>,
    private readonly question: () => LifeQuestion,
  ) {
    $effect(() => {
      const next = this.asked;
      untrack(() => {
        this.ranges.drop();
        void this.life.ask(next);
      });
    });
    $effect(() => {
      const { answer, status } = this.life;
      if (status === 'ready' && answer && hasShares(answer)) untrack(() => this.askRanges());
    });
    $effect(() => () => this.ranges.drop());
  }

  /** Works out the ranges of the lives that stand. */
  askRanges(): void {
    const { answered } = this.life;
    if (answered) void this.ranges.ask(answered);
  }
}
