import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { GHCN_DAILY_SOURCE } from '../../../analysis/archive/layout.ts';
import type { NearbyStation } from '../../../analysis/archive/stations-nearby.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { FetchState } from '../../../web/archive/fetch-state.svelte.ts';
import { recordUrl } from '../../../web/archive/fetch-stations.ts';
import type { FetchedPack, MakePack } from '../../../web/archive/gather-port.ts';
import { PassingParts } from '../../../web/archive/part-store.ts';
import { inventedStation } from '../../data-scripts/fetch/invented-stations.ts';
import { LoopbackArchive, recordOf } from '../../data-scripts/fetch/loopback-archive.ts';

/** An id as American stations have it, of no station. */
const AMERICAN = 'USZ00000001';
const [FIRST, SECOND] = ['ZZ000000001', 'ZZ000000002'];
const CODES = [
  { code: '00001', name: 'NEAR', lat: 31.1, lon: -42 },
  { code: '00002', name: 'FAR', lat: 40, lon: -42 },
];
const ENTRY = {
  id: 'own-1',
  title: 'x',
  invented: false,
  path: 'own-1',
  bytes: 1,
  stations: 1,
  winters: { first: 1, last: 2 },
};

let archive: LoopbackArchive;
let base: string;
let store: PassingParts;
let made: FetchedPack[];
beforeEach(async () => {
  archive = new LoopbackArchive();
  const american = inventedStation({ id: AMERICAN, lat: 31, lon: -42, name: 'A' });
  archive.files.set(recordOf(AMERICAN), Buffer.from(american.record));
  base = await archive.open();
  store = new PassingParts();
  made = [];
});
afterEach(() => archive.close());

const station = (id: string): NearbyStation => ({
  ...{ id, name: id, lat: 31, lon: -42, elevationM: 5, distanceKm: 1, bearing: 0 },
  ...{ tmin: [2000, 2020], tmax: null, sharedYears: 0, expectedBytes: 1000 },
});
const keep: MakePack = async (pack) => {
  made.push(pack);
  return ENTRY;
};
function stateWith(make: MakePack, loadPostcodes = async () => CODES): FetchState {
  const how = {
    fetcher: fetch,
    store,
    tries: 1,
    backoffMs: 1,
    silenceMs: 1000,
    met: new Set<string>(),
    noIfRange: new Set<string>(),
  };
  return new FetchState({ how, make, loadPostcodes });
}
const wish = (...ids: string[]) => ({ stations: ids.map(station), base, title: 'Around a place' });

describe('what was fetched', () => {
  it('becomes a pack with the stations that came, their places and the source; then the files are let go', async () => {
    archive.files.delete(recordOf(SECOND));
    const state = stateWith(keep);
    expect(await state.run(wish(FIRST, SECOND))).toBe(ENTRY);
    expect([state.status, state.stations.get(SECOND)]).toEqual(['made', { phase: 'missing' }]);
    const [pack] = made;
    expect(pack).toMatchObject({
      title: 'Around a place',
      invented: false,
      join: null,
      sources: [GHCN_DAILY_SOURCE],
    });
    expect(pack!.files.map(({ name }) => name)).toEqual([`${FIRST}.csv`]);
    expect(await pack!.files[0]!.blob.text()).toBe(archive.files.get(recordOf(FIRST))!.toString());
    expect(pack!.stations).toEqual([{ id: FIRST, name: FIRST, lat: 31, lon: -42, elevationM: 5 }]);
    expect(pack!.places).toBeUndefined();
    expect(await store.state(recordUrl(FIRST, base))).toBeNull();
  });

  it('has ZIP codes near stations of the United States, and does without where their list does not come', async () => {
    await stateWith(keep).run(wish(AMERICAN, FIRST));
    expect(made[0]!.places).toEqual({ postcodes: [CODES[0]], towns: [] });
    expect(made[0]!.sources.map(({ name }) => name)).toEqual([
      expect.stringContaining('GHCN-Daily'),
      expect.stringContaining('Census'),
      expect.stringContaining('GeoNames'),
    ]);
    await stateWith(keep, () => Promise.reject(new Error('no'))).run(wish(AMERICAN));
    expect(made[1]!.places).toBeUndefined();
    expect(made[1]!.sources).toHaveLength(1);
  });

  it('stays when no pack can be made of it, and is not asked for again', async () => {
    const refusing: MakePack = () => Promise.reject(new InputError('There is no room.'));
    const state = stateWith(refusing);
    expect(await state.run(wish(FIRST))).toBeNull();
    expect([state.status, state.error]).toEqual(['failed', 'There is no room.']);
    await stateWith(keep).run(wish(FIRST));
    expect(made).toHaveLength(1);
    expect(archive.requestsOf(recordOf(FIRST))).toHaveLength(1);
  });

  it('says so when none can be used, and when stopped', async () => {
    archive.files.delete(recordOf(FIRST));
    const state = stateWith(keep);
    expect(await state.run(wish(FIRST))).toBeNull();
    expect(state.error).toBe('None of the stations chosen has a record that can be used.');
    archive.break(recordOf(SECOND), { kind: 'stall', afterBytes: 5000 });
    const running = state.run(wish(SECOND));
    while (state.stations.get(SECOND)?.phase !== 'coming') await new Promise((done) => setTimeout(done, 5));
    expect(state.busy).toBe(true);
    state.stop();
    expect(await running).toBeNull();
    expect([state.status, state.error]).toEqual(['stopped', null]);
    expect(made).toEqual([]);
  });
});
