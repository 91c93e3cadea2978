import { beforeEach, describe, expect, it } from 'vitest';
import { InputError } from '../../../analysis/records/input-error.ts';
import { TaskClient, type StoppableWorker } from '../../../web/workers/task-client.ts';
import type { Drop, RequestOf } from '../../../web/workers/task-messages.ts';

interface Tasks {
  double: { question: number; answer: number };
  name: { question: string; answer: string };
}
type Message = RequestOf<Tasks> | Drop;

/** A worker that answers when the test has it do so. */
class QuietWorker implements StoppableWorker<Tasks, number> {
  onmessage: StoppableWorker<Tasks, number>['onmessage'] = null;
  onerror: StoppableWorker<Tasks, number>['onerror'] = null;
  readonly heard: Message[] = [];
  ended = false;
  postMessage(message: Message): void {
    this.heard.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(data: unknown): void {
    this.onmessage?.({ data } as never);
  }
  /** Ids of what was asked, in order. */
  get ids(): number[] {
    return this.heard.flatMap((message) => (message.kind === 'drop' ? [] : [message.id]));
  }
}

let workers: QuietWorker[];
let client: TaskClient<Tasks, number>;
beforeEach(() => {
  workers = [];
  client = new TaskClient<Tasks, number>(() => {
    const worker = new QuietWorker();
    workers.push(worker);
    return worker;
  }, 'It broke.');
});

describe('questions to a worker that can be stopped', () => {
  it('start it at the first, and each gets its own answer, whatever order they come in', async () => {
    expect(workers).toEqual([]);
    const far: number[] = [];
    const [one, two] = [
      client.ask('double', 2, { onProgress: (share) => far.push(share) }),
      client.ask('name', 'a'),
    ];
    const [worker] = workers;
    const [first, second] = worker.ids;
    worker.say({ id: first, progress: 0.5 });
    worker.say({ id: second, answer: 'A' });
    worker.say({ id: first, answer: 4 });
    expect([await one, await two, far, workers.length]).toEqual([4, 'A', [0.5], 1]);
  });

  it('stopped are refused with the reason, and the worker hears that nobody waits', async () => {
    const stop = new AbortController();
    const asked = client.ask('double', 2, { signal: stop.signal });
    const [worker] = workers;
    const [id] = worker.ids;
    stop.abort(new Error('enough'));
    await expect(asked).rejects.toThrow('enough');
    expect(worker.heard.at(-1)).toEqual({ kind: 'drop', id });
    // An answer that was on its way already goes nowhere.
    worker.say({ id, answer: 4 });
    await expect(client.ask('double', 3, { signal: stop.signal })).rejects.toThrow('enough');
    expect(worker.ids).toEqual([id]);
  });

  it('answered are not dropped by a signal that comes later', async () => {
    const stop = new AbortController();
    const asked = client.ask('double', 2, { signal: stop.signal });
    const [worker] = workers;
    worker.say({ id: worker.ids[0], answer: 4 });
    expect(await asked).toBe(4);
    stop.abort();
    expect(worker.heard).toHaveLength(1);
  });

  it('that fail say whether it is a sentence about what was brought, or a fault', async () => {
    const [plain, fault] = [client.ask('name', 'a'), client.ask('name', 'b')];
    const [worker] = workers;
    worker.say({ id: worker.ids[0], failure: 'a.csv is empty.', plain: true });
    worker.say({ id: worker.ids[1], failure: 'x is undefined' });
    await expect(plain).rejects.toThrow(new InputError('a.csv is empty.'));
    await expect(plain).rejects.toBeInstanceOf(InputError);
    await expect(fault).rejects.not.toBeInstanceOf(InputError);
  });

  it('fail together when the worker breaks, and the next has a new one', async () => {
    const waiting = [client.ask('double', 1), client.ask('name', 'a')];
    workers[0].onerror?.({} as never);
    for (const one of waiting) await expect(one).rejects.toThrow('It broke.');
    const next = client.ask('double', 5);
    expect([workers.length, workers[0].ended, workers[1].ended]).toEqual([2, true, false]);
    workers[1].say({ id: workers[1].ids[0], answer: 10 });
    expect(await next).toBe(10);
  });
});
