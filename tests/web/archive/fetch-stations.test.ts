import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { fetchStations, recordUrl, type StationProgress } from '../../../web/archive/fetch-stations.ts';
import { PassingParts } from '../../../web/archive/part-store.ts';
import { readStationIndex } from '../../../web/archive/read-index.ts';
import { LoopbackArchive, recordOf } from '../../data-scripts/fetch/loopback-archive.ts';

const [FIRST, SECOND, THIRD] = ['ZZ000000001', 'ZZ000000002', 'ZZ000000003'];

let archive: LoopbackArchive;
let base: string;
let store: PassingParts;
let last: Map<string, StationProgress>;
let signal: AbortSignal | undefined;

beforeEach(async () => {
  archive = new LoopbackArchive();
  base = await archive.open();
  store = new PassingParts();
  last = new Map();
  signal = undefined;
});
afterEach(() => archive.close());

const how = () => ({
  fetcher: fetch,
  store,
  tries: 2,
  backoffMs: 1,
  silenceMs: 1000,
  met: new Set<string>(),
  noIfRange: new Set<string>(),
  signal,
});
const fetchAll = (ids = [FIRST, SECOND, THIRD], atOnce = 2) =>
  fetchStations(ids, base, how(), { atOnce, pauseMs: 1 }, (id, progress) => last.set(id, progress));

describe('the records of stations', () => {
  it('come in the order wanted, each with the days that have a minimum', async () => {
    expect(await fetchAll([SECOND, FIRST])).toEqual([SECOND, FIRST]);
    // The invented records hold 400 days, each with a maximum and a minimum.
    expect(last.get(FIRST)).toMatchObject({ phase: 'there', tminDays: 400 });
    const content = await store.content(recordUrl(FIRST, base));
    expect(await content.text()).toBe(archive.files.get(recordOf(FIRST))!.toString());
  });

  it('come at most so many at once', async () => {
    let [now, most] = [0, 0];
    const fetcher = async (url: string, init: RequestInit): Promise<Response> => {
      most = Math.max(most, ++now);
      const answer = await fetch(url, init);
      const body = await answer.arrayBuffer();
      now--;
      return new Response(body, { status: answer.status, headers: answer.headers });
    };
    const ids = [FIRST, SECOND, THIRD, 'ZZ000000004', 'ZZ000000005'];
    await fetchStations(ids, base, { ...how(), fetcher }, { atOnce: 2, pauseMs: 0 }, () => {});
    expect(most).toBe(2);
  });

  it('are left out and told of where the archive has none or sends something else; the others come', async () => {
    archive.files.delete(recordOf(SECOND));
    const other = archive.files.get(recordOf(THIRD))!;
    const strangers = Buffer.concat([other, Buffer.from(`${FIRST},20200101,TMIN,5,,,7,\n`)]);
    archive.break(recordOf(THIRD), { kind: 'replace', body: strangers });
    expect(await fetchAll()).toEqual([FIRST]);
    expect(last.get(SECOND)).toEqual({ phase: 'missing' });
    expect(last.get(THIRD)).toEqual({
      phase: 'refused',
      reason: `${THIRD}.csv, line 802: "${FIRST},20200101,TMIN,5,,,7," is not a value of station ${THIRD}`,
    });
    expect(await store.state(recordUrl(THIRD, base))).toBeNull();
  });

  it('without a minimum are of no use', async () => {
    const record = archive.files.get(recordOf(FIRST))!.toString().replaceAll('TMIN', 'TAVG');
    archive.files.set(recordOf(FIRST), Buffer.from(record));
    expect(await fetchAll([FIRST])).toEqual([]);
    expect(last.get(FIRST)).toEqual({ phase: 'refused', reason: `The record of ${FIRST} has no minimum.` });
  });

  it('stop altogether when the archive is reached no more, and go on later', async () => {
    archive.break(recordOf(FIRST), { kind: 'cut', afterBytes: 6000 }, { kind: 'status', status: 500 });
    archive.break(recordOf(FIRST), { kind: 'status', status: 500 });
    const failed = fetchAll([FIRST, SECOND, THIRD], 1);
    await expect(failed).rejects.toBeInstanceOf(Error);
    await expect(failed).rejects.toThrow('the archive answered 500');
    expect(archive.requestsOf(recordOf(SECOND))).toEqual([]);
    expect(await fetchAll()).toEqual([FIRST, SECOND, THIRD]);
    expect(archive.requestsOf(recordOf(FIRST)).at(-1)).toMatchObject({ range: 'bytes=6000-', status: 206 });
  });

  it('stop one with the other: none is waited for or begun once the archive is reached no more', async () => {
    archive.break(recordOf(FIRST), { kind: 'status', status: 500 }, { kind: 'status', status: 500 });
    archive.break(recordOf(SECOND), { kind: 'stall', afterBytes: 100 });
    const began = performance.now();
    const patient = { ...how(), silenceMs: 30_000 };
    const both = fetchStations([FIRST, SECOND, THIRD], base, patient, { atOnce: 2, pauseMs: 1 }, () => {});
    await expect(both).rejects.toBeInstanceOf(Error);
    // Silence alone would have ended the other after half a minute.
    expect(performance.now() - began).toBeLessThan(15_000);
    expect(archive.requestsOf(recordOf(THIRD))).toEqual([]);
  });

  it('are kept when the reader stops, and not asked for again', async () => {
    const stop = new AbortController();
    signal = stop.signal;
    archive.break(recordOf(SECOND), { kind: 'stall', afterBytes: 100 });
    const fetching = fetchAll([FIRST, SECOND], 1);
    while (last.get(FIRST)?.phase !== 'there') await new Promise((done) => setTimeout(done, 5));
    stop.abort(new Error('stopped'));
    await expect(fetching).rejects.toThrow('stopped');
    signal = undefined;
    expect(await fetchAll([FIRST, SECOND])).toEqual([FIRST, SECOND]);
    expect(archive.requestsOf(recordOf(FIRST))).toHaveLength(1);
  });
});

describe('the station index', () => {
  const read = () =>
    readStationIndex(base, how(), { bytes: (...heard) => lists.push(heard), again: () => {} });
  let lists: [name: string, come: number, total: number | null][];
  beforeEach(() => (lists = []));

  it('holds the stations with 20 or more years of minima, and lets the lists go', async () => {
    const index = await read();
    // All but SHORT, which has eleven years.
    expect(index.ids.split('\n')).toEqual([FIRST, SECOND, THIRD, 'ZZ000000005', 'ZZ000000006']);
    const [inventory, stations] = ['ghcnd-inventory.txt', 'ghcnd-stations.txt'];
    expect([...new Set(lists.map(([name]) => name))]).toEqual([inventory, stations]);
    const length = archive.files.get(`/${inventory}`)!.length;
    expect(lists.filter(([name]) => name === inventory).at(-1)).toEqual([inventory, length, length]);
    expect(await store.state(new URL(inventory, base).href)).toBeNull();
  });

  it('is read on after a cut', async () => {
    archive.break('/ghcnd-inventory.txt', { kind: 'cut', afterBytes: 400 });
    expect((await read()).count).toBe(5);
    expect(archive.requestsOf('/ghcnd-inventory.txt').map(({ status }) => status)).toEqual([200, 206]);
  });

  it('is refused in one sentence where there is no such archive, or another page', async () => {
    archive.files.delete('/ghcnd-stations.txt');
    await expect(read()).rejects.toThrow(`${base} is no GHCN-Daily archive: it has no ghcnd-stations.txt.`);
    archive.files.set('/ghcnd-inventory.txt', Buffer.from(`<html>${'x'.repeat(300)}`));
    await expect(read()).rejects.toThrow(
      /^What 127\.0\.0\.1:\d+ sent isn’t ghcnd-inventory\.txt; it begins “<html>xxx/,
    );
    archive.files.set('/ghcnd-inventory.txt', Buffer.from(`${FIRST} nothing of the kind\n`.repeat(20)));
    archive.files.set('/ghcnd-stations.txt', Buffer.from(`${FIRST} nothing of the kind\n`.repeat(20)));
    await expect(read()).rejects.toThrow(/hold no station with 20 or more years of minima/);
  });
});
