import { describe, expect, it } from 'vitest';
import type { Fetcher } from '../../../web/data/load-pack.ts';
import { PackState } from '../../../web/state/pack-state.svelte.ts';
import { PACK } from './sample-pack.ts';

const BASE = 'http://localhost/packs/';
const FILES: Record<string, unknown> = {
  'index.json': [PACK.entry, { ...PACK.entry, id: 'second', title: 'Second', path: 'second/' }],
  'made-up/pack.json': PACK.meta,
  'made-up/stations.json': PACK.stations,
  'made-up/places.json': PACK.places,
  'second/pack.json': { ...PACK.meta, id: 'second' },
  'second/stations.json': PACK.stations,
};

/** A server with these files; everything else is 404. */
function serve(files: Record<string, unknown>): Fetcher {
  return async (url) => {
    const value = files[url.slice(BASE.length)];
    return {
      ok: value !== undefined,
      status: value === undefined ? 404 : 200,
      json: async () => (value instanceof Error ? Promise.reject(value) : value),
    };
  };
}

describe('opening a pack', () => {
  it('takes the first of the list, whole even without outlines', async () => {
    const packs = new PackState(BASE, serve(FILES));
    expect(packs.status).toBe('loading');
    await packs.load(null);
    expect([packs.status, packs.open?.entry.id, packs.open?.land, packs.note]).toEqual([
      'ready',
      'made-up',
      null,
      null,
    ]);
    expect(packs.open?.url).toBe('http://localhost/packs/made-up/');
  });

  it('stays open, and loads nothing again, when it is asked for once more', async () => {
    let asked = 0;
    const server = serve(FILES);
    const packs = new PackState(BASE, (url) => (asked++, server(url)));
    await packs.load(null);
    const [open, before] = [packs.open, asked];
    await packs.load(null);
    expect([packs.open, asked, packs.status]).toEqual([open, before, 'ready']);
    await packs.load('second');
    expect(packs.open?.entry.id).toBe('second');
    expect(asked).toBeGreaterThan(before);
  });

  it('takes the one asked for, and lacking places it has none', async () => {
    const packs = new PackState(BASE, serve(FILES));
    await packs.load('second');
    expect(packs.open?.entry.id).toBe('second');
    expect(packs.open?.url).toBe('http://localhost/packs/second/');
    expect(packs.open?.places.postcodes).toEqual([]);
  });

  it('says so when a link names a pack that is not here', async () => {
    const packs = new PackState(BASE, serve(FILES));
    await packs.load('gone');
    expect([packs.status, packs.open?.entry.id]).toEqual(['ready', 'made-up']);
    expect(packs.note).toMatch(/no record pack “gone” here/);
  });

  it.each([
    [{}, /index\.json could not be loaded: the server answered 404/],
    [{ 'index.json': [] }, /lists no record pack/],
    [{ ...FILES, 'made-up/stations.json': new SyntaxError('x') }, /stations\.json arrived damaged/],
    [{ ...FILES, 'made-up/stations.json': [] }, /holds no station/],
    [{ ...FILES, 'made-up/pack.json': { ...PACK.meta, schema: 9 } }, /schema version 9 can't be read/],
  ])('fails with one sentence', async (files, message) => {
    const packs = new PackState(BASE, serve(files));
    await packs.load(null);
    expect(packs.status).toBe('failed');
    expect(packs.error).toMatch(message);
  });

  it('works again after a retry', async () => {
    let down = true;
    const up = serve(FILES);
    const packs = new PackState(BASE, (url) => (down ? Promise.reject(new TypeError('no net')) : up(url)));
    await packs.load(null);
    expect(packs.error).toMatch(/could not be reached/);
    down = false;
    await packs.retry();
    expect([packs.status, packs.error]).toEqual(['ready', null]);
  });

  it('lets the latest choice win', async () => {
    const packs = new PackState(BASE, serve(FILES));
    const first = packs.load(null);
    await Promise.all([first, packs.load('second')]);
    expect(packs.open?.entry.id).toBe('second');
  });
});
