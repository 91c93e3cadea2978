import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { OwnStations } from '../../../web/gather/own-stations.ts';
import { readBrought } from '../../../web/gather/read-brought.ts';
import { GatherDesk } from '../../../web/workers/gather-desk.ts';
import type { GatherReply } from '../../../web/workers/gather-messages.ts';
import { dayFirstText, dlyText, INVENTED_STATIONS } from '../../browser/own-files.ts';

const NEVER = new AbortController().signal;
const NOW = async (): Promise<void> => {};
const read = (name: string, content: string | Uint8Array, told = {}) =>
  readBrought({ key: 1, name, blob: new Blob([content as BlobPart]), ...told }, () => {}, NEVER);
const [east, west] = INVENTED_STATIONS;

describe('a file brought', () => {
  it('is asked about where it does not tell its unit, and read once that is told', async () => {
    const text = dayFirstText(west);
    expect((await read('w.csv', text)).found).toMatchObject({ kind: 'unclear', asks: 'unit' });
    expect((await read('w.csv', text, { unit: 'C' })).found).toMatchObject({
      kind: 'readings',
      unit: 'C',
      rows: 22646,
    });
  });

  it('is asked about where its dates could be either way round', async () => {
    const text = 'date,tmax_c,tmin_c\n01/02/2001,10,1\n03/04/2001,11,2\n';
    expect((await read('d.csv', text)).found).toMatchObject({ kind: 'unclear', asks: 'dateOrder' });
    const { readings } = await read('d.csv', text, { dateOrder: 'month first' });
    expect(
      [...readings!.daily[0].day].map((day) => new Date(day * 864e5).toISOString().slice(0, 10)),
    ).toEqual(['2001-01-02', '2001-03-04']);
  });

  it('is unpacked, and its bytes are told as they are brought', async () => {
    const packed = gzipSync(dlyText(east));
    let told = 0;
    const blob = new Blob([packed]);
    const tell = (bytes: number): void => void (told = bytes);
    const { found } = await readBrought({ key: 1, name: 'e.dly.gz', blob }, tell, NEVER);
    expect(found).toMatchObject({ kind: 'readings', format: 'GHCN-Daily .dly' });
    expect(told).toBe(packed.length);
  });

  it('may be a list of stations; anything else is refused in one sentence', async () => {
    expect((await read('list.csv', 'id,name,lat,lon,elevation_m\nA,B,31,-42,5\n')).found).toEqual({
      kind: 'list',
      stations: 1,
    });
    expect((await read('x.csv', 'a,b\n1,2\n')).found).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('x.csv, line 1'),
    });
    expect((await read('x.bin', new Uint8Array([0, 1, 2]))).found).toMatchObject({ kind: 'refused' });
  });

  it('stops when nobody waits any more', async () => {
    const stopped = AbortSignal.abort(new Error('stopped'));
    const file = { key: 1, name: 'e.dly', blob: new Blob([dlyText(east)]) };
    await expect(readBrought(file, () => {}, stopped)).rejects.toThrow('stopped');
  });
});

describe('the stations of all files', () => {
  it('wait for a place, then tell their winters; a list among the files tells it too', async () => {
    const stations = new OwnStations();
    stations.take(1, 'e.dly', await read('e.dly', dlyText(east)));
    const [before] = await stations.examine([], NOW);
    expect(before).toMatchObject({ station: { id: east.id }, files: ['e.dly'], record: null });
    await expect(stations.all([], NOW)).rejects.toThrow(east.id);
    const [told] = await stations.examine([{ ...east }], NOW);
    expect(told.record!.winters).toEqual({ complete: 61, first: 1961, last: 2021 });
    stations.take(2, 'list.csv', await read('list.csv', `id,name,lat,lon\n${east.id},Named,31.05,-42.05\n`));
    const [listed] = await stations.examine([], NOW);
    expect(listed).toMatchObject({
      station: { name: 'Named', lat: 31.05 },
      record: { winters: { complete: 61 } },
    });
    stations.forget(1);
    expect(await stations.examine([], NOW)).toEqual([]);
  });

  it('of two files are one station where the ids agree', async () => {
    const stations = new OwnStations();
    const text = dlyText(east).split('\n');
    stations.take(1, 'a.dly', await read('a.dly', text.slice(0, 700).join('\n') + '\n'));
    stations.take(2, 'b.dly', await read('b.dly', text.slice(700).join('\n')));
    const { stations: all } = await stations.all([{ ...east }], NOW);
    expect(all).toHaveLength(1);
    expect(all[0].built.winters.winter.length).toBe(63);
  });
});

describe('the desk of the worker', () => {
  it('keeps nothing of a file whose reading was stopped, even where all its bytes were there', async () => {
    const replies: GatherReply[] = [];
    let stopped = false;
    const desk: GatherDesk = new GatherDesk(
      (reply) => replies.push(reply),
      () => Promise.reject(new Error('offline')),
      // The first time somebody can be heard: the file stops being waited for.
      async () => {
        if (!stopped) void desk.take({ id: 1, kind: 'drop' });
        stopped = true;
      },
    );
    const file = { key: 1, name: 'e.dly', blob: new Blob([dlyText(east)]) };
    await desk.take({ id: 1, kind: 'read', question: file });
    await desk.take({ id: 2, kind: 'examine', question: { stations: [] } });
    expect(replies.some((reply) => reply.id === 1 && 'answer' in reply)).toBe(false);
    expect(replies.filter(({ id }) => id === 2)).toEqual([{ id: 2, answer: [] }]);
  });

  it('answers in order, with a plain sentence where the reader can help it, and nothing for what was dropped', async () => {
    const replies: GatherReply[] = [];
    const desk = new GatherDesk(
      (reply) => replies.push(reply),
      () => Promise.reject(new Error('offline')),
      NOW,
    );
    const file = { key: 1, name: 'e.dly', blob: new Blob([dlyText(east)]) };
    const first = desk.take({ id: 1, kind: 'read', question: file });
    const second = desk.take({ id: 2, kind: 'examine', question: { stations: [] } });
    await desk.take({ id: 2, kind: 'drop' } as never);
    const wish = { id: 'own-1', title: 'x', invented: false, stations: [], sources: [], join: null };
    const third = desk.take({ id: 3, kind: 'make', question: wish });
    await Promise.all([first, second, third]);
    expect(replies.find((reply) => reply.id === 1 && 'answer' in reply)).toBeDefined();
    expect(replies.some(({ id }) => id === 2)).toBe(false);
    expect(replies.find((reply) => reply.id === 3 && 'failure' in reply)).toMatchObject({ plain: true });
  });
});
