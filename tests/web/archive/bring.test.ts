import { gzipSync } from 'node:zlib';

import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

import { InputError } from '../../../analysis/records/input-error.ts';
import { bring, type Fetching } from '../../../web/archive/bring.ts';
import { Unreached } from '../../../web/archive/faults.ts';
import { lookAtRecord } from '../../../web/archive/look.ts';
import { PassingParts } from '../../../web/archive/part-store.ts';
import { LoopbackArchive, recordOf } from '../../data-scripts/fetch/loopback-archive.ts';

const ID = 'ZZ000000001';
const PATH = recordOf(ID);

let archive: LoopbackArchive;
let address: string;
let store: PassingParts;
let heard: string[];

beforeEach(async () => {
  archive = new LoopbackArchive();
  address = await archive.open();
  store = new PassingParts();
  heard = [];
});
afterEach(() => archive.close());

const url = (): string => new URL(PATH, address).href;
const truth = (): string => archive.files.get(PATH)!.toString();
const kept = async (): Promise<string> => (await store.content(url())).text();
const asked = () => archive.requestsOf(PATH).map(({ range, ifRange, status }) => [status, range, ifRange]);

/** Patience of a test. */
function usual(): Fetching {
  return {
    ...{ fetcher: fetch, store, tries: 3, backoffMs: 1, silenceMs: 2000 },
    ...{ met: new Set<string>(), noIfRange: new Set<string>() },
  };
}

function bringIt(more: Partial<Fetching> = {}, most = 1e6): Promise<'whole' | 'missing'> {
  return bring(
    { url: url(), most, look: lookAtRecord(ID, 'here') },
    { ...usual(), ...more },
    {
      bytes: () => {},
      again: (reason) => heard.push(reason),
    },
  );
}

async function failure(more: Partial<Fetching> = {}, most?: number): Promise<Error> {
  const error = await bringIt(more, most).then(
    () => expect.unreachable('it should have failed'),
    (reason: unknown) => reason as Error,
  );
  expect(error.message).not.toContain('\n');
  return error;
}

describe('a file that comes whole', () => {
  it('is kept as it was sent and not asked for again', async () => {
    expect(await bringIt()).toBe('whole');
    expect(await kept()).toBe(truth());
    expect(await bringIt()).toBe('whole');
    expect(asked()).toEqual([[200, undefined, undefined]]);
  });

  it('is asked for anew after a week, in one piece, since the archive may have added to it', async () => {
    await bringIt();
    const now = vi.spyOn(Date, 'now').mockReturnValue(Date.now() + 6 * 86_400_000);
    await bringIt();
    expect(asked()).toHaveLength(1);
    now.mockReturnValue(Date.now() + 2 * 86_400_000);
    archive.files.set(PATH, Buffer.from(`${truth()}${truth().trim().split('\n').at(-1)}\n`));
    expect(await bringIt()).toBe('whole');
    now.mockRestore();
    expect(await kept()).toBe(truth());
    expect(asked()).toEqual([
      [200, undefined, undefined],
      [200, undefined, undefined],
    ]);
  });

  it('may come without a length, or compressed on the way', async () => {
    archive.lengths = false;
    expect(await bringIt()).toBe('whole');
    expect(await kept()).toBe(truth());
    await store.discard(url());
    const headers = { 'Content-Encoding': 'gzip' };
    archive.break(PATH, { kind: 'replace', body: gzipSync(truth()), headers });
    expect(await bringIt()).toBe('whole');
    expect(await kept()).toBe(truth());
  });

  it('is told of piece by piece when it comes slowly', async () => {
    archive.break(PATH, { kind: 'slow', pieceBytes: 8000, everyMs: 5 });
    const come: number[] = [];
    const how = { ...usual(), tries: 1, silenceMs: 500 };
    await bring({ url: url(), most: 1e6 }, how, {
      bytes: (bytes, total) => {
        come.push(bytes);
        expect(total).toBe(truth().length);
      },
      again: () => expect.unreachable('it needs no second try'),
    });
    expect(come.length).toBeGreaterThan(3);
    expect(come).toEqual([...come].sort((a, b) => a - b));
    expect(come.at(-1)).toBe(truth().length);
  });
});

describe('a file that breaks off', () => {
  it('is gone on with where it broke, by the ETag where pages may see it', async () => {
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 }, { kind: 'cut', afterBytes: 3000 });
    expect(await bringIt()).toBe('whole');
    const etag = expect.stringMatching(/^"[0-9a-f]{32}"$/) as unknown;
    expect(asked()).toEqual([
      [200, undefined, undefined],
      [206, 'bytes=5000-', etag],
      [206, 'bytes=8000-', etag],
    ]);
    expect(await kept()).toBe(truth());
    expect(heard).toEqual(['the connection was cut', 'the connection was cut']);
  });

  it('is gone on with at a later visit, without what the first has brought', async () => {
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 });
    expect(await failure({ tries: 1 })).toBeInstanceOf(Unreached);
    expect(await kept()).toBe(truth().slice(0, 5000));
    expect(await bringIt()).toBe('whole');
    expect(asked()[1]).toEqual([206, 'bytes=5000-', expect.anything()]);
    expect(await kept()).toBe(truth());
  });

  it('is gone on with by date and length alone where pages see no more, and send no If-Range', async () => {
    // What a browser shows a page of an answer whose server exposes nothing.
    const fetcher: Fetching['fetcher'] = async (to, init) => {
      if ('If-Range' in (init.headers as object)) throw new TypeError('Failed to fetch');
      const answer = await fetch(to, init);
      const headers = new Headers();
      for (const name of ['content-length', 'last-modified', 'content-type']) {
        const value = answer.headers.get(name);
        if (value !== null) headers.set(name, value);
      }
      return new Response(answer.body, { status: answer.status, headers });
    };
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 });
    expect(await bringIt({ fetcher })).toBe('whole');
    expect(asked()[1]).toEqual([206, 'bytes=5000-', undefined]);
    expect(await kept()).toBe(truth());
  });

  it('goes on without If-Range where the server refuses it, and remembers that', async () => {
    const noIfRange = new Set<string>();
    let refused = 0;
    const fetcher: Fetching['fetcher'] = (to, init) => {
      if ('If-Range' in (init.headers as object)) {
        refused++;
        return Promise.reject(new TypeError('Failed to fetch'));
      }
      return fetch(to, init);
    };
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 }, { kind: 'cut', afterBytes: 1000 });
    expect(await bringIt({ fetcher, noIfRange })).toBe('whole');
    expect(refused).toBe(1);
    expect([...noIfRange]).toEqual([new URL(address).origin]);
    expect(asked().map(([status]) => status)).toEqual([200, 206, 206]);
    expect(await kept()).toBe(truth());
  });

  it.each([true, false])(
    'begins anew when the file has changed meanwhile (If-Range sent: %s)',
    async (sent) => {
      archive.break(PATH, { kind: 'cut', afterBytes: 5000 });
      await failure({ tries: 1 });
      archive.files.set(PATH, Buffer.from(truth().replaceAll('TMIN,-', 'TMIN,1')));
      const noIfRange = new Set(sent ? [] : [new URL(address).origin]);
      expect(await bringIt({ noIfRange })).toBe('whole');
      expect(await kept()).toBe(truth());
    },
  );

  it('begins anew where the server knows no ranges, or nothing tells whether it is the same file', async () => {
    archive.ranges = false;
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 });
    expect(await bringIt()).toBe('whole');
    expect(await kept()).toBe(truth());
    await store.discard(url());
    archive.ranges = true;
    archive.validators = false;
    archive.seen.length = 0;
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 });
    expect(await bringIt()).toBe('whole');
    expect(asked().map(([, range]) => range)).toEqual([undefined, undefined]);
    expect(await kept()).toBe(truth());
  });

  it('is tried again when less came than was announced, or the connection falls silent', async () => {
    archive.break(PATH, { kind: 'stall', afterBytes: 4000 });
    expect(await bringIt({ silenceMs: 150 })).toBe('whole');
    expect(heard).toEqual(['nothing came for 1 s']);
    expect(await kept()).toBe(truth());
    await store.discard(url());
    heard = [];
    archive.break(PATH, { kind: 'short', promised: 99_999 });
    expect(await bringIt({ tries: 4 })).toBe('whole');
    expect(heard).toEqual(['the connection was cut', 'the archive has no more of the file that was begun']);
    expect(await kept()).toBe(truth());
  });
});

describe('answers other than the file', () => {
  it('is missing where the archive has none, and what came before is let go', async () => {
    archive.break(PATH, { kind: 'cut', afterBytes: 5000 }, { kind: 'status', status: 404 });
    expect(await bringIt()).toBe('missing');
    expect(await store.state(url())).toBeNull();
  });

  it('tries again on 503 as long after as it is asked to, and gives up in the end', async () => {
    archive.break(PATH, { kind: 'status', status: 503, retryAfter: '1' });
    const before = performance.now();
    expect(await bringIt()).toBe('whole');
    expect(performance.now() - before).toBeGreaterThanOrEqual(990);
    await store.discard(url());
    archive.break(PATH, ...Array.from({ length: 3 }, () => ({ kind: 'status', status: 500 }) as const));
    expect((await failure()).message).toMatch(
      /could not be fetched in 3 tries: the archive answered 500\. What/,
    );
    archive.break(PATH, { kind: 'status', status: 503, retryAfter: '3600' });
    expect((await failure()).message).toMatch(/in 1 tries/);
  });

  it('never tries again what is refused for good', async () => {
    archive.break(PATH, { kind: 'status', status: 403 });
    const error = await failure();
    expect(error).toBeInstanceOf(InputError);
    expect(error).not.toBeInstanceOf(Unreached);
    expect(error.message).toMatch(/can’t be fetched: the archive answered 403\.$/);
    expect(archive.requestsOf(PATH)).toHaveLength(1);
  });

  it("refuses a network's sign-in page in the file's place, and keeps nothing of it", async () => {
    const body = Buffer.from(`<!doctype html><title>Sign in</title>${'<p>Accept our terms</p>'.repeat(40)}`);
    archive.break(PATH, { kind: 'replace', body, headers: { 'Content-Type': 'text/html' } });
    const { message } = await failure();
    expect(message).toContain(`What here sent isn’t the record of ${ID}; it begins “<!doctype html>`);
    expect(await store.state(url())).toBeNull();
  });

  it('refuses what is too large, by its length or while it comes', async () => {
    expect((await failure({}, 9000)).message).toMatch(/has \d+ kB, but at most 9 kB of one file are taken/);
    archive.lengths = false;
    expect((await failure({}, 9000)).message).toMatch(/but at most 9 kB/);
    expect(await store.state(url())).toBeNull();
  });

  it('says both causes when no answer comes at all, and what to do', async () => {
    await archive.close();
    const error = await failure({ tries: 5 });
    expect(error).toBeInstanceOf(Unreached);
    expect(error.message).toMatch(
      /^No answer came from 127\.0\.0\.1:\d+: either the network or the server is down, or/,
    );
    expect(error.message).toContain('it sends no CORS header');
    expect(error.message).toContain('use the address of a mirror or proxy');
    // One that never answered is asked twice, one that did as often as any.
    expect(heard).toEqual(['no answer came']);
    await failure({ tries: 4, met: new Set([new URL(address).origin]) });
    expect(heard).toHaveLength(4);
    archive = new LoopbackArchive();
    await archive.open();
  });
});

describe('stopping', () => {
  it('keeps what has come, and a later fetch goes on with it', async () => {
    archive.break(PATH, { kind: 'stall', afterBytes: 6000 });
    const stop = new AbortController();
    const reason = new Error('stopped by the reader');
    setTimeout(() => stop.abort(reason), 150);
    expect(await failure({ signal: stop.signal })).toBe(reason);
    expect(await kept()).toBe(truth().slice(0, 6000));
    expect(await bringIt()).toBe('whole');
    expect(asked()[1]![1]).toBe('bytes=6000-');
    expect(await kept()).toBe(truth());
  });

  it('ends a wait between tries at once', async () => {
    archive.break(PATH, { kind: 'status', status: 503, retryAfter: '60' });
    const stop = new AbortController();
    setTimeout(() => stop.abort(new Error('stopped')), 100);
    const before = performance.now();
    expect((await failure({ signal: stop.signal })).message).toBe('stopped');
    expect(performance.now() - before).toBeLessThan(5000);
  });
});
