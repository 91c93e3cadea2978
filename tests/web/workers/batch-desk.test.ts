import { describe, expect, it } from 'vitest';
import type { BatchTold } from '../../../analysis/answer/batch-run.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { answerBatch, type BatchWorker } from '../../../web/workers/batch-client.ts';
import { BatchDesk } from '../../../web/workers/batch-desk.ts';
import type { BatchReply } from '../../../web/workers/batch-messages.ts';
import { madeFetch, PACK_URL } from './made-pack.ts';

const asked = {
  packUrl: PACK_URL,
  typeIds: ['satsuma_owari'],
  tree: MATURE_TREE,
  protection: null,
};
const places = Array.from({ length: 33 }, (_, i) => ({
  lat: 30.55 + 0.02 * (i % 9),
  lon: -41.95 + 0.03 * Math.floor(i / 9),
  elevationM: null,
}));

/** Workers in the same thread; messages are copied, as real ones do. */
function madeWorkers() {
  const count = { started: 0, ended: 0, fetched: 0 };
  const start = (): BatchWorker => {
    count.started++;
    const { fetcher } = madeFetch(6);
    const desk = new BatchDesk(
      (reply) =>
        setImmediate(() => worker.onmessage?.({ data: structuredClone(reply) } as MessageEvent<BatchReply>)),
      (url) => (count.fetched++, fetcher(url)),
    );
    const worker: BatchWorker = {
      postMessage: (request) => void desk.take(structuredClone(request)),
      terminate: () => void count.ended++,
      onmessage: null,
      onerror: null,
    };
    return worker;
  };
  return { count, start };
}

async function told(cores: number, stopped: () => boolean = () => false) {
  const { count, start } = madeWorkers();
  const answers: (BatchTold | null)[] = places.map(() => null);
  const onAnswers = (indices: readonly number[], some: readonly BatchTold[]): void =>
    indices.forEach((at, i) => (answers[at] = some[i]));
  const whole = await answerBatch(asked, places, { onAnswers, stopped }, cores, start);
  return { answers, whole, count };
}

describe('workers of a batch', () => {
  it('tell the same however many they are, load the pack once each, and end with the batch', async () => {
    const two = await told(1);
    const three = await told(8);
    expect(two.whole && three.whole).toBe(true);
    expect(two.count).toMatchObject({ started: 2, ended: 2 });
    expect(three.count).toMatchObject({ started: 3, ended: 3 });
    expect(two.answers.every((answer) => answer?.problem === null)).toBe(true);
    expect(three.answers).toEqual(two.answers);
    expect(three.count.fetched / 3).toBe(two.count.fetched / 2);
  });
  it('stop when asked, and what is told stays', async () => {
    let asks = 0;
    const { answers, whole } = await told(1, () => asks++ >= 3);
    expect(whole).toBe(false);
    const done = answers.filter((answer) => answer !== null).length;
    expect(done).toBeGreaterThan(0);
    expect(done).toBeLessThan(places.length);
  });
  it('say why they can do nothing', async () => {
    const replies: BatchReply[] = [];
    const desk = new BatchDesk(
      (reply) => replies.push(reply),
      async () => ({
        ...{ ok: false, status: 404 },
        arrayBuffer: async () => new ArrayBuffer(0),
      }),
    );
    await desk.take({ asked, places });
    expect(replies).toEqual([{ failure: expect.stringContaining('stations.json') as string }]);
  });
});
