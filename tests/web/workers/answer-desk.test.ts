import { describe, expect, it } from 'vitest';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { AnswerDesk } from '../../../web/workers/answer-desk.ts';
import { AssessClient, type WorkerLike } from '../../../web/workers/assess-client.ts';
import { Superseded, type Reply, type Request } from '../../../web/workers/messages.ts';
import { madeFetch, PACK_URL } from './made-pack.ts';

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
const assess = (id: string) => ({
  packUrl: PACK_URL,
  protection: null,
  place: { by: 'station' as const, id },
  tree: MATURE_TREE,
  years: 10,
});
const periods = {
  packUrl: PACK_URL,
  protection: null,
  tree: MATURE_TREE,
  typeId: 'meyer_lemon',
  level: 'wood',
} as const;

describe('the desk in the worker', () => {
  it('works only for the newest of a kind, and kinds do not overtake each other', async () => {
    const replies: Reply[] = [];
    const desk = new AnswerDesk((reply) => replies.push(reply), madeFetch(4).fetcher, turn);
    await Promise.all([
      desk.take({ id: 1, kind: 'assess', question: assess('S0') }),
      desk.take({ id: 2, kind: 'stationPeriods', question: periods }),
      desk.take({ id: 3, kind: 'assess', question: assess('S1') }),
    ]);
    const outcome = Object.fromEntries(replies.map((reply) => [reply.id, reply.outcome]));
    expect(outcome).toEqual({ 1: 'superseded', 2: 'done', 3: 'done' });
  });

  it('answers a failure with its sentence and works on', async () => {
    const replies: Reply[] = [];
    const desk = new AnswerDesk((reply) => replies.push(reply), madeFetch(2).fetcher, turn);
    await desk.take({ id: 1, kind: 'assess', question: assess('nope') });
    await desk.take({ id: 2, kind: 'assess', question: assess('S1') });
    expect(replies[0]).toEqual({
      id: 1,
      outcome: 'failed',
      message: 'station "nope" is not in the pack, which has 2 stations',
    });
    expect(replies[1].outcome).toBe('done');
  });
});

/** A worker in the same thread: messages are copied and delivered in a later turn, as the real one does. */
function fakeWorker(stations = 3) {
  const desk = new AnswerDesk(
    (reply) =>
      setImmediate(() => worker.onmessage?.({ data: structuredClone(reply) } as MessageEvent<Reply>)),
    madeFetch(stations).fetcher,
    turn,
  );
  const state = { started: 0, stopped: 0 };
  const worker: WorkerLike = {
    postMessage: (message) => setImmediate(() => void desk.take(structuredClone(message) as Request)),
    terminate: () => void state.stopped++,
    onmessage: null,
    onerror: null,
  };
  return { worker, state, start: () => (state.started++, worker) };
}

describe('the client in the page', () => {
  it('starts one worker, and only when asked', async () => {
    const { state, start } = fakeWorker();
    const client = new AssessClient(start);
    expect(state.started).toBe(0);
    const [answer, map] = await Promise.all([client.assess(assess('S2')), client.stationPeriods(periods)]);
    expect(answer.place.label).toBe('Station 2');
    expect(map).toHaveLength(3);
    expect(state.started).toBe(1);
  });

  it('rejects an overtaken question as Superseded and answers the newest', async () => {
    const client = new AssessClient(fakeWorker().start);
    const older = client.assess(assess('S0'));
    const newer = client.assess(assess('S1'));
    await expect(older).rejects.toBeInstanceOf(Superseded);
    expect((await newer).place.label).toBe('Station 1');
  });

  it('fails what is waiting when the worker breaks, and starts a new one at the next question', async () => {
    const { worker, state, start } = fakeWorker();
    const client = new AssessClient(start);
    const waiting = client.assess(assess('S0'));
    worker.onerror?.(new Event('error') as ErrorEvent);
    await expect(waiting).rejects.toThrow('stopped working');
    expect(state.stopped).toBe(1);
    expect((await client.assess(assess('S1'))).place.label).toBe('Station 1');
    expect(state.started).toBe(2);
  });

  it('passes on the sentence of a failure', async () => {
    const client = new AssessClient(fakeWorker().start);
    await expect(client.assess(assess('nope'))).rejects.toThrow('station "nope" is not in the pack');
  });
});
