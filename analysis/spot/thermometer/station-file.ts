import { t } from '../../language/t.ts';
import { cleanDaily } from '../../clean/clean-daily.ts';
import { cleanHourly } from '../../clean/clean-hourly.ts';
import { mergeNights } from '../../night/merge-nights.ts';
import { nightsFromDaily } from '../../night/nights-from-daily.ts';
import { nightsFromHourly } from '../../night/nights-from-hourly.ts';
import { distanceKm } from '../../place/distance.ts';
import { readRecords } from '../../read/read-records.ts';
import { InputError } from '../../records/input-error.ts';
import type { KeptNights } from '../../records/kept-nights.ts';
import { KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS, type NightTable } from '../../records/nights.ts';
import type { LocatedStation, Station } from '../../records/station.ts';
import { hemisphereOf, winterOf } from '../../winter/winter-year.ts';
import type { ReadingUnit } from './spot-reading.ts';

/** A station's nights from a file of the reader's. */
export interface StationFileNights {
  readonly nights: KeptNights;
  readonly station: Station;
  /** Distance to the place, `null` where the file doesn't say where the station is. */
  readonly awayKm: number | null;
  readonly notes: readonly string[];
}

/** Where the spot is: stands in for a station's coordinates where the file has none, and picks the nearest of several. */
export interface SpotPlace {
  readonly lat: number;
  readonly lon: number;
}

/**
 * Reads a station's file in any format the project reads, cleans it and builds its nights, as the building of a pack does.
 * @param unit of the temperatures, where the file doesn't state it.
 * @param mostBytes most bytes of text, unpacked.
 * @throws {InputError} when the file can't be read, or has no night at or below 10 °C.
 */
export async function stationFileNights(
  stream: ReadableStream<Uint8Array>,
  fileName: string,
  place: SpotPlace,
  unit: ReadingUnit | null,
  mostBytes = Infinity,
): Promise<StationFileNights> {
  const read = await readRecords(stream, { fileName, unit, mostBytes }).catch((error: unknown) => {
    throw unit === null ? withoutOptions(error, fileName) : error;
  });
  const stations = [...read.daily, ...read.hourly].map((raw) => raw.station);
  const station = nearest(stations, place);
  const located: LocatedStation = {
    ...station,
    lat: station.lat ?? place.lat,
    lon: station.lon ?? place.lon,
  };
  const own = <Raw extends { readonly station: Station }>(raws: readonly Raw[]): Raw[] =>
    raws.filter((raw) => raw.station.id === station.id).map((raw) => ({ ...raw, station: located }));
  const [daily, hourly] = [own(read.daily), own(read.hourly)];
  const ofDays = daily.length > 0 ? cleanDaily(daily) : null;
  const ofHours = hourly.length > 0 ? cleanHourly(hourly) : null;
  const fromDays = ofDays && nightsFromDaily(ofDays.series);
  const fromHours = ofHours && nightsFromHourly(ofHours.series);
  const table = fromDays && fromHours ? mergeNights(fromHours, fromDays) : (fromHours ?? fromDays)!;
  const nights = keptOf(table, located.lat);
  if (nights.day.length === 0) {
    throw new InputError(t`${fileName} has no night at or below ${KEPT_NIGHT_MAX_C} °C to compare with.`);
  }
  const lost = (ofDays?.dropped.length ?? 0) + (ofHours?.dropped.length ?? 0);
  return {
    nights,
    station,
    awayKm: station.lat === null || station.lon === null ? null : distanceKm(located, place),
    notes: [
      ...read.notes,
      ...(ofDays?.notes ?? []),
      ...(ofHours?.notes ?? []),
      ...(lost > 0
        ? [t`${lost} readings of the station were taken out as wrong or flagged by their source.`]
        : []),
    ],
  };
}

/** The room of reading speaks of options of commands; on the page the unit is chosen beside the file. */
function withoutOptions(error: unknown, fileName: string): unknown {
  if (!(error instanceof InputError) || !error.message.includes('--unit')) return error;
  return new InputError(t`${fileName} doesn't state the unit of its temperatures: choose °F or °C for it.`);
}

function nearest(stations: readonly Station[], place: SpotPlace): Station {
  const away = ({ lat, lon }: Station): number =>
    lat === null || lon === null ? Infinity : distanceKm({ lat, lon }, place);
  return stations.reduce((a, b) => (away(b) < away(a) ? b : a));
}

/** The nights of a table that a pack would keep. */
function keptOf(table: NightTable, lat: number): KeptNights {
  const rows: number[] = [];
  for (let i = 0; i < table.count; i++) {
    const minimum = table.tmin[i]!;
    if (minimum !== MISSING_HUNDREDTHS && minimum <= KEPT_NIGHT_MAX_C * 100) rows.push(i);
  }
  return {
    day: Int32Array.from(rows, (i) => table.firstNight + i),
    winter: Int16Array.from(rows, (i) => winterOf(table.firstNight + i, hemisphereOf(lat))),
    kind: Uint8Array.from(rows, (i) => table.kind[i]!),
    sustained: table.sustained.map((levels) => Int16Array.from(rows, (i) => levels[i]!)),
    coolHours: Int16Array.from(rows, (i) => table.coolHours[i]!),
  };
}
