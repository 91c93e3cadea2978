import { distanceKm } from './distance.ts';

/** A point with what its cold depends on; unknown is `null`. */
export interface Site {
  /** Degrees north. */
  readonly lat: number;
  /** Degrees east. */
  readonly lon: number;
  readonly elevationM: number | null;
  readonly coastKm: number | null;
}

/**
 * Kilometres apart that a kilometre of height counts for. Neighbours at unlike heights tell less of each other: a valley's
 * inversion ends on its slopes. Chosen among 0, 50, 100, 200 on the Trentino network (data-scripts/calibrate/README.md);
 * on flat networks it changes nothing.
 */
export const KM_APART_PER_KM_HEIGHT = 200;

/** Distance between two sites for all that falls off with distance, km: along the ground, and by height where both are known. */
export function separationKm(a: Site, b: Site): number {
  const ground = distanceKm(a, b);
  if (a.elevationM === null || b.elevationM === null) return ground;
  return Math.hypot(ground, (KM_APART_PER_KM_HEIGHT * (a.elevationM - b.elevationM)) / 1000);
}
