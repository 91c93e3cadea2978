/**
 * Writes ways.json: which way of telling dates tells winters left out best. Needs the real records.
 * Run from the repository: npx esbuild tests/reference/dates/compare-table.ts --bundle --platform=node
 *   --format=esm --loader:.sql=text --outfile=.cache/compare-dates.mjs
 *   && node .cache/compare-dates.mjs FOLDER_OF_REAL_RECORDS tests/reference/dates/ways.json
 */
import { createReadStream, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import { cleanDaily } from '../../../analysis/clean/clean-daily.ts';
import { nightsFromDaily } from '../../../analysis/night/nights-from-daily.ts';
import { readRecords } from '../../../analysis/read/read-records.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_HOURS, type NightTable } from '../../../analysis/records/nights.ts';
import { DATE_CHANCES } from '../../../analysis/answer/year.ts';
import { toHundredths } from '../../../analysis/units/temperature.ts';
import { KnownNights } from '../../../analysis/winter/known-nights.ts';
import { SEASON_DAYS, seasonDayOf } from '../../../analysis/winter/season-day.ts';
import { coldMonths, hemisphereOf, winterBounds, winterOf } from '../../../analysis/winter/winter-year.ts';
import { noScores, scoreWays } from './compare-ways.ts';

/** Folders with long daily records; unit, and where those stand whose files don't say. */
const FOLDERS = [
  { name: 'ghcn-daily', lat: 35, lon: -90, unit: 'F' },
  { name: 'aemet-spain', lat: 40, lon: -4, unit: 'C' },
  { name: 'australia-bom', lat: -35, lon: 145, unit: 'C' },
] as const;
const LIMITS = [
  { hours: 0, limitC: 0 },
  { hours: 0, limitC: -2.22 },
  { hours: 4, limitC: -3.33 },
  { hours: 4, limitC: -5.56 },
];
const FEWEST_WINTERS = 45;
const MOST_MISSING = 3;
const KEPT = [20, 30, 43];
const TIMES = 40;

const [folder, out] = process.argv.slice(2);
const sets = { first: KEPT.map(noScores), last: KEPT.map(noScores) };
let series = 0;
let stations = 0;
for (const place of FOLDERS) {
  for (const file of readdirSync(path.join(folder, place.name)).sort()) {
    const read = await nightsOf(path.join(folder, place.name, file), place).catch((error: Error) => {
      console.error(`${file}: ${error.message}`);
      return null;
    });
    if (!read) continue;
    const { table, lat } = read;
    const whole = wholeWinters(table, lat);
    if (whole.length < FEWEST_WINTERS) continue;
    stations++;
    for (const { hours, limitC } of LIMITS) {
      const { first, last } = datesOf(
        table,
        lat,
        whole,
        SUSTAINED_HOURS.indexOf(hours as 0),
        toHundredths(limitC),
      );
      if (first.filter((day) => !Number.isNaN(day)).length < 5) continue;
      series++;
      // The last day counted back from the season's end, so that winters without one stand at the far end too.
      const back = last.map((day) => SEASON_DAYS - 1 - day);
      KEPT.forEach((kept, k) => {
        scoreWays(first, kept, TIMES, series, sets.first[k]);
        scoreWays(back, kept, TIMES, series, sets.last[k]);
      });
    }
    console.error(`${file}: ${whole.length} winters`);
  }
}

const about =
  'Ways of telling dates, from winters kept, judged by those left out: mean quantile loss in days (smaller is better) and share of winters left out that had one by the day told for each chance; made by compare-table.ts from real records';
const rows = KEPT.flatMap((kept, k) =>
  (['first', 'last'] as const).flatMap((which) =>
    Object.entries(sets[which][k]).map(([way, { loss, losses, told, come }]) => ({
      which,
      kept,
      way,
      loss_days: Number((loss / losses).toFixed(4)),
      come: Object.fromEntries(
        DATE_CHANCES.map((chance, c) => [chance, Number((come[c] / told[c]).toFixed(4))]),
      ),
    })),
  ),
);
writeFileSync(out, JSON.stringify({ about, stations, series, times: TIMES, rows }, null, 1) + '\n');

async function nightsOf(
  file: string,
  place: (typeof FOLDERS)[number],
): Promise<{ table: NightTable; lat: number } | null> {
  const stream = Readable.toWeb(createReadStream(file)) as ReadableStream<Uint8Array>;
  const { daily } = await readRecords(stream, { fileName: path.basename(file), unit: place.unit });
  if (daily.length === 0) return null;
  const longest = daily.reduce((a, b) => (b.day.length > a.day.length ? b : a));
  const station = {
    ...longest.station,
    lat: longest.station.lat ?? place.lat,
    lon: longest.station.lon ?? place.lon,
  };
  const { series } = cleanDaily([{ ...longest, station }]);
  return { table: nightsFromDaily(series), lat: station.lat };
}

/** Winters of which no month from October to April (April to October in the south) misses more than three nights. */
function wholeWinters(table: NightTable, lat: number): number[] {
  const hemisphere = hemisphereOf(lat);
  const known = new KnownNights(table);
  const labels = new Set<number>();
  for (let i = 0; i < table.count; i++) labels.add(winterOf(table.firstNight + i, hemisphere));
  return [...labels].filter((winter) => {
    const months = coldMonths(winter, hemisphere);
    const spans = [
      ...months,
      { first: months[0].first - 31, end: months[0].first },
      { first: months[4].end, end: months[4].end + 30 },
    ];
    return spans.every(({ first, end }) => {
      let missing = 0;
      for (let night = first; night < end; night++) if (!known.has(night)) missing++;
      return missing <= MOST_MISSING;
    });
  });
}

function datesOf(
  table: NightTable,
  lat: number,
  winters: readonly number[],
  j: number,
  limit: number,
): { first: number[]; last: number[] } {
  const hemisphere = hemisphereOf(lat);
  const first: number[] = [];
  const last: number[] = [];
  for (const winter of winters) {
    const bounds = winterBounds(winter, hemisphere);
    let [from, to] = [NaN, NaN];
    for (let night = bounds.first; night <= bounds.last; night++) {
      const level = table.sustained[j][night - table.firstNight];
      if (level === undefined || level === MISSING_HUNDREDTHS || level > limit) continue;
      to = seasonDayOf(night, hemisphere);
      if (Number.isNaN(from)) from = to;
    }
    first.push(from);
    last.push(to);
  }
  return { first, last };
}
