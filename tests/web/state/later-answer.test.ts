import { describe, expect, it } from 'vitest';
import { LaterAnswer } from '../../../web/state/later-answer.svelte.ts';
import { Superseded } from '../../../web/workers/messages.ts';

/** A port whose answers come when the test says so. */
function slowPort() {
  const waiting: { resolve: (answer: string) => void; reject: (error: Error) => void }[] = [];
  const port = (_: number): Promise<string> =>
    new Promise((resolve, reject) => void waiting.push({ resolve, reject }));
  return { waiting, port };
}

describe('an answer asked for later', () => {
  it('keeps the old one while the new one is worked out, and the newest wins whatever comes first', async () => {
    const { waiting, port } = slowPort();
    const later = new LaterAnswer<number, string>(port);
    expect([later.status, later.answer]).toEqual(['idle', null]);
    const first = later.ask(1);
    waiting[0].resolve('one');
    await first;
    expect([later.status, later.answer, later.answered]).toEqual(['ready', 'one', 1]);
    const [second, third] = [later.ask(2), later.ask(3)];
    expect([later.status, later.answer]).toEqual(['working', 'one']);
    waiting[2].resolve('three');
    waiting[1].resolve('two');
    await Promise.all([second, third]);
    expect([later.status, later.answer, later.answered]).toEqual(['ready', 'three', 3]);
  });

  it('tells a failure in its words and asks the same again on a retry; being overtaken is no failure', async () => {
    const { waiting, port } = slowPort();
    const later = new LaterAnswer<number, string>(port);
    const failing = later.ask(7);
    waiting[0].reject(new Error('The tile broke off.'));
    await failing;
    expect([later.status, later.error]).toEqual(['failed', 'The tile broke off.']);
    const again = later.retry();
    expect([later.status, later.error]).toEqual(['working', null]);
    waiting[1].reject(new Superseded());
    await again;
    expect(later.error).toBeNull();
    const last = later.retry();
    waiting[2].resolve('seven');
    await last;
    expect([later.answer, later.answered]).toEqual(['seven', 7]);
  });
});
