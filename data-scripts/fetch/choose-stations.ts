import distance from '@turf/distance';

import { InputError } from '../../analysis/records/input-error.ts';
import type { LocatedStation } from '../../analysis/records/station.ts';
import type { CheckedOptions } from './fetch-options.ts';

/** A station of the archive that was chosen, with what the choice went by. */
export interface ChosenStation extends LocatedStation {
  readonly distanceKm: number;
  /** First and last year that have both minima and maxima. */
  readonly firstYear: number;
  readonly lastYear: number;
}

/** A line of the station list, or undefined where it is none (columns: section IV of the archive's readme). */
export function parseStationLine(line: string): LocatedStation | undefined {
  const id = line.slice(0, 11).trim();
  const lat = Number(line.slice(12, 20).trim() || NaN);
  const lon = Number(line.slice(21, 30).trim() || NaN);
  if (!/^\w{11}$/.test(id) || !(Math.abs(lat) <= 90) || !(Math.abs(lon) <= 180)) return undefined;
  const elevation = line.slice(31, 37).trim();
  const known = elevation !== '' && Number.isFinite(Number(elevation)) && Number(elevation) > -999;
  return { id, name: line.slice(41, 71).trim(), lat, lon, elevationM: known ? Number(elevation) : null };
}

/** Years of one element of a station, from a line of the inventory (section VII of the readme). */
export function parseInventoryLine(
  line: string,
): { id: string; element: string; first: number; last: number } | undefined {
  const [id, element] = [line.slice(0, 11).trim(), line.slice(31, 35).trim()];
  const [first, last] = [Number(line.slice(36, 40)), Number(line.slice(41, 45))];
  return id && element && first > 0 && last >= first ? { id, element, first, last } : undefined;
}

/**
 * Stations within the distance whose minima and maxima share enough years, at most `most` of them. Where there are
 * more, near and long records come first, by distance over the square root of the years: a record four times as long
 * may lie twice as far. Throws {@link InputError} where the list holds no station at all.
 */
export async function chooseStations(
  stationLines: AsyncIterable<string>,
  inventoryLines: AsyncIterable<string>,
  { near, km, most, minYears }: Pick<CheckedOptions, 'near' | 'km' | 'most' | 'minYears'>,
): Promise<ChosenStation[]> {
  const inReach = new Map<string, LocatedStation & { distanceKm: number }>();
  let listed = 0;
  for await (const line of stationLines) {
    const station = parseStationLine(line);
    if (station === undefined) continue;
    listed++;
    const distanceKm = distance([near.lon, near.lat], [station.lon, station.lat], { units: 'kilometers' });
    if (distanceKm <= km) inReach.set(station.id, { ...station, distanceKm });
  }
  if (listed === 0)
    throw new InputError('The station list of the archive holds no station in its documented format');
  const years = new Map<string, { TMIN?: [number, number]; TMAX?: [number, number] }>();
  for await (const line of inventoryLines) {
    const entry = parseInventoryLine(line);
    if (entry === undefined || !inReach.has(entry.id)) continue;
    if (entry.element !== 'TMIN' && entry.element !== 'TMAX') continue;
    years.set(entry.id, { ...years.get(entry.id), [entry.element]: [entry.first, entry.last] });
  }
  const long: ChosenStation[] = [];
  for (const [id, { TMIN, TMAX }] of years) {
    const station = inReach.get(id);
    if (station === undefined || TMIN === undefined || TMAX === undefined) continue;
    const [firstYear, lastYear] = [Math.max(TMIN[0], TMAX[0]), Math.min(TMIN[1], TMAX[1])];
    if (lastYear - firstYear + 1 >= minYears) long.push({ ...station, firstYear, lastYear });
  }
  return long.sort((a, b) => rank(a) - rank(b) || (a.id < b.id ? -1 : 1)).slice(0, most);
}

function rank({ distanceKm, firstYear, lastYear }: ChosenStation): number {
  return distanceKm / Math.sqrt(lastYear - firstYear + 1);
}
