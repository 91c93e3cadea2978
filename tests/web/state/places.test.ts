import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPlaces, locateCode } from '../../../web/state/find-place.ts';
import { defaultPlace, resolvePlace } from '../../../web/state/resolve-place.ts';
import type { Place } from '../../../web/state/chosen.ts';
import { PACK } from './sample-pack.ts';

describe('the search for a place', () => {
  it('takes a postcode however it is typed', () => {
    for (const typed of ['SC 101', 'sc101', ' Sc-101 ']) {
      expect(findPlaces(typed, PACK)[0]).toMatchObject({ kind: 'postcode', label: 'SC 101' });
    }
  });

  it('puts the same before the beginning before the middle, and finds names without their accents', () => {
    expect(findPlaces('ha', PACK).map(({ label }) => label)).toEqual(['Harbour', 'SC 101']);
    expect(findPlaces('hille', PACK)[0].label).toBe('Hillé');
    expect(findPlaces('field', PACK).map(({ label }) => label)).toEqual(['New Field', 'SC 117']);
    expect(findPlaces('ZZ3', PACK)[0].label).toBe('Hill Farm');
  });

  it('gives nothing for nothing', () => {
    expect(findPlaces('  ', PACK)).toEqual([]);
    expect(findPlaces('nowhere', PACK)).toEqual([]);
  });
  it('takes a ZIP code with its further four figures, typed or scanned, for the code alone', () => {
    const zips = {
      stations: [],
      places: { towns: [], postcodes: [{ code: '32801', name: 'A', lat: 28, lon: -81 }] },
    };
    for (const typed of ['32801-1234', '328011234', ' 32801-1234 '])
      expect(findPlaces(typed, zips).map(({ label }) => label)).toEqual(['32801']);
    for (const typed of ['32802-1234', '32801-123', '3280112345'])
      expect(findPlaces(typed, zips)).toEqual([]);
  });
  it('bears any text, and gives no more than asked for', () => {
    fc.assert(fc.property(fc.string(), (typed) => findPlaces(typed, PACK, 5).length <= 5));
  });

  it('every hit can be resolved', () => {
    for (const typed of ['s', 'h', 'n', 'm']) {
      for (const { place } of findPlaces(typed, PACK)) expect(resolvePlace(place, PACK).found).not.toBeNull();
    }
  });

  it('knows towns as well as postcodes', () => {
    expect(locateCode('made town', PACK.places)?.lat).toBe(31);
    expect(locateCode('SC 999', PACK.places)).toBeNull();
  });
});

describe('the station for a place', () => {
  it('is the nearest with a long record', () => {
    const { found } = resolvePlace({ by: 'postcode', code: 'SC 117' }, PACK);
    expect(found?.station.id).toBe('ZZ1');
    expect(found?.nearby[0].station.id).toBe('ZZ2');
  });

  it('is the station itself when one was picked, however short its record', () => {
    const { found } = resolvePlace({ by: 'station', id: 'ZZ2' }, PACK);
    expect([found?.station.id, found?.distanceKm]).toEqual(['ZZ2', 0]);
  });

  it('is asked about by its point, at the height the reader gave', () => {
    const request = (place: Place) => resolvePlace(place, PACK).found?.request;
    expect(request({ by: 'postcode', code: 'SC 117', elevationM: 40 })).toEqual({
      by: 'point',
      label: 'SC 117 Newfield',
      lat: 31.11,
      lon: -42,
      elevationM: 40,
    });
    expect(request({ by: 'point', lat: 31, lon: -42 })).toMatchObject({ by: 'point', elevationM: null });
    expect(request({ by: 'station', id: 'ZZ2' })).toEqual({ by: 'station', id: 'ZZ2' });
  });

  it('says in one sentence what is wrong with a place that has none', () => {
    const problem = (place: Parameters<typeof resolvePlace>[0]): string | null =>
      resolvePlace(place, PACK).problem;
    expect(problem({ by: 'station', id: 'XX' })).toBe('There is no station “XX” in this pack.');
    expect(problem({ by: 'postcode', code: 'QQ 1' })).toMatch(/“QQ 1” is not among the postcodes and towns/);
    expect(problem({ by: 'point', lat: 60, lon: 10 })).toMatch(/km from the nearest station/);
  });

  it('starts with the first town, without towns with the longest record', () => {
    expect(defaultPlace(PACK)).toEqual({ by: 'postcode', code: 'Made Town' });
    const bare = { ...PACK, places: { postcodes: [], towns: [] } };
    expect(defaultPlace(bare)).toEqual({ by: 'station', id: 'ZZ1' });
  });
});
