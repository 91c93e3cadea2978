import turfDistance from '@turf/distance';

/** Great-circle distance between two places, km (sphere of 6371.0088 km). Safe across the antimeridian. */
export function distanceKm(a: { lat: number; lon: number }, b: { lat: number; lon: number }): number {
  return turfDistance([a.lon, a.lat], [b.lon, b.lat], { units: 'kilometers' });
}
