import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { bring, type Fetching } from '../../../web/archive/bring.ts';
import { PassingParts } from '../../../web/archive/part-store.ts';
import { LoopbackArchive, recordOf } from '../../data-scripts/fetch/loopback-archive.ts';

const PATH = recordOf('ZZ000000001');

let archive: LoopbackArchive;
let url: string;
let store: PassingParts;

beforeEach(async () => {
  archive = new LoopbackArchive();
  url = new URL(PATH, await archive.open()).href;
  store = new PassingParts();
});
afterEach(() => archive.close());

const kept = async (): Promise<string> => (await store.content(url)).text();

describe('two pages that fetch the same file into one store', () => {
  it('end with it whole, each byte once', async () => {
    const slow = { kind: 'slow', pieceBytes: 1500, everyMs: 2 } as const;
    archive.break(PATH, slow, slow, slow);
    const how: Fetching = {
      fetcher: fetch,
      store,
      tries: 10,
      backoffMs: 1,
      silenceMs: 2000,
      met: new Set(),
      noIfRange: new Set(),
    };
    const page = () => bring({ url, most: 1e6 }, how, { bytes: () => {}, again: () => {} });
    const second = new Promise((resolve) => setTimeout(resolve, 10)).then(page);
    expect(await Promise.all([page(), second])).toEqual(['whole', 'whole']);
    expect(await kept()).toBe(archive.files.get(PATH)!.toString());
  });

  it('never put a piece behind bytes that the other brought', async () => {
    const body = { url, etag: null, lastModified: null, total: null, sentAt: 0 };
    await store.begin(body);
    expect(await store.append(url, new Blob(['abc']), 0)).toBe(true);
    await store.begin(body);
    expect(await store.append(url, new Blob(['def']), 3)).toBe(false);
    expect(await kept()).toBe('');
    await store.discard(url);
    expect(await store.append(url, new Blob(['abc']), 0)).toBe(false);
  });
});
