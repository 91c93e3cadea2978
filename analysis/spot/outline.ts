import { kinks } from '@turf/kinks';
import type { PlanPoint } from './yard.ts';

/*
 * Turf's kinks reckons with plain x and y, so plan metres go in as they are: east for longitude, north for latitude.
 * (Its areas and distances are those of the globe and would be wrong here.)
 */

/** Where an outline crosses itself, m; `null` where it doesn't. */
export function selfCrossing(outline: readonly PlanPoint[]): PlanPoint | null {
  const ring = [...outline, outline[0]].map(([east, north]) => [east, north]);
  const found = kinks({ type: 'Polygon', coordinates: [ring] }).features[0];
  return found === undefined ? null : [found.geometry.coordinates[0], found.geometry.coordinates[1]];
}

/** Area within an outline, m²; above 0 where its corners are listed anticlockwise. */
export function signedAreaM2(outline: readonly PlanPoint[]): number {
  let doubled = 0;
  outline.forEach(([east, north], at) => {
    const [nextEast, nextNorth] = outline[(at + 1) % outline.length];
    doubled += east * nextNorth - nextEast * north;
  });
  return doubled / 2;
}

/** Length of a line from its first corner to its last, m. */
export function lineLengthM(line: readonly PlanPoint[]): number {
  let sumM = 0;
  for (let at = 1; at < line.length; at++) {
    sumM += Math.hypot(line[at][0] - line[at - 1][0], line[at][1] - line[at - 1][1]);
  }
  return sumM;
}
