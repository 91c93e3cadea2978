import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { InputError } from '../../../analysis/records/input-error.ts';
import type { FetchEvent, FetchReport } from '../../../data-scripts/fetch/fetch-archive.ts';
import { fetchArchive } from '../../../data-scripts/fetch/fetch-archive.ts';
import type { FetchOptions } from '../../../data-scripts/fetch/fetch-options.ts';
import { LoopbackArchive, recordOf } from './loopback-archive.ts';

const [FIRST, SECOND, THIRD] = ['ZZ000000001', 'ZZ000000002', 'ZZ000000003'];
const PATH = recordOf(FIRST);

let archive: LoopbackArchive;
let address: string;
let out: string;
let events: FetchEvent[];

beforeEach(async () => {
  archive = new LoopbackArchive();
  address = await archive.open();
  out = mkdtempSync(join(tmpdir(), 'fetch-'));
  events = [];
});

afterEach(async () => {
  await archive.close();
  rmSync(out, { recursive: true, force: true });
});

function fetchAll(more: Partial<FetchOptions> = {}): Promise<FetchReport> {
  const options = { near: { lat: 31, lon: -42 }, km: 60, out, archive: address, pauseMs: 1, backoffMs: 1 };
  return fetchArchive({ ...options, ...more }, (event) => events.push(event));
}

const fetched = (id: string): Buffer => readFileSync(join(out, `${id}.csv`));
const truth = (path: string): Buffer => archive.files.get(path) as Buffer;
const leftovers = (): string[] => readdirSync(out).filter((name) => /\.(part|tmp|plain|json)\b/.test(name));

async function failure(more: Partial<FetchOptions> = {}): Promise<string> {
  const error = await fetchAll(more).then(
    () => expect.unreachable('the fetch should have failed'),
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(InputError);
  expect((error as Error).message).not.toContain('\n');
  return (error as Error).message;
}

describe('a whole archive', () => {
  it('brings the near, long stations, their list and their provenance', async () => {
    const report = await fetchAll();
    expect(report.stations.map(({ id }) => id)).toEqual([FIRST, SECOND, THIRD]);
    expect(report.stations.map(({ tminDays }) => tminDays)).toEqual([400, 400, 400]);
    for (const id of [FIRST, SECOND, THIRD]) expect(fetched(id)).toEqual(truth(recordOf(id)));
    expect(readFileSync(join(out, 'stations.csv'), 'utf8')).toBe(
      'id,name,lat,lon,elevation_m\n' +
        'ZZ000000001,TERN POINT,31,-42,12.5\n' +
        'ZZ000000002,"EWER, UPPER WEIR",31.2,-42.1,\n' +
        'ZZ000000003,CORROW,30.8,-41.7,12.5\n',
    );
    const sources = JSON.parse(readFileSync(join(out, 'sources.json'), 'utf8'));
    expect(sources.sources[0]).toEqual({
      name: expect.stringContaining('GHCN-Daily'),
      licence: expect.stringContaining('public domain'),
      attribution: expect.stringContaining('Menne'),
    });
    expect(sources.files).toHaveLength(5);
    expect(leftovers()).toEqual(['sources.json']);
  });

  it('asks only for what has changed when run again', async () => {
    await fetchAll();
    archive.seen.length = 0;
    archive.files.set(
      recordOf(SECOND),
      Buffer.concat([truth(recordOf(SECOND)), Buffer.from(`${SECOND},20240101,TMIN,5,,,7,\n`)]),
    );
    await fetchAll();
    expect(archive.seen.map(({ status }) => status)).toEqual([304, 304, 304, 200, 304]);
    expect(fetched(SECOND)).toEqual(truth(recordOf(SECOND)));
  });

  it('takes at most --most, and says when none is in reach', async () => {
    expect((await fetchAll({ most: 1 })).stations).toHaveLength(1);
    expect(await failure({ near: { lat: -31, lon: 100 } })).toContain(
      'has no station with minima and maxima over 20',
    );
  });

  it('works below a path of a mirror, with or without its last slash', async () => {
    for (const [path, body] of [...archive.files]) archive.files.set(`/mirror${path}`, body);
    expect((await fetchAll({ archive: `${address}mirror` })).stations).toHaveLength(3);
  });
});

describe('a bad line', () => {
  it('goes on where the connection was cut', async () => {
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 }, { kind: 'cut', afterBytes: 3000 });
    await fetchAll();
    const requests = archive.requestsOf(PATH);
    expect(requests.map(({ status }) => status)).toEqual([200, 206, 206]);
    expect(requests.map(({ range }) => range)).toEqual([undefined, 'bytes=5000-', 'bytes=8000-']);
    expect(fetched(FIRST)).toEqual(truth(PATH));
  });

  it('goes on in a second run with what the first has brought', async () => {
    archive.break(PATH, ...Array.from({ length: 2 }, () => ({ kind: 'cut', afterBytes: 4000 }) as const));
    expect(await failure({ tries: 1 })).toMatch(
      /could not be fetched in 1 tries: the connection was cut after 4000 of/,
    );
    expect(existsSync(join(out, `${FIRST}.csv`))).toBe(false);
    expect(readFileSync(join(out, `${FIRST}.csv.part`))).toEqual(truth(PATH).subarray(0, 4000));
    await fetchAll();
    expect(archive.requestsOf(PATH).map(({ range }) => range)).toEqual([
      undefined,
      'bytes=4000-',
      'bytes=8000-',
    ]);
    expect(fetched(FIRST)).toEqual(truth(PATH));
    expect(leftovers()).toEqual(['sources.json']);
  });

  it('begins anew when the file has changed in between', async () => {
    archive.break(PATH, { kind: 'cut', afterBytes: 4000 });
    await failure({ tries: 1 });
    archive.files.set(PATH, Buffer.from(truth(PATH).toString().replaceAll('TMIN,-', 'TMIN,1')));
    await fetchAll();
    expect(fetched(FIRST)).toEqual(truth(PATH));
  });

  it('begins anew where the archive knows no ranges', async () => {
    archive.ranges = false;
    archive.break(PATH, { kind: 'cut', afterBytes: 4000 });
    await fetchAll();
    expect(archive.requestsOf(PATH).map(({ status }) => status)).toEqual([200, 200]);
    expect(fetched(FIRST)).toEqual(truth(PATH));
  });

  it('begins anew where nothing tells whether the file is still the same', async () => {
    archive.validators = false;
    archive.break(PATH, { kind: 'cut', afterBytes: 4000 });
    await fetchAll();
    expect(archive.requestsOf(PATH).map(({ range }) => range)).toEqual([undefined, undefined]);
    expect(fetched(FIRST)).toEqual(truth(PATH));
  });

  it('gives up on silence', async () => {
    archive.break(PATH, { kind: 'silence' }, { kind: 'silence' });
    expect(await failure({ tries: 2, silenceMs: 50 })).toContain('nothing came for 0.05 s');
  });

  it('stops when told to, and goes on later', async () => {
    const stop = new AbortController();
    archive.break(PATH, { kind: 'silence' });
    setTimeout(() => stop.abort(), 200);
    expect(await failure({ signal: stop.signal })).toContain('stopped');
    expect((await fetchAll()).stations).toHaveLength(3);
  });
});

describe('answers other than the file', () => {
  it('lists a station without a record and takes the others', async () => {
    archive.files.delete(recordOf(SECOND));
    const report = await fetchAll();
    expect(report.missing).toEqual([SECOND]);
    expect(report.stations.map(({ id }) => id)).toEqual([FIRST, THIRD]);
    expect(readFileSync(join(out, 'stations.csv'), 'utf8')).not.toContain(SECOND);
    expect(events).toContainEqual({ kind: 'end', file: `${SECOND}.csv`, outcome: 'missing' });
  });

  it('tries again after 503, and waits as long as it is asked to', async () => {
    archive.break(PATH, { kind: 'status', status: 503, retryAfter: '1' }, { kind: 'status', status: 503 });
    const before = performance.now();
    await fetchAll();
    expect(performance.now() - before).toBeGreaterThanOrEqual(1000);
    const waits = events.flatMap((event) => (event.kind === 'again' ? [event.waitMs] : []));
    expect(waits).toEqual([1000, 2]);
    expect(fetched(FIRST)).toEqual(truth(PATH));
  });

  it('gives up on a 503 that stays, or asks for too long a wait', async () => {
    archive.break(PATH, ...Array.from({ length: 3 }, () => ({ kind: 'status', status: 503 }) as const));
    expect(await failure({ tries: 3 })).toContain(
      'could not be fetched in 3 tries: the archive answered 503',
    );
    archive.break(PATH, { kind: 'status', status: 503, retryAfter: '86400' });
    expect(await failure()).toContain('in 1 tries');
  });

  it('does not try again what is refused', async () => {
    archive.break(PATH, { kind: 'status', status: 403 });
    expect(await failure()).toContain('answered 403 Forbidden');
    expect(archive.requestsOf(PATH)).toHaveLength(1);
  });

  it('follows a redirect, but not for ever and not away from the web', async () => {
    archive.files.set('/elsewhere', truth(PATH));
    archive.break(PATH, { kind: 'redirect', to: '/elsewhere' });
    await fetchAll();
    expect(fetched(FIRST)).toEqual(truth(PATH));
    archive.break(PATH, ...Array.from({ length: 9 }, () => ({ kind: 'redirect', to: PATH }) as const));
    expect(await failure()).toContain('redirects more than 5 times');
    const other = recordOf(SECOND);
    archive.break(PATH);
    archive.break(other, { kind: 'redirect', to: 'file:///etc/hostname' });
    await expect(fetchAll({ tries: 1, out: mkdtempSync(join(out, 'x-')) })).rejects.toThrow(/redirects/);
  });

  it('refuses a page that a network puts in the place of a record', async () => {
    const body = Buffer.from('<html>\nPlease log in\n</html>\n');
    archive.break(PATH, { kind: 'replace', body, headers: { ETag: 'W/"login"' } });
    expect(await failure()).toContain('line 1: "<html>" is not a value of station ZZ000000001');
    expect(existsSync(join(out, `${FIRST}.csv`))).toBe(false);
  });

  it('says so when the address is no such archive', async () => {
    archive.files.delete('/ghcnd-stations.txt');
    expect(await failure()).toContain('is no GHCN-Daily archive: it has no ghcnd-stations.txt');
    archive.files.set('/ghcnd-stations.txt', Buffer.from('<html></html>\n'));
    expect(await failure()).toContain('holds no station in its documented format');
    expect(await failure({ archive: 'http://127.0.0.1:9/', tries: 2 })).toContain(
      'no connection to 127.0.0.1:9',
    );
  });
});

describe('damaged bodies', () => {
  const inGzip = (body: Buffer): { body: Buffer; headers: Record<string, string> } => ({
    body,
    headers: { 'Content-Encoding': 'gzip', ETag: '"packed"' },
  });

  it('unpacks a body that comes in gzip though plain was asked for', async () => {
    archive.break(PATH, { kind: 'replace', ...inGzip(gzipSync(truth(PATH))) });
    await fetchAll();
    expect(fetched(FIRST)).toEqual(truth(PATH));
    expect(leftovers()).toEqual(['sources.json']);
  });

  it('refuses a truncated gzip, leaves nothing under the final name, and mends it in the next run', async () => {
    const packed = gzipSync(truth(PATH));
    const fault = { kind: 'replace', ...inGzip(packed.subarray(0, packed.length - 20)) } as const;
    archive.break(PATH, fault, fault);
    expect(await failure({ tries: 2 })).toContain('its gzip stream is truncated');
    expect(existsSync(join(out, `${FIRST}.csv`))).toBe(false);
    expect(existsSync(join(out, `${FIRST}.csv.part`))).toBe(true);
    await fetchAll();
    expect(fetched(FIRST)).toEqual(truth(PATH));
    expect(leftovers()).toEqual(['sources.json']);
  });

  it('takes away what a run left that was killed while it unpacked', async () => {
    writeFileSync(join(out, `${FIRST}.csv.part.plain`), truth(PATH).subarray(0, 100));
    await fetchAll();
    expect(fetched(FIRST)).toEqual(truth(PATH));
    expect(leftovers()).toEqual(['sources.json']);
  });

  it('refuses what only claims to be gzip', async () => {
    const fault = { kind: 'replace', ...inGzip(Buffer.from('no gzip at all\n')) } as const;
    archive.break(PATH, fault);
    expect(await failure({ tries: 1 })).toContain('its gzip stream is damaged');
  });

  it('refuses a body shorter than its stated length', async () => {
    archive.validators = false;
    const promised = truth(PATH).length + 100;
    archive.break(PATH, { kind: 'short', promised }, { kind: 'short', promised });
    expect(await failure({ tries: 2 })).toContain(`after ${promised - 100} of ${promised} bytes`);
    expect(existsSync(join(out, `${FIRST}.csv`))).toBe(false);
  });

  it('refuses a body whose MD5 is not its ETag', async () => {
    const wrong = Buffer.from(truth(PATH).toString().replace('TMIN,-20', 'TMIN,-21'));
    const ETag = `"${'0123456789abcdef'.repeat(2)}"`;
    archive.break(PATH, { kind: 'replace', body: wrong, headers: { ETag } });
    expect(await failure({ tries: 1 })).toContain('its MD5 is not the 0123456789abcdef');
    await fetchAll();
    expect(fetched(FIRST)).toEqual(truth(PATH));
  });

  it('does not take a multipart ETag for an MD5', async () => {
    archive.break(PATH, {
      kind: 'replace',
      body: truth(PATH),
      headers: { ETag: `"${'0123456789abcdef'.repeat(2)}-4"` },
    });
    expect((await fetchAll()).stations).toHaveLength(3);
  });

  it('refuses a body of untold length that ends in the middle of a line', async () => {
    archive.lengths = archive.validators = false;
    archive.break(PATH, { kind: 'replace', body: truth(PATH).subarray(0, 5003) });
    expect(await failure({ tries: 1 })).toContain('ends in the middle of a line');
    expect((await fetchAll()).stations).toHaveLength(3);
  });
});
