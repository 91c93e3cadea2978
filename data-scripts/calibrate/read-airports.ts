import { createReadStream, existsSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';

import { cleanHourly } from '../../analysis/clean/clean-hourly.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { HourlySeries, RawHourlyReadings } from '../../analysis/records/series.ts';
import { readRecords } from '../../analysis/read/read-records.ts';
import { shippedColumnMaps } from '../../analysis/read/shipped-column-maps.ts';
import { AIRPORTS, type Airport } from './airports.ts';

/** An airport with its cleaned hourly record. */
export interface AirportRecord {
  readonly airport: Airport;
  readonly series: HourlySeries;
}

/**
 * Reads and cleans all airports from the folder of hourly files.
 *
 * @throws {InputError} when a file is missing or lacks its station.
 */
export async function readAirports(folder: string): Promise<AirportRecord[]> {
  const maps = shippedColumnMaps();
  const files = new Map<string, readonly RawHourlyReadings[]>();
  const records: AirportRecord[] = [];
  for (const airport of AIRPORTS) {
    let readings = files.get(airport.file);
    if (!readings) {
      readings = await hourlyOf(join(folder, airport.file), airport.file, maps);
      files.set(airport.file, readings);
    }
    const raw = airport.id === null ? readings[0] : readings.find(({ station }) => station.id === airport.id);
    if (!raw) throw new InputError(`${airport.file} has no station ${airport.id ?? ''}.`);
    records.push({ airport, series: cleanHourly([{ ...raw, station: airport.station }]).series });
  }
  return records;
}

async function hourlyOf(
  path: string,
  fileName: string,
  maps: ReturnType<typeof shippedColumnMaps>,
): Promise<readonly RawHourlyReadings[]> {
  if (!existsSync(path))
    throw new InputError(`${path} is missing: give the folder of the hourly airport files.`);
  const stream = Readable.toWeb(createReadStream(path)) as ReadableStream<Uint8Array>;
  return (await readRecords(stream, { fileName, unit: 'F', maps })).hourly;
}
