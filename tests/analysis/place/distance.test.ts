import { describe, expect, test } from 'vitest';
import { distanceKm } from '../../../analysis/place/distance.ts';
import gstat from '../../reference/place/gstat-values.json' with { type: 'json' };
import published from '../../reference/place/published.json' with { type: 'json' };

/** Largest error of a sphere against the ellipsoid, as a part of the distance. */
const SPHERE = 0.0056;

describe('great circles against geodesics of the ellipsoid', () => {
  test.each(published.geodesics.pairs)('published: $from to $to', ({ from, to, metres }) => {
    const km = distanceKm({ lat: from[0]!, lon: from[1]! }, { lat: to[0]!, lon: to[1]! });
    expect(Math.abs((km * 1000) / metres - 1)).toBeLessThan(SPHERE);
  });

  const { from_lat_lon_to_lat_lon: pairs, metres } = gstat.geodesics;
  test.each(pairs.map((pair, i) => [pair, metres[i]!] as const))('GeographicLib: %s', (pair, expected) => {
    const km = distanceKm({ lat: pair[0]!, lon: pair[1]! }, { lat: pair[2]!, lon: pair[3]! });
    expect(Math.abs((km * 1000) / expected - 1)).toBeLessThan(SPHERE);
  });
});

test('longitudes a full turn apart are the same place, and no way is longer than half the globe', () => {
  expect(distanceKm({ lat: 31, lon: 182 }, { lat: 31, lon: -178 })).toBeLessThan(1e-9);
  expect(distanceKm({ lat: 90, lon: 0 }, { lat: 90, lon: 123 })).toBeLessThan(1e-9);
  expect(distanceKm({ lat: 0, lon: -90 }, { lat: 0, lon: 90 })).toBeCloseTo(Math.PI * 6371.0088, 3);
});
