import { describe, expect, it } from 'vitest';
import type { LifeAnswer } from '../../../../analysis/answer/life.ts';
import type { LifeQuestion, OnProgress } from '../../../../web/state/ports.ts';
import { Superseded } from '../../../../web/workers/messages.ts';
import { RangesState } from '../../../../web/views/life/ranges-state.svelte.ts';

/** A worker that answers when told to. */
class Worker {
  asked: { question: LifeQuestion; progress: OnProgress; answer: (answer: LifeAnswer) => void }[] = [];
  #reject: ((error: Error) => void)[] = [];

  lifeRanges(question: LifeQuestion, progress: OnProgress): Promise<LifeAnswer> {
    return new Promise((answer, reject) => {
      this.asked.push({ question, progress, answer });
      this.#reject.push(reject);
    });
  }
  cancel(): void {
    for (const reject of this.#reject.splice(0)) reject(new Superseded());
  }
  fail(): void {
    for (const reject of this.#reject.splice(0)) reject(new Error('It broke.'));
  }
}
const question = (id: string): LifeQuestion => ({ packUrl: id }) as LifeQuestion;
const answer = (horizon_years: number): LifeAnswer => ({ horizon_years }) as LifeAnswer;

describe('the ranges of lives', () => {
  it('tell how far they are and answer exactly the question asked', async () => {
    const worker = new Worker();
    const ranges = new RangesState(worker);
    expect(ranges.status).toBe('idle');
    const first = question('a');
    const done = ranges.ask(first);
    worker.asked[0].progress(0.45);
    expect([ranges.status, ranges.done]).toEqual(['working', 0.45]);
    expect(ranges.answerTo(first)).toBeNull();
    worker.asked[0].answer(answer(30));
    await done;
    expect(ranges.status).toBe('ready');
    expect(ranges.answerTo(first)).toEqual(answer(30));
    expect(ranges.answerTo(question('a'))).toBeNull();
  });

  it('stop at a wish and can be asked for again', async () => {
    const worker = new Worker();
    const ranges = new RangesState(worker);
    const stopped = ranges.ask(question('a'));
    ranges.cancel();
    await stopped;
    expect(ranges.status).toBe('cancelled');
    const again = ranges.ask(question('a'));
    expect([ranges.status, ranges.done]).toEqual(['working', 0]);
    worker.asked[1].answer(answer(30));
    await again;
    expect(ranges.status).toBe('ready');
  });

  it('are not called cancelled when the page dropped them for another question', async () => {
    const worker = new Worker();
    const ranges = new RangesState(worker);
    const dropped = ranges.ask(question('a'));
    ranges.drop();
    await dropped;
    expect(ranges.status).toBe('idle');
  });

  it('say what failed', async () => {
    const worker = new Worker();
    const ranges = new RangesState(worker);
    const failed = ranges.ask(question('a'));
    worker.fail();
    await failed;
    expect([ranges.status, ranges.error]).toEqual(['failed', 'It broke.']);
  });
});
