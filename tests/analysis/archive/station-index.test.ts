import { describe, expect, it } from 'vitest';

import { firstChoice } from '../../../analysis/archive/first-choice.ts';
import { elevationAt, IndexBuilder } from '../../../analysis/archive/station-index.ts';
import { stationsNearby } from '../../../analysis/archive/stations-nearby.ts';
import { inventedStation, type InventedStation } from '../../data-scripts/fetch/invented-stations.ts';

function indexOf(stations: readonly InventedStation[]) {
  const builder = new IndexBuilder();
  const block = (text: string) => ({ text, firstLine: 1, unfinished: false });
  for (const { inventory } of stations) builder.inventory(block(inventory));
  builder.stations(block(stations.map(({ listLine }) => `${listLine}\n`).join('')));
  return builder.finish();
}

/** A station so many km from 31 N, 42 W in a direction (degrees from north by east), on a sphere of 6371.0088 km. */
function around(n: number, km: number, bearing: number, years = 60, shared = years): InventedStation {
  const perDegree = 111.19508;
  const lat = 31 + (km / perDegree) * Math.cos((bearing * Math.PI) / 180);
  const lon =
    -42 + ((km / perDegree) * Math.sin((bearing * Math.PI) / 180)) / Math.cos((lat * Math.PI) / 180);
  const id = `ZZ${String(n).padStart(9, '0')}`;
  const tmin = [2021 - years, 2020] as [number, number];
  return inventedStation({ id, lat, lon, name: `N${n}`, tmin, tmax: [2021 - shared, 2020] });
}
const PLACE = { lat: 31, lon: -42 };

describe('the index', () => {
  it('keeps what the lists tell of stations with 20 years of minima, exactly', () => {
    const index = indexOf([
      inventedStation({
        id: 'ZZ000000002',
        lat: -30.1234,
        lon: 179.9999,
        name: 'LONG NAME, OF A STATION',
        elevation: '-3.5',
        tmin: [1901, 1920],
        tmax: [1950, 1960],
      }),
      inventedStation({
        id: 'ZZ000000001',
        lat: 89.9,
        lon: -180,
        name: 'A',
        elevation: '-999.9',
        tmin: [2001, 2020],
      }),
      inventedStation({ id: 'ZZ000000003', lat: 0, lon: 0, name: 'NINETEEN', tmin: [2002, 2020] }),
    ]);
    expect(index.count).toBe(2);
    expect([index.ids, index.names]).toEqual(['ZZ000000001\nZZ000000002', 'A\nLONG NAME, OF A STATION']);
    expect([...index.lat, ...index.lon]).toEqual([899_000, -301_234, -1_800_000, 1_799_999]);
    expect([elevationAt(index, 0), elevationAt(index, 1)]).toEqual([null, -3.5]);
    expect([...index.tminFirst, ...index.tminLast]).toEqual([2001, 1901, 2020, 1920]);
    expect([...index.tmaxFirst, ...index.tmaxLast]).toEqual([2001, 1950, 2020, 1960]);
    // Minima, maxima and the invented rain of 1900 to 2024.
    expect([...index.elementYears]).toEqual([20 + 20 + 125, 20 + 11 + 125]);
  });

  it("doesn't count weather that is noted now and then, and passes lines over that are none", () => {
    const { listLine, inventory } = around(1, 10, 0, 30);
    const noise = `${inventory.slice(0, 31)}WT01 1900 2020\n<html>\n\n${'x'.repeat(5000)}\n`;
    const one = indexOf([{ id: 'ZZ000000001', listLine, inventory: noise + inventory, record: '' }]);
    expect([...one.elementYears]).toEqual([30 + 30 + 125]);
  });
});

describe('the stations around a place', () => {
  it('stand by distance over the root of the years, with distance and direction', () => {
    const index = indexOf([around(1, 20, 90, 25), around(2, 39, 180, 100), around(3, 60, 0, 100)]);
    const found = stationsNearby(index, PLACE, 50);
    expect(found.map(({ id }) => Number(id.slice(2)))).toEqual([2, 1]);
    expect(found[1]!.distanceKm).toBeCloseTo(20, 1);
    expect(found[1]!.bearing).toBeCloseTo(90, 0);
    expect(found[0]!.bearing).toBeCloseTo(180, 3);
  });

  it('are found over the 180th meridian and around a pole', () => {
    const index = indexOf([
      inventedStation({ id: 'ZZ000000001', lat: 10, lon: 179.9, name: 'EAST' }),
      inventedStation({ id: 'ZZ000000002', lat: 89.9, lon: 10, name: 'POLAR' }),
    ]);
    const [east] = stationsNearby(index, { lat: 10, lon: -179.9 }, 25);
    expect([east!.id, Math.round(east!.bearing)]).toEqual(['ZZ000000001', 270]);
    expect(stationsNearby(index, { lat: 89.9, lon: -170 }, 25).map(({ id }) => id)).toEqual(['ZZ000000002']);
  });

  it('tell the years that have both minima and maxima', () => {
    const index = indexOf([around(1, 5, 0, 60, 40), around(2, 6, 0, 30, 30)]);
    expect(stationsNearby(index, PLACE, 50).map(({ sharedYears }) => sharedYears)).toEqual([40, 30]);
  });
});

describe('the first choice', () => {
  it('takes the first of each quarter, then the best of the rest', () => {
    // Six to the east nearer than the only ones to the north, south and west.
    const east = [1, 2, 3, 4, 5, 6].map((n) => around(n, 4 + n, 80 + n));
    const index = indexOf([
      ...east,
      around(7, 80, 0),
      around(8, 85, 175),
      around(9, 90, 270),
      around(10, 95, 315),
    ]);
    const chosen = [...firstChoice(stationsNearby(index, PLACE, 100), 6)].map((id) => Number(id.slice(2)));
    expect(chosen.sort((a, b) => a - b)).toEqual([1, 2, 3, 7, 8, 9]);
  });

  it('leaves out stations whose minima and maxima share less than 20 years, and never takes more than wanted', () => {
    const index = indexOf([
      around(1, 5, 0, 60, 19),
      around(2, 50, 0, 60, 20),
      around(3, 50, 90, 60),
      around(4, 50, 180, 60),
    ]);
    const nearby = stationsNearby(index, PLACE, 100);
    expect([...firstChoice(nearby, 10)].sort()).toEqual(['ZZ000000002', 'ZZ000000003', 'ZZ000000004']);
    expect(firstChoice(nearby, 2).size).toBe(2);
    expect(firstChoice([], 10).size).toBe(0);
  });
});
