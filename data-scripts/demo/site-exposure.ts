import { coastDistanceKm, isLand } from './geography.ts';
import { elevationAt, hollowDepthM } from './relief.ts';
import { KM_PER_DEGREE_LAT, KM_PER_DEGREE_LON } from './shoreline.ts';

/** A spot where a thermometer stood, and what its surroundings do to the air. */
export interface Site {
  /** Names the site's own random numbers: a station that moved has two sites. */
  readonly key: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number;
  readonly coastKm: number;
  /** How much cold air gathers: 1 deep hollow, 0 even ground, -1 crest. */
  readonly pooling: number;
  /** Share of the sea's temperature in windy air, 0-1. */
  readonly marineWindy: number;
  /** Share of a shore's damping of calm nights and sunny days, 0-1. */
  readonly marineCalm: number;
  /** Built-up share, 0-1: towns keep nights milder. */
  readonly built: number;
}

/** The site at a place, from the land around it; elevation is rounded to whole metres as station lists do. */
export function siteAt(key: string, lat: number, lon: number, built = 0): Site {
  const hollowM = hollowDepthM(lat, lon);
  const seaNear = seaShare(lat, lon, 5);
  const seaFar = seaShare(lat, lon, 28);
  return {
    key,
    lat,
    lon,
    elevationM: Math.round(elevationAt(lat, lon)),
    coastKm: coastDistanceKm(lat, lon),
    pooling: hollowM > 0 ? 1 - Math.exp(-hollowM / 22) : Math.max(-1, hollowM / 60),
    marineWindy: 0.05 * seaNear + 0.2 * seaFar ** 2 + 0.9 * (seaNear * seaFar) ** 5,
    marineCalm: Math.min(0.85, 0.75 * seaNear + 0.5 * seaFar),
    built,
  };
}

/** Share of sea in a disc around a place, 0-1, from 96 points spread evenly over it. */
function seaShare(lat: number, lon: number, radiusKm: number): number {
  const points = 96;
  let sea = 0;
  for (let i = 0; i < points; i++) {
    const radius = radiusKm * Math.sqrt((i + 0.5) / points);
    const angle = i * 2.399963;
    const north = (radius * Math.sin(angle)) / KM_PER_DEGREE_LAT;
    const east = (radius * Math.cos(angle)) / KM_PER_DEGREE_LON;
    if (!isLand(lat + north, lon + east)) sea++;
  }
  return sea / points;
}
