import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Fetcher } from '../../../web/data/load-pack.ts';
import type { KeptPack } from '../../../web/kept/kept-entry.ts';
import { PackState } from '../../../web/state/pack-state.svelte.ts';
import { PACK } from './sample-pack.ts';

const BASE = 'http://localhost/packs/';
const SITE = [PACK.entry, { ...PACK.entry, id: 'second', title: 'Second', path: 'second' }];

function kept(id: string, own = false): KeptPack {
  return {
    entry: { ...PACK.entry, id, title: id, path: id },
    own,
    bytes: 10,
    keptAt: '2026-01-02T03:04:05Z',
  };
}

/** Kept packs answer always; the list of the site as `list` says. */
function fetcher(list: () => Promise<unknown>): Fetcher {
  return async (url) => {
    const name = url.slice(url.lastIndexOf('/') + 1);
    if (name === 'index.json')
      return { ok: true, status: 200, json: await list().then((value) => async () => value) };
    const value = { 'pack.json': PACK.meta, 'stations.json': PACK.stations }[name];
    return { ok: value !== undefined, status: value === undefined ? 404 : 200, json: async () => value };
  };
}

const noNetwork = (): Promise<never> => Promise.reject(new TypeError('no net'));

afterEach(() => void vi.useRealTimers());

describe('packs kept in this browser', () => {
  it('stand after the site’s, none twice, and are looked at only when asked for', async () => {
    const look = vi.fn(async () => [kept('second'), kept('own-1', true)]);
    const packs = new PackState(
      BASE,
      fetcher(async () => SITE),
      look,
    );
    await packs.load(null);
    expect(look).not.toHaveBeenCalled();
    expect(packs.packs.map(({ id }) => id)).toEqual(['made-up', 'second']);
    await packs.lookForKept();
    expect(packs.packs.map(({ id }) => id)).toEqual(['made-up', 'second', 'own-1']);
    expect(packs.kept).toHaveLength(2);
    expect(packs.siteReached).toBe(true);
  });

  it('open by a link though the site has none of that name', async () => {
    const packs = new PackState(
      BASE,
      fetcher(async () => SITE),
      async () => [kept('own-1', true)],
    );
    await packs.load('own-1');
    expect([packs.open?.entry.id, packs.open?.url, packs.note]).toEqual(['own-1', `${BASE}own-1/`, null]);
  });

  it('open without network, the first of them by default', async () => {
    const packs = new PackState(BASE, fetcher(noNetwork), async () => [kept('second'), kept('own-1', true)]);
    await packs.load(null);
    expect([packs.status, packs.open?.entry.id, packs.note, packs.siteReached]).toEqual([
      'ready',
      'second',
      null,
      false,
    ]);
    await packs.load('own-1');
    expect(packs.open?.entry.id).toBe('own-1');
    await packs.load('made-up');
    expect(packs.note).toBe(
      'The record pack “made-up” is not kept on this device, and the site can’t be reached; this is second.',
    );
  });

  it('don’t wait for a list that is slow, and take it in when it comes', async () => {
    vi.useFakeTimers();
    let come: (list: unknown) => void = () => {};
    const packs = new PackState(
      BASE,
      fetcher(() => new Promise((resolve) => (come = resolve))),
      async () => [kept('second')],
    );
    const loading = packs.load(null);
    await vi.advanceTimersByTimeAsync(4100);
    await loading;
    expect([packs.status, packs.open?.entry.id, packs.packs.length]).toEqual(['ready', 'second', 1]);
    come(SITE);
    await vi.advanceTimersByTimeAsync(1);
    expect(packs.packs.map(({ id }) => id)).toEqual(['made-up', 'second']);
  });

  it('are no help where there are none: then it says what is missing', async () => {
    const packs = new PackState(BASE, fetcher(noNetwork), async () => []);
    await packs.load(null);
    expect([packs.status, packs.error]).toEqual([
      'failed',
      'index.json could not be reached; the connection may be down.',
    ]);
  });

  it('tell when the site is there again', async () => {
    let up = false;
    const packs = new PackState(
      BASE,
      fetcher(() => (up ? Promise.resolve(SITE) : noNetwork())),
      async () => [kept('second')],
    );
    await packs.load(null);
    expect(await packs.lookForSite()).toBe(false);
    up = true;
    expect(await packs.lookForSite()).toBe(true);
    expect(packs.packs).toHaveLength(2);
  });
});
