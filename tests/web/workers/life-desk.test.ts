import { describe, expect, it } from 'vitest';
import { answerLife, answerLifeWithoutRanges } from '../../../analysis/answer/life-answer.ts';
import { lifePlace } from '../../../analysis/answer/life-place.ts';
import { findSubject } from '../../../analysis/answer/find-subject.ts';
import { lastOf } from '../../../analysis/math/steps.ts';
import { keptNights } from '../../../analysis/records/kept-nights.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS } from '../../../analysis/records/nights.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import type { LifeQuestion } from '../../../web/state/ports.ts';
import { LifeClient, type LifeWorker } from '../../../web/workers/life-client.ts';
import { LifeDesk } from '../../../web/workers/life-desk.ts';
import type { LifeReply, LifeRequest } from '../../../web/workers/life-messages.ts';
import { Superseded } from '../../../web/workers/messages.ts';
import { WinterTiles } from '../../../web/workers/winter-tiles.ts';
import { madeFetch, PACK_URL } from './made-pack.ts';

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
const PLANTING = { startAgeYears: 1, picking: 'late', calendar: 'gulf' } as const;
const NOTHING_ADDED = {
  gains: NO_LEVEL_GAIN_SPREADS,
  spotGains: NO_LEVEL_GAIN_SPREADS,
  nightWork: false,
};
const WISHES = {
  kinds: ['eating'] as const,
  nightsToCover: 5,
  lostCropsInTen: 3,
  yearsToWait: 4,
  livingInTen: 7,
};

/** The coldest night of each kind of a winter, all there is to know of these invented winters. */
function nightsOf({ winter, coldest, coldestDay }: WinterTable) {
  const rows = [...winter].flatMap((label, w) =>
    NIGHT_KINDS.flatMap((_, kind) => {
      const levels = coldest[kind].map((own) => own[w]);
      return levels[0] === MISSING_HUNDREDTHS ? [] : [[coldestDay[kind][0][w], label, kind, ...levels, 300]];
    }),
  );
  return keptNights(rows.sort((a, b) => a[0] - b[0]));
}

function made() {
  const { fetcher, tables } = madeFetch(3);
  const question = (id: string): LifeQuestion => ({
    packUrl: PACK_URL,
    place: { by: 'station', id },
    nights: nightsOf(tables.get(id) ?? tables.get('S0')!),
    tree: MATURE_TREE,
    protection: null,
    planting: PLANTING,
  });
  return { fetcher, question };
}

/** A clock that runs on at each look, so that every step is a stretch. */
function hurriedClock(): () => number {
  let now = 0;
  return () => (now += 1000);
}

describe('the desk that goes through nights', () => {
  it('tells the lives that the analysis tells', async () => {
    const { fetcher, question } = made();
    const replies: LifeReply[] = [];
    const desk = new LifeDesk((reply) => replies.push(reply), fetcher, turn, hurriedClock());
    await desk.take({ id: 1, kind: 'life', question: question('S1') });
    await desk.take({ id: 2, kind: 'lifeRanges', question: question('S1') });
    const tiles = await WinterTiles.open(PACK_URL, fetcher);
    const { subject } = await findSubject(tiles, { by: 'station', id: 'S1' });
    const place = lifePlace(subject, question('S1').nights, PLANTING);
    const asked = { types: CITRUS_TYPES, tree: MATURE_TREE, planting: PLANTING, ...NOTHING_ADDED };
    const answers = replies.flatMap((reply) => ('answer' in reply ? [reply.answer] : []));
    expect(answers).toEqual([answerLifeWithoutRanges(place, asked), lastOf(answerLife(place, asked))]);
  });

  it('tells how far it is, always further, before the answer', async () => {
    const { fetcher, question } = made();
    const replies: LifeReply[] = [];
    const desk = new LifeDesk((reply) => replies.push(reply), fetcher, turn, hurriedClock());
    await desk.take({ id: 7, kind: 'lifeRanges', question: question('S0') });
    await desk.take({ id: 8, kind: 'choose', question: { ...question('S0'), wishes: WISHES } });
    for (const id of [7, 8]) {
      const own = replies.filter((reply) => reply.id === id);
      const done = own.flatMap((reply) => ('progress' in reply ? [reply.progress] : []));
      expect(done.length).toBeGreaterThan(3);
      expect(done).toEqual([...done].sort((a, b) => a - b));
      expect(Math.max(...done)).toBeLessThanOrEqual(1);
      expect(own.at(-1)).toHaveProperty('answer');
    }
  });

  it('drops what nobody waits for, at its next step, without a word', async () => {
    const { fetcher, question } = made();
    const replies: LifeReply[] = [];
    const desk = new LifeDesk((reply) => replies.push(reply), fetcher, turn, hurriedClock());
    const work = desk.take({ id: 1, kind: 'lifeRanges', question: question('S0') });
    while (!replies.some((reply) => 'progress' in reply)) await turn();
    await desk.take({ kind: 'drop', id: 1 });
    const told = replies.length;
    await work;
    expect(replies.length).toBeLessThanOrEqual(told + 1);
    expect(replies.some((reply) => 'answer' in reply || 'failure' in reply)).toBe(false);
  });

  it('answers a failure with its sentence and works on', async () => {
    const { fetcher, question } = made();
    const replies: LifeReply[] = [];
    const desk = new LifeDesk((reply) => replies.push(reply), fetcher, turn, hurriedClock());
    await desk.take({ id: 1, kind: 'year', question: question('nope') });
    await desk.take({ id: 2, kind: 'year', question: question('S2') });
    expect(replies).toContainEqual({
      id: 1,
      failure: 'station "nope" is not in the pack, which has 3 stations',
    });
    expect(replies.at(-1)).toHaveProperty('answer');
  });
});

/** A worker in the same thread: messages are copied and delivered in a later turn, as the real one does. */
function sameThreadWorker(fetcher: ReturnType<typeof madeFetch>['fetcher']) {
  const state = { started: 0, stopped: 0 };
  const desk = new LifeDesk(
    (reply) =>
      setImmediate(() => worker.onmessage?.({ data: structuredClone(reply) } as MessageEvent<LifeReply>)),
    fetcher,
    turn,
    hurriedClock(),
  );
  const worker: LifeWorker = {
    postMessage: (message) => setImmediate(() => void desk.take(structuredClone(message) as LifeRequest)),
    terminate: () => void state.stopped++,
    onmessage: null,
    onerror: null,
  };
  return { worker, state, start: () => (state.started++, worker) };
}

describe('its client in the page', () => {
  it('starts the worker at the first question and hears of progress', async () => {
    const { fetcher, question } = made();
    const { state, start } = sameThreadWorker(fetcher);
    const client = new LifeClient(start);
    expect(state.started).toBe(0);
    const heard: number[] = [];
    const answer = await client.lifeRanges(question('S0'), (done) => heard.push(done));
    expect(answer.types).toHaveLength(CITRUS_TYPES.length);
    expect(heard.length).toBeGreaterThan(3);
    expect(state.started).toBe(1);
  });

  it('rejects what is overtaken or stopped, and answers the newest', async () => {
    const { fetcher, question } = made();
    const client = new LifeClient(sameThreadWorker(fetcher).start);
    const older = client.lifeRanges(question('S0'), () => {});
    const newer = client.lifeRanges(question('S1'), () => {});
    await expect(older).rejects.toBeInstanceOf(Superseded);
    const stopped = client.choose({ ...question('S1'), wishes: WISHES }, () => {});
    client.cancel('choose');
    await expect(stopped).rejects.toBeInstanceOf(Superseded);
    expect((await newer).winters.length).toBeGreaterThan(40);
  });

  it('fails what waits when the worker breaks, and starts a new one next time', async () => {
    const { fetcher, question } = made();
    const { worker, state, start } = sameThreadWorker(fetcher);
    const client = new LifeClient(start);
    const waiting = client.year(question('S0'));
    worker.onerror?.(new Event('error') as ErrorEvent);
    await expect(waiting).rejects.toThrow('stopped working');
    expect(state).toEqual({ started: 1, stopped: 1 });
    await expect(client.year(question('S0'))).resolves.toHaveProperty('freezes');
    expect(state.started).toBe(2);
  });
});
