import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceKm } from '../../../analysis/place/distance.ts';
import { Squares, stationsAround } from '../../../analysis/place/stations-around.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';

function station(i: number, lat: number, lon: number, complete = 40): PackStation {
  return {
    id: `S${String(i).padStart(4, '0')}`,
    name: `Invented ${i}`,
    ...{ lat, lon, elevation_m: null, coast_km: null },
    winters: { complete, first: 1960, last: 1999 },
    ...{ basis: 'daily', tile: '' },
  };
}

/** Stations as networks have them: some anywhere, many about a few towns. */
function network(seed: number, count: number, spreadDeg: number, lon0 = -42, lat0 = 34): PackStation[] {
  const random = seededRandom(seed);
  const towns = Array.from({ length: 4 }, () => [random.uniform() - 0.5, random.uniform() - 0.5]);
  return Array.from({ length: count }, (_, i) => {
    const [east, north] =
      i % 3 === 0
        ? [random.uniform() - 0.5, random.uniform() - 0.5]
        : towns[i % 4].map((middle) => middle + 0.03 * random.normal());
    const lon = lon0 + spreadDeg * east;
    return station(i, lat0 + spreadDeg * north, lon > 180 ? lon - 360 : lon);
  });
}

const ids = (stations: readonly PackStation[]) => stations.map(({ id }) => id);

describe('the stations that tell about a point', () => {
  it('always have the 8 nearest among them, however dense the network, and are 80 at most', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom(100, 400, 900),
        fc.constantFrom(3, 8, 20),
        fc.constantFrom(-42, 179.5),
        (seed, count, spreadDeg, lon0) => {
          const stations = network(seed, count, spreadDeg, lon0);
          const squares = new Squares(stations);
          const random = seededRandom(seed + 1);
          for (let k = 0; k < 12; k++) {
            const turned = lon0 + spreadDeg * (random.uniform() - 0.5);
            const point = {
              lat: 34 + spreadDeg * (random.uniform() - 0.5),
              lon: turned > 180 ? turned - 360 : turned,
            };
            const around = ids(squares.at(point).stations);
            expect(around.length).toBeLessThanOrEqual(80);
            const nearest = stations
              .map((entry) => ({ id: entry.id, km: distanceKm(entry, point) }))
              .sort((a, b) => a.km - b.km)
              .filter(({ km }) => km < 240)
              .slice(0, 8);
            for (const { id } of nearest) expect(around).toContain(id);
          }
        },
      ),
      { numRuns: 25, seed: 3 },
    );
  });

  it('are all within 240 km where these are few', () => {
    const stations = network(5, 60, 8);
    const point = { lat: 34.2, lon: -41.7 };
    const around = new Set(ids(stationsAround(stations, point)));
    for (const entry of stations)
      if (distanceKm(entry, point) <= 240) expect(around.has(entry.id)).toBe(true);
  });

  it('are the same for all points of a square, in the order of their ids', () => {
    const squares = new Squares(network(6, 60, 8));
    const a = squares.at({ lat: 34.1, lon: -41.9 });
    expect(squares.at({ lat: 35.9, lon: -40.1 })).toBe(a);
    expect(ids(a.stations)).toEqual([...ids(a.stations)].sort());
  });

  it('have ten complete winters, and stand on the point’s side of the equator', () => {
    const stations = [station(1, 0.3, 10), station(2, 0.1, 10, 9), station(3, -0.1, 10), station(4, 0, 10)];
    expect(ids(stationsAround(stations, { lat: 0.2, lon: 10 }))).toEqual(['S0001', 'S0004']);
    expect(ids(stationsAround(stations, { lat: -0.2, lon: 10 }))).toEqual(['S0003']);
  });

  it('end with more stations than 80 at one single place too', () => {
    const heap = Array.from({ length: 200 }, (_, i) => station(i, 34, -42));
    expect(stationsAround(heap, { lat: 34, lon: -42 })).toHaveLength(80);
  });
});
