import { describe, expect, it } from 'vitest';

import type { OffsetField } from '../../../analysis/spot/offset-field.ts';
import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import { askedStepM, FieldState } from '../../../web/views/spot/field-state.svelte.ts';
import { YardClient, type YardWorker } from '../../../web/workers/yard-client.ts';
import type { YardReply, YardRequest } from '../../../web/workers/yard-messages.ts';

class StandIn implements YardWorker {
  readonly asked: YardRequest[] = [];
  ended = false;
  onmessage: ((event: MessageEvent<YardReply>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  postMessage(message: YardRequest): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  reply(reply: YardReply): void {
    this.onmessage?.({ data: reply } as MessageEvent<YardReply>);
  }
}

const { yard } = READY_YARDS[0];
const question = (stepM: number) => ({ yard, latDeg: 31, stepM });
const field = (columns: number) => ({ columns }) as OffsetField;
const nameOf = (promise: Promise<unknown>): Promise<string> =>
  promise.then(
    () => 'answered',
    (error: Error) => error.name,
  );

describe('the client of the yard’s worker', () => {
  it('keeps one question with the worker and the newest waiting; those between are superseded', async () => {
    const worker = new StandIn();
    const client = new YardClient(() => worker);
    const first = client.field(question(1));
    const between = nameOf(client.field(question(2)));
    const last = client.field(question(3));
    expect(worker.asked).toHaveLength(1);
    expect(await between).toBe('Superseded');
    worker.reply({ id: worker.asked[0].id, answer: field(1) });
    expect((await first).columns).toBe(1);
    expect(worker.asked).toHaveLength(2);
    worker.reply({ id: worker.asked[1].id, answer: field(3) });
    expect((await last).columns).toBe(3);
  });

  it('asks for a field before best spots that were waiting longer', async () => {
    const worker = new StandIn();
    const client = new YardClient(() => worker);
    void client.field(question(1));
    void client.best({ yard, latDeg: 31, grownWidthM: 3 });
    void client.field(question(2));
    worker.reply({ id: worker.asked[0].id, answer: field(1) });
    expect(worker.asked[1].kind).toBe('field');
    worker.reply({ id: worker.asked[1].id, answer: field(2) });
    expect(worker.asked[2].kind).toBe('best');
  });

  it('tells a failure in its own words, and starts a broken worker anew', async () => {
    const workers: StandIn[] = [];
    const client = new YardClient(() => {
      workers.push(new StandIn());
      return workers.at(-1)!;
    });
    const failed = client.field(question(1));
    workers[0].reply({ id: workers[0].asked[0].id, failure: 'The wall 1 is too short.' });
    await expect(failed).rejects.toThrow('The wall 1 is too short.');
    const broken = client.field(question(1));
    workers[0].onerror?.({} as ErrorEvent);
    await expect(broken).rejects.toThrow('stopped working');
    expect(workers[0].ended).toBe(true);
    const again = client.field(question(1));
    workers[1].reply({ id: workers[1].asked[0].id, answer: field(7) });
    expect((await again).columns).toBe(7);
  });
});

describe('the field on the page', () => {
  it('shows every answer that comes while newer questions are on their way, never an older one after', async () => {
    const answers: ((field: OffsetField) => void)[] = [];
    const state = new FieldState({
      field: () => new Promise((resolve) => answers.push(resolve)),
      best: () => Promise.resolve([]),
    });
    const asked = [1, 2, 3].map(() => state.ask(yard, 31, true));
    answers[0](field(1));
    await asked[0];
    expect(state.shown?.field.columns).toBe(1);
    answers[2](field(3));
    await asked[2];
    answers[1](field(2));
    await asked[1];
    expect(state.shown?.field.columns).toBe(3);
    state.forget();
    expect(state.shown).toBeNull();
  });

  it('asks for half a metre at rest, coarser in motion and on large plots', () => {
    expect(askedStepM({ widthM: 40, depthM: 30 }, false)).toBe(0.5);
    expect(askedStepM({ widthM: 40, depthM: 30 }, true)).toBeCloseTo(0.894, 2);
    expect(askedStepM({ widthM: 200, depthM: 200 }, false)).toBeGreaterThan(1);
  });
});
