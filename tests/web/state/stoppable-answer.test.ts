import { describe, expect, it } from 'vitest';
import type { OnProgress } from '../../../web/state/ports.ts';
import { StoppableAnswer } from '../../../web/state/stoppable-answer.svelte.ts';

class Superseded extends Error {
  override readonly name = 'Superseded';
}

/** A port that answers when told to, and rejects what waits when stopped. */
function held() {
  const asked: {
    question: string;
    onProgress: OnProgress;
    resolve: (answer: string) => void;
    reject: (error: Error) => void;
  }[] = [];
  let stops = 0;
  const answer = new StoppableAnswer<string, string>(
    (question, onProgress) =>
      new Promise((resolve, reject) => asked.push({ question, onProgress, resolve, reject })),
    () => {
      stops++;
      asked.at(-1)?.reject(new Superseded());
    },
  );
  return { asked, answer, stops: () => stops };
}

describe('an answer that takes a moment', () => {
  it('tells how far it is, from nothing again for each question', async () => {
    const { asked, answer } = held();
    const first = answer.ask('a');
    expect([answer.status, answer.done]).toEqual(['working', 0]);
    asked[0].onProgress(0.4);
    expect(answer.done).toBe(0.4);
    asked[0].resolve('A');
    await first;
    expect([answer.status, answer.answer, answer.answered]).toEqual(['ready', 'A', 'a']);
    void answer.ask('b');
    expect([answer.status, answer.done, answer.answer]).toEqual(['working', 0, 'A']);
  });

  it('can be stopped, keeps what it had, and starts again when asked', async () => {
    const { asked, answer, stops } = held();
    const first = answer.ask('a');
    answer.cancel();
    await first;
    expect([answer.status, stops()]).toEqual(['cancelled', 1]);
    const again = answer.retry();
    expect([answer.status, asked[1].question]).toEqual(['working', 'a']);
    asked[1].resolve('A');
    await again;
    expect([answer.status, answer.answer]).toEqual(['ready', 'A']);
    answer.drop();
    expect([answer.status, answer.answer]).toEqual(['idle', 'A']);
  });

  it('is not called cancelled when the page dropped it, and goes on with another question', async () => {
    const { asked, answer } = held();
    const dropped = answer.ask('a');
    answer.drop();
    await dropped;
    expect([answer.status, answer.answered]).toEqual(['idle', null]);
    const next = answer.ask('b');
    expect([answer.status, answer.done]).toEqual(['working', 0]);
    asked[1].resolve('B');
    await next;
    expect([answer.status, answer.answer, answer.answered]).toEqual(['ready', 'B', 'b']);
  });

  it('says why it failed', async () => {
    const { asked, answer } = held();
    const first = answer.ask('a');
    asked[0].reject(new Error('The nights could not be read.'));
    await first;
    expect([answer.status, answer.error]).toEqual(['failed', 'The nights could not be read.']);
  });
});
