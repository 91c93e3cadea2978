import { lookRound } from './look-round.ts';
import { AZIMUTHS, type PreparedObstacles } from './obstacles.ts';
import { EYE_M, letThrough } from './sky-view.ts';
import { sunPosition } from './sun-position.ts';
import type { PlanPoint } from './yard.ts';

/** Any year does: declinations come back within 0.1 degrees. */
const SOLSTICES = { north: Date.UTC(2026, 11, 21), south: Date.UTC(2026, 5, 21) };
/** Middles of six equal spans of the 91 days about the solstice. */
const DAYS_FROM_SOLSTICE = [-38, -23, -8, 8, 23, 38];
const STEP_MINUTES = 10;
const DAY_MS = 86_400_000;

/** Where the sun stands in the three months round a latitude's winter solstice. */
export interface WinterSun {
  readonly latDeg: number;
  /** Per moment: the azimuth of `PreparedObstacles` nearest to the sun's bearing, and its elevation's squared sine. */
  readonly azimuth: Int32Array;
  readonly up: Float64Array;
  /** Hours a day that a moment stands for. */
  readonly hours: number;
}

/** The winter sun of a latitude, every ten minutes of six days. */
export function winterSun(latDeg: number): WinterSun {
  const azimuth: number[] = [];
  const up: number[] = [];
  const solstice = latDeg < 0 ? SOLSTICES.south : SOLSTICES.north;
  for (const days of DAYS_FROM_SOLSTICE) {
    for (let minutes = STEP_MINUTES / 2; minutes < 1440; minutes += STEP_MINUTES) {
      const utcMs = solstice + days * DAY_MS + minutes * 60_000;
      const { elevationDeg, bearingDeg } = sunPosition({ latDeg, lonDeg: 0, utcMs });
      if (elevationDeg <= 0) continue;
      azimuth.push(Math.floor((bearingDeg * AZIMUTHS) / 360) % AZIMUTHS);
      up.push(Math.sin((elevationDeg * Math.PI) / 180) ** 2);
    }
  }
  const hours = STEP_MINUTES / 60 / DAYS_FROM_SOLSTICE.length;
  return { latDeg, azimuth: Int32Array.from(azimuth), up: Float64Array.from(up), hours };
}

/** The latitude asked for last: a whole grid is asked for at one. */
let latest: WinterSun | undefined;

/**
 * Mean hours of direct sun a day at a point in the three months round the winter solstice of its hemisphere, if the
 * sky were clear: the middle of the sun's disc stands above the level horizon and what is drawn. Behind a crown only
 * the share counts that the crown lets through. Behind long walls right to 0.1 hours; the edge of a narrow thing's
 * shadow to a quarter of an hour (an azimuth is 5 degrees wide).
 * @param heightM height of the eye above the ground, m
 */
export function winterSunHours(
  prepared: PreparedObstacles,
  [eastM, northM]: PlanPoint,
  latDeg: number,
  heightM = EYE_M,
): number {
  if (latest?.latDeg !== latDeg) latest = winterSun(latDeg);
  if (!lookRound(prepared, eastM, northM, heightM)) return 0;
  const { outlook } = prepared;
  const { azimuth, up, hours } = latest;
  let moments = 0;
  for (let at = 0; at < up.length; at++) {
    if (up[at] > outlook.solid[azimuth[at]]) moments += letThrough(outlook, azimuth[at], up[at]);
  }
  return moments * hours;
}
