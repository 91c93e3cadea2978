import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { dayNumber, dayOfYear, formatIsoDay } from '../../../analysis/units/calendar.ts';

/** Three invented stations in mid-ocean, 20 km apart: id, latitude, how much colder than the first (°C). */
export const STATIONS = [
  { id: 'ZZTEST1', lat: 31, lon: -42, colderC: 0 },
  { id: 'ZZTEST2', lat: 31.18, lon: -42, colderC: 1 },
  { id: 'ZZTEST3', lat: 31, lon: -41.79, colderC: 2 },
  { id: 'ZZTEST4', lat: 31.1, lon: -42.1, colderC: 1.5 },
];

/** Daily maxima and minima of one station, one line a day: a mild year with cold outbreaks that all stations share. */
export function dailyText(colderC: number, firstYear: number, lastYear: number, seed: number): string {
  const shared = seededRandom(7);
  const own = seededRandom(seed);
  const lines = ['date,tmax,tmin'];
  let outbreakC = 0;
  const last = dayNumber(lastYear, 12, 31);
  for (let day = dayNumber(firstYear, 1, 1); day <= last; day++) {
    const seasonC = 14 - 9 * Math.cos((2 * Math.PI * (dayOfYear(day) - 20)) / 365.25);
    outbreakC = shared.uniform() < 0.03 ? 6 + 8 * shared.uniform() : 0.6 * outbreakC;
    const weatherC = 2.5 * shared.normal();
    const tmin = seasonC - colderC - outbreakC + weatherC + 0.6 * own.normal();
    const tmax = tmin + 8 + 3 * shared.uniform();
    lines.push(`${formatIsoDay(day)},${tmax.toFixed(1)},${tmin.toFixed(1)}`);
  }
  return `${lines.join('\n')}\n`;
}

/** Writes the stations' files and their list into a folder. */
export async function writeInventedFiles(folder: string, firstYear = 1990, lastYear = 2015) {
  await mkdir(folder, { recursive: true });
  const files = await Promise.all(
    STATIONS.map(async ({ id, colderC }, i) => {
      const file = path.join(folder, `${id}.csv`);
      await writeFile(file, dailyText(colderC, firstYear, lastYear, 100 + i));
      return file;
    }),
  );
  const stations = path.join(folder, 'list.csv');
  const rows = STATIONS.map(({ id, lat, lon }) => `${id},Invented ${id},${lat},${lon},10\n`);
  await writeFile(stations, `id,name,lat,lon,elevation_m\n${rows.join('')}`);
  const places = path.join(folder, 'places.csv');
  await writeFile(places, 'code,name,lat,lon\nZZ 1,Invented Quarter,31.02,-42.01\nZZ 9,Far Away,-10,10\n');
  return { files, stations, places };
}

export const SILENT = { read: () => {}, computed: () => {}, tell: () => {} };
export const DESCRIPTION = { id: 'invented', title: 'Invented test pack', invented: true, sources: [] };
