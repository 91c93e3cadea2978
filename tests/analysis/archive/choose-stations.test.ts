import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { chooseStations } from '../../../analysis/archive/choose-stations.ts';
import { parseInventoryLine, parseStationLine } from '../../../analysis/archive/list-lines.ts';
import type { InventedStation } from '../../data-scripts/fetch/invented-stations.ts';
import { inventedStation } from '../../data-scripts/fetch/invented-stations.ts';

describe('lines of the archive', () => {
  it('reads a station line as the archive publishes it', () => {
    const line = 'AG000060390  36.7167    3.2500   24.0    ALGER-DAR EL BEIDA             GSN     60390';
    expect(parseStationLine(line)).toEqual({
      id: 'AG000060390',
      name: 'ALGER-DAR EL BEIDA',
      lat: 36.7167,
      lon: 3.25,
      elevationM: 24,
    });
  });

  it('takes -999.9 for an unknown elevation and nothing for a broken line', () => {
    const { listLine } = inventedStation({
      id: 'ZZ000000001',
      lat: -5,
      lon: 179.5,
      elevation: '-999.9',
      name: 'A',
    });
    expect(parseStationLine(listLine)).toMatchObject({ lat: -5, lon: 179.5, elevationM: null });
    for (const line of ['', '<html>', listLine.replace('-5.0000', '-95.000'), listLine.slice(0, 15)]) {
      expect(parseStationLine(line)).toBeUndefined();
    }
  });

  it('reads an inventory line by the columns of the readme, section VII', () => {
    const line = 'AG000060390  36.7167    3.2500 TMIN 1940 2024';
    expect(parseInventoryLine(line)).toEqual({ id: 'AG000060390', element: 'TMIN', first: 1940, last: 2024 });
    expect(parseInventoryLine('AG000060390  36.7167    3.2500 TMIN 2024 1940')).toBeUndefined();
  });
});

async function* each(lines: string[]): AsyncGenerator<string> {
  yield* lines;
}

function choose(stations: InventedStation[], near: { lat: number; lon: number }, km: number, most = 25) {
  return chooseStations(
    each(stations.map(({ listLine }) => listLine)),
    each(stations.flatMap(({ inventory }) => inventory.split('\n'))),
    { near, km, most, minYears: 20 },
  );
}

describe('the choice', () => {
  it('reaches over the 180th meridian and around a pole', async () => {
    const east = inventedStation({ id: 'ZZ000000001', lat: 10, lon: 179.9, name: 'EAST' });
    const polar = inventedStation({ id: 'ZZ000000002', lat: 89.9, lon: 10, name: 'POLAR' });
    // 0.2 degrees of longitude at 10 N: 0.2 * 111.195 km * cos 10 = 21.90 km on a sphere of 6371.0088 km.
    const [found] = await choose([east, polar], { lat: 10, lon: -179.9 }, 25);
    expect(found.id).toBe('ZZ000000001');
    expect(found.distanceKm).toBeCloseTo(21.9, 1);
    // Over the pole: 0.1 + 0.1 degrees of latitude = 22.24 km.
    const [over] = await choose([east, polar], { lat: 89.9, lon: -170 }, 25);
    expect(over.distanceKm).toBeCloseTo(22.24, 1);
  });

  it('counts only years that have both minima and maxima', async () => {
    const apart = inventedStation({
      id: 'ZZ000000001',
      lat: 0,
      lon: 0,
      name: 'A',
      tmin: [1900, 1960],
      tmax: [1942, 2000],
    });
    const just = inventedStation({
      id: 'ZZ000000002',
      lat: 0,
      lon: 0,
      name: 'B',
      tmin: [1900, 1960],
      tmax: [1941, 2000],
    });
    const chosen = await choose([apart, just], { lat: 0, lon: 0 }, 10);
    expect(chosen.map(({ id, firstYear, lastYear }) => [id, firstYear, lastYear])).toEqual([
      ['ZZ000000002', 1941, 1960],
    ]);
  });

  it('prefers near and long records: four times the years make up for twice the way', async () => {
    const at = (id: string, lat: number, years: number) =>
      inventedStation({ id, lat, lon: 0, name: id, tmin: [2001 - years, 2000] });
    const stations = [at('ZZ000000001', 0.2, 25), at('ZZ000000002', 0.39, 100), at('ZZ000000003', 0.41, 100)];
    const chosen = await choose(stations, { lat: 0, lon: 0 }, 100);
    expect(chosen.map(({ id }) => id)).toEqual(['ZZ000000002', 'ZZ000000001', 'ZZ000000003']);
  });

  it('never exceeds the distance or the number, and does not depend on the order of the list', async () => {
    const place = fc.record({
      lat: fc.double({ min: -89, max: 89, noNaN: true }),
      lon: fc.double({ min: -179, max: 179, noNaN: true }),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.array(place, { minLength: 1, maxLength: 30 }),
        place,
        fc.integer({ min: 1, max: 9 }),
        async (places, near, most) => {
          const stations = places.map(({ lat, lon }, i) =>
            inventedStation({ id: `ZZ${String(i).padStart(9, '0')}`, lat, lon, name: 'X' }),
          );
          const chosen = await choose(stations, near, 2000, most);
          expect(chosen.length).toBeLessThanOrEqual(most);
          for (const { distanceKm } of chosen) expect(distanceKm).toBeLessThanOrEqual(2000);
          expect(await choose([...stations].reverse(), near, 2000, most)).toEqual(chosen);
        },
      ),
      { numRuns: 60 },
    );
  });
});
