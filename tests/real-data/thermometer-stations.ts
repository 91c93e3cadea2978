import { createReadStream } from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import type { KeptNights } from '../../analysis/records/kept-nights.ts';
import { stationFileNights } from '../../analysis/spot/thermometer/station-file.ts';
import { REAL_DATA } from './real-records.ts';

/** Stations within 25 km and 150 m of height, and a point near them: Georgia (Griffin, Williamson), Spain (Salamanca, Madrid, Granada). */
const PAIRS = [
  { files: ['GAGR9626.WTH.gz', 'GAWI9626.WTH.gz'], folder: 'agweather-southeast-us', lat: 33.2, lon: -84.3 },
  { files: ['2867.csv.gz', '2870.csv.gz'], folder: 'aemet-spain', lat: 41.0, lon: -5.6 },
  { files: ['3129.csv.gz', '3195.csv.gz'], folder: 'aemet-spain', lat: 40.4, lon: -3.6 },
  { files: ['3195.csv.gz', '3200.csv.gz'], folder: 'aemet-spain', lat: 40.4, lon: -3.7 },
  { files: ['5514.csv.gz', '5530E.csv.gz'], folder: 'aemet-spain', lat: 37.2, lon: -3.7 },
] as const;
type Pair = (typeof PAIRS)[number];

async function nightsOf({ folder, lat, lon }: Pair, file: string): Promise<KeptNights> {
  const bytes = createReadStream(path.join(REAL_DATA, folder, file));
  const stream = Readable.toWeb(bytes) as ReadableStream<Uint8Array>;
  return (await stationFileNights(stream, file, { lat, lon }, 'C')).nights;
}

/** The nights of each pair, either station first: one plays the station, the other the spot. */
export async function pairsOfNights(): Promise<[station: KeptNights, spot: KeptNights][]> {
  const found: [KeptNights, KeptNights][] = [];
  for (const pair of PAIRS) {
    const [first, second] = [await nightsOf(pair, pair.files[0]), await nightsOf(pair, pair.files[1])];
    found.push([first, second], [second, first]);
  }
  return found;
}
