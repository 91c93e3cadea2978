import { describe, expect, it } from 'vitest';
import { distanceKm } from '../../../analysis/place/distance.ts';
import { nearestStations } from '../../../analysis/place/nearest-stations.ts';
import { stationForPlace } from '../../../analysis/place/station-for-place.ts';

const station = (id: string, lat: number, lon: number, complete = 40) => ({
  id,
  lat,
  lon,
  winters: { complete },
});

describe('distance', () => {
  // Vincenty's geodesic between Paris (48.8566 N, 2.3522 E) and New York (40.7128 N, 74.0060 W) is 5837 km on WGS84
  // (from memory); the sphere may differ from the ellipsoid by 0.5 %.
  it('is within half a percent of the geodesic', () => {
    const km = distanceKm({ lat: 48.8566, lon: 2.3522 }, { lat: 40.7128, lon: -74.006 });
    expect(Math.abs(km / 5837 - 1)).toBeLessThan(0.005);
  });

  // One degree of latitude on the mean sphere: 2 pi 6371.0088 / 360 = 111.195 km.
  it('crosses the antimeridian the short way', () => {
    expect(distanceKm({ lat: 0, lon: 179.5 }, { lat: 0, lon: -179.5 })).toBeCloseTo(111.195, 2);
    expect(distanceKm({ lat: 10, lon: 10 }, { lat: 10, lon: 10 })).toBe(0);
  });
});

describe('stations near a place', () => {
  const stations = [station('b', 30, 0.1), station('a', 30, -0.1), station('far', 35, 0)];

  it('come nearest first, ties by id, none beyond the reach', () => {
    const near = nearestStations(stations, { lat: 30, lon: 0 }, 5, 100);
    expect(near.map((nearby) => nearby.station.id)).toEqual(['a', 'b']);
  });

  it('prefer the nearest with twenty winters, else with any, else the nearest', () => {
    const place = { lat: 30, lon: 0 };
    expect(
      stationForPlace([station('short', 30, 0, 8), station('long', 30.3, 0, 20)], place).station.id,
    ).toBe('long');
    expect(stationForPlace([station('none', 30, 0, 0), station('short', 30.3, 0, 3)], place).station.id).toBe(
      'short',
    );
    expect(stationForPlace([station('none', 30, 0, 0)], place).station.id).toBe('none');
  });

  it('refuse a place beyond the reach of the network with the distance and the limit', () => {
    expect(() => stationForPlace([station('far', 35, 0)], { lat: 30, lon: 0 })).toThrow(
      '30, 0 is 556 km from the nearest station (far); the limit is 100 km',
    );
    expect(() => stationForPlace([], { lat: 30, lon: 0 })).toThrow('the pack has no station');
  });
});
