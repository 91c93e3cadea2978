import { t } from '../language/t.ts';
import { distanceKm } from '../place/distance.ts';
import { InputError } from '../records/input-error.ts';
import type { LocatedStation } from '../records/station.ts';
import { parseInventoryLine, parseStationLine } from './list-lines.ts';
import { stationRank } from './station-rank.ts';

/** A station of the archive that was chosen, with what the choice went by. */
export interface ChosenStation extends LocatedStation {
  readonly distanceKm: number;
  /** First and last year that have both minima and maxima. */
  readonly firstYear: number;
  readonly lastYear: number;
}

/** Which stations are wanted. */
export interface StationWish {
  /** Degrees north and east. */
  readonly near: { readonly lat: number; readonly lon: number };
  readonly km: number;
  /** Most stations to take. */
  readonly most: number;
  /** Fewest years with both minima and maxima. */
  readonly minYears: number;
}

/**
 * Stations within the distance whose minima and maxima share enough years, at most `most` of them. Where there are
 * more, near and long records come first, by distance over the square root of the years: a record four times as long
 * may lie twice as far. Throws {@link InputError} where the list holds no station at all.
 */
export async function chooseStations(
  stationLines: AsyncIterable<string>,
  inventoryLines: AsyncIterable<string>,
  { near, km, most, minYears }: StationWish,
): Promise<ChosenStation[]> {
  const inReach = new Map<string, LocatedStation & { distanceKm: number }>();
  let listed = 0;
  for await (const line of stationLines) {
    const station = parseStationLine(line);
    if (station === undefined) continue;
    listed++;
    const away = distanceKm(near, station);
    if (away <= km) inReach.set(station.id, { ...station, distanceKm: away });
  }
  if (listed === 0)
    throw new InputError(t`The station list of the archive holds no station in its documented format`);
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
  return long.sort((a, b) => rankOf(a) - rankOf(b) || (a.id < b.id ? -1 : 1)).slice(0, most);
}

function rankOf({ distanceKm, firstYear, lastYear }: ChosenStation): number {
  return stationRank(distanceKm, lastYear - firstYear + 1);
}
