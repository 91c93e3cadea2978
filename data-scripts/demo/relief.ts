import { isLand, shoreDistanceKm } from './geography.ts';
import { KM_PER_DEGREE_LAT, KM_PER_DEGREE_LON, segmentDistance } from './shoreline.ts';
import { HILL_MASSES } from './skeleton-hills.ts';
import { RIVERS, type RiverCourse } from './skeleton-waters.ts';

/**
 * Elevation of the invented land, m above the sea; 0 on the sea. A coastal plain that rises slowly inland, rounded hill
 * masses on it, river valleys cut into both, and long gentle swells; smooth everywhere and flat towards the shore.
 */
export function elevationAt(lat: number, lon: number): number {
  if (!isLand(lat, lon)) return 0;
  const coastKm = shoreDistanceKm(lat, lon);
  let landM = 2 + 0.55 * coastKm + swellM(lat, lon);
  const spurs = 0.93 + 0.17 * spurShare(lat, lon);
  for (const hill of HILL_MASSES) {
    const east = (lon - hill.lon) * KM_PER_DEGREE_LON;
    const north = (lat - hill.lat) * KM_PER_DEGREE_LAT;
    const turn = (hill.axisDeg * Math.PI) / 180;
    const along = (east * Math.cos(turn) + north * Math.sin(turn)) / hill.alongKm;
    const across = (north * Math.cos(turn) - east * Math.sin(turn)) / hill.acrossKm;
    landM += hill.heightM * Math.exp(-(along * along + across * across) / 2) * spurs;
  }
  for (const river of RIVERS) landM = cutValley(landM, river, lat, lon);
  return Math.max(1, landM * (1 - Math.exp(-((coastKm + 0.15) / 2.5))));
}

/**
 * How far a place lies below (+) or above (-) the ground around it, m: the mean height on rings of 1.5 and 4 km minus
 * its own. Cold air gathers where it is positive. Sea around counts as ground at height 0.
 */
export function hollowDepthM(lat: number, lon: number): number {
  let sum = 0;
  const directions = 12;
  for (const radiusKm of [1.5, 4]) {
    for (let i = 0; i < directions; i++) {
      const angle = (2 * Math.PI * i) / directions;
      const north = (radiusKm * Math.sin(angle)) / KM_PER_DEGREE_LAT;
      const east = (radiusKm * Math.cos(angle)) / KM_PER_DEGREE_LON;
      sum += elevationAt(lat + north, lon + east);
    }
  }
  return sum / (2 * directions) - elevationAt(lat, lon);
}

/** Long swells of the plain, m, between about -7 and +7. */
function swellM(lat: number, lon: number): number {
  const [x, y] = [lon * 60, lat * 60];
  return (
    3 * Math.sin(x / 3.1 + y / 5.3) + 2.5 * Math.sin(y / 2.3 - x / 6.1) + 1.5 * Math.sin(x / 1.7 - y / 2.1)
  );
}

/** Spurs and dales of the hills, between about -1 and +1, about 8 km from crest to crest. */
function spurShare(lat: number, lon: number): number {
  const [x, y] = [lon * KM_PER_DEGREE_LON, lat * KM_PER_DEGREE_LAT];
  const bent = x + 2.5 * Math.sin(y / 4.2);
  return (
    0.5 * Math.sin(bent / 1.35 + y / 3.3) + 0.5 * Math.sin(y / 1.25 - bent / 2.9 + 1.7 * Math.sin(x / 5))
  );
}

/** Lowers the land towards the river's bed: valleys are narrow in the hills and wide on the plain. */
function cutValley(landM: number, river: RiverCourse, lat: number, lon: number): number {
  let best = Infinity;
  let along = 0;
  const pieces = river.points.length - 1;
  for (let i = 0; i < pieces; i++) {
    const { squaredKm, share } = segmentDistance(river.points[i], river.points[i + 1], lat, lon);
    if (squaredKm < best) {
      best = squaredKm;
      along = (i + share) / pieces;
    }
  }
  const bedM = river.mouthM + (river.sourceM - river.mouthM) * (1 - along) ** 1.7;
  if (landM <= bedM) return landM;
  const widthKm = 1.2 + 3.4 * along * (1 - bedM / (bedM + 120));
  return bedM + (landM - bedM) * (1 - 0.96 * Math.exp(-best / (2 * widthKm * widthKm)));
}
