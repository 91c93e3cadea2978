import { distanceKm } from './distance.ts';
import type { Site } from './site.ts';

/**
 * From how far stations tell best whether a site lies on a slope or in a hollow, km. On the Trentino network 12 and 15 do
 * alike, on flat or thin networks it hardly matters.
 */
const AROUND_KM = 15;
/** Beyond this a station's weight is next to nothing. */
const FARTHEST_KM = 4 * AROUND_KM;
const KM_PER_DEGREE = 111;

/**
 * Height of a site above the stations around it, m: their weighted mean difference, drawn towards 0 as if one more station
 * stood at the site's height, so that a lone station far off tells little and none at all gives 0. Cold air runs off slopes
 * and fills hollows, which height above the sea doesn't show. A station on the site itself tells nothing of its surroundings,
 * so that the figure is continuous over the land and means the same at stations and between them.
 */
export function heightAroundM(site: Site, stations: readonly Site[]): number {
  const { lat, elevationM } = site;
  if (elevationM === null) return 0;
  let sum = 0;
  let weights = 1;
  for (const station of stations) {
    if (station.elevationM === null || KM_PER_DEGREE * Math.abs(station.lat - lat) > FARTHEST_KM) continue;
    const square = (distanceKm(site, station) / AROUND_KM) ** 2;
    // 0 at the site, 1 at AROUND_KM.
    const weight = square * Math.exp(1 - square);
    sum += weight * (elevationM - station.elevationM);
    weights += weight;
  }
  return sum / weights;
}
