import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cleanDaily, type CleanedDaily } from '../../../analysis/clean/clean-daily.ts';
import { cleanHourly } from '../../../analysis/clean/clean-hourly.ts';
import { parseColumnMap } from '../../../analysis/read/column-map.ts';
import { readRecords, type FileReadings } from '../../../analysis/read/read-records.ts';
import { StationRegister } from '../../../analysis/gather/station-register.ts';
import { readStationList } from '../../../analysis/read/station-list.ts';
import type { TemperatureUnit } from '../../../analysis/read/units-of-source.ts';
import { streamOf } from './reading.ts';

// Public records of real stations, kept outside the repository; the known bad values and the great freezes are listed
// in the README of that folder.
const folder =
  process.env.REAL_DATA ?? join(import.meta.dirname, '..', '..', '..', '..', 'shared', 'real-data');
const present = existsSync(folder);
if (!present) console.log(`Skipping the real records: no folder ${folder} (set REAL_DATA to it).`);

const mapFolder = join(import.meta.dirname, '..', '..', '..', 'analysis', 'read', 'columns');
const maps = readdirSync(mapFolder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => parseColumnMap(readFileSync(join(mapFolder, file), 'utf8'), file));

function readReal(path: string, unit: TemperatureUnit | null): Promise<FileReadings> {
  return readRecords(streamOf(new Uint8Array(readFileSync(join(folder, path)))), {
    fileName: path,
    unit,
    maps,
  });
}

const cleanedFiles = new Map<string, Promise<CleanedDaily>>();
function cleaned(path: string, unit: TemperatureUnit | null): Promise<CleanedDaily> {
  const known = cleanedFiles.get(path) ?? readReal(path, unit).then((file) => cleanDaily(file.daily));
  cleanedFiles.set(path, known);
  return known;
}

const dayOf = (day: string): number => Date.parse(day) / 86_400_000;

/** Bad values of the table in that README, and their like: file, unit, day, °C as written, the reason that must drop it. */
const BAD: readonly (readonly [string, TemperatureUnit | null, string, number, string])[] = [
  ['agweather-southeast-us/GAWU9626.WTH.gz', null, '2001-11-13', -87.7, 'spike'],
  ['agweather-southeast-us/GAAT9626.WTH.gz', null, '2006-01-01', -39.7, 'spike'],
  ['agweather-southeast-us/GAAT9626.WTH.gz', null, '2006-01-02', -39.7, 'spike'],
  ['agweather-southeast-us/UFJA0219.WTH.gz', null, '2016-05-28', -14.2, 'spike'],
  ['ghcn-daily/USW00023271.csv.gz', 'F', '1948-04-30', -17.2, 'spike'],
  ['ghcn-daily/USW00023230_oakland.csv.gz', 'C', '2009-09-23', -17.1, 'spike'],
  ['ghcn-daily/USW00023230_oakland.csv.gz', 'C', '2009-09-24', -17.1, 'spike'],
  ['ghcn-daily/USC00044890.csv.gz', 'F', '1911-01-26', -15, 'spike'],
  ['ghcn-daily/USC00044890.csv.gz', 'F', '1911-01-29', -16.1, 'spike'],
  ['ghcn-daily/USC00044500.csv.gz', 'F', '1905-10-31', -12.2, 'out of season'],
  ['us-cornbelt-network/USC00117551.txt.gz', null, '1987-01-23', -45, 'spike'],
  ['trentino-italy/B2440.csv.gz', 'C', '2006-03-02', -30, 'spike'],
  ['other-daily/durban_0240808A2_tasmin.txt', null, '2011-08-14', 0, 'zero for missing'],
];

/** Real extremes that must stay: file, unit, day, °C. */
const TRUE: readonly (readonly [string, TemperatureUnit | null, string, number])[] = [
  ['ghcn-daily/USW00012916_new_orleans.csv.gz', 'F', '1989-12-23', (11 - 32) / 1.8],
  ['ghcn-daily/USW00012816_1960-2026.csv.gz', null, '1985-01-21', (10 - 32) / 1.8],
  ['ghcn-daily/USW00012816_1960-2022_degF.csv.gz', 'F', '1985-01-21', (10 - 32) / 1.8],
  ['ghcn-daily/USW00013960_dallas_love.csv.gz', 'F', '1989-12-23', (1 - 32) / 1.8],
  ['ghcn-daily/USW00014739_boston.csv.gz', 'F', '2023-02-04', (-10 - 32) / 1.8],
  ['ghcn-daily/USW00003103_flagstaff.csv.gz', 'F', '1978-12-08', (-23 - 32) / 1.8],
  ['ghcn-daily/UK000056225_oxford.csv.gz', 'F', '1982-01-14', (2 - 32) / 1.8],
  ['ghcn-daily/USW00023271.csv.gz', 'F', '1932-12-11', (17 - 32) / 1.8],
  ['ghcn-daily/CA006105976.dly.gz', null, '1933-12-29', (-38 - 32) / 1.8],
  ['ghcn-daily/USC00305816.dly.gz', null, '1934-02-09', (-14 - 32) / 1.8],
  ['agweather-southeast-us/GATI9626.WTH.gz', null, '1996-02-05', -11.1],
  ['agweather-southeast-us/GAAL9626.WTH.gz', null, '1996-02-05', -10.9],
  ['agweather-southeast-us/GAGR9626.WTH.gz', null, '1996-02-05', -15.7],
  ['agweather-southeast-us/GAWI9626.WTH.gz', null, '1996-02-05', -16.5],
  ['aemet-spain/5783.csv.gz', 'C', '1956-02-12', -5.5],
  ['aemet-spain/8501.csv.gz', 'C', '1956-02-11', -7.3],
  ['aemet-spain/9898.csv.gz', 'C', '1956-02-12', -13.2],
  ['aemet-spain/0367.csv.gz', 'C', '1985-01-09', -13],
  ['aemet-spain/9087.csv.gz', 'C', '1962-12-25', -21],
  ['aemet-spain-1950-2024/Vitoria.csv.gz', null, '1962-12-25', -21],
  ['other-daily/algiers.csv.gz', 'C', '1985-01-10', -3.3],
  ['reference-series/fort_collins_1900-1999.csv.gz', null, '1951-02-01', (-41 - 32) / 1.8],
];

describe.skipIf(!present)('real records', () => {
  it.each(BAD)('%s (%s): %s %f °C falls as %s', async (path, unit, day, value, reason) => {
    const { dropped, series } = await cleaned(path, unit);
    const found = dropped.find((drop) => drop.day === dayOf(day) && drop.element === 'tmin');
    expect(found).toMatchObject({ reason });
    expect(found!.valueC).toBeCloseTo(value, 0);
    expect(series.tminC[dayOf(day) - series.firstDay]).toBeNaN();
  });

  it.each(TRUE)('%s (%s): %s %f °C stays', async (path, unit, day, value) => {
    const { series } = await cleaned(path, unit);
    expect(series.tminC[dayOf(day) - series.firstDay]).toBeCloseTo(value, 9);
  });

  it('that may be wrong stay, doubtful', async () => {
    for (const [path, unit, day] of [
      ['us-cornbelt-network/USC00112193.txt.gz', null, '1999-01-03'],
      ['aemet-spain/2870.csv.gz', 'C', '1970-01-02'],
    ] as const) {
      const { doubtful, dropped } = await cleaned(path, unit);
      const that = (value: { day: number; element: string }): boolean =>
        value.day === dayOf(day) && value.element === 'tmin';
      expect([doubtful.some(that), dropped.some(that)], path).toEqual([true, false]);
    }
  });

  it('of one station in °F and in tenths of °C give the same minima', async () => {
    const tenths = (await cleaned('ghcn-daily/USW00012816_1960-2026.csv.gz', null)).series;
    const whole = (await cleaned('ghcn-daily/USW00012816_1960-2022_degF.csv.gz', 'F')).series;
    const shift = whole.firstDay - tenths.firstDay;
    let [compared, different] = [0, 0];
    whole.tminC.forEach((value, at) => {
      const other = tenths.tminC[at + shift]!;
      if (Number.isNaN(value - other)) return;
      compared += 1;
      if (Math.abs(value - other) > 1e-9) different += 1;
    });
    expect(compared).toBeGreaterThan(17_000);
    // A few days were revised by the archive between the two orders.
    expect(different / compared).toBeLessThan(0.005);
  });

  it('of the badly located desert station move by the station list, with a note', async () => {
    const file = await readReal('agweather-southeast-us/AZMC8832.WTH.gz', null);
    const list = readStationList('id,name,lat,lon,elevation_m\nAZMC,,33.07,-111.97,362\n', 'list.csv');
    const register = new StationRegister(list.byId);
    register.note(file.daily[0]!.station, file.fileName);
    expect([register.located('AZMC')!.lat, file.daily[0]!.station.lat]).toEqual([33.07, 35.069]);
    expect(register.moved('AZMC')).toContain('the list was followed');
  });

  it('read at 7 in the morning have their maxima put back', async () => {
    const { notes } = await cleaned('ghcn-daily-michigan/USC00205050.csv.gz', null);
    expect(notes.some((note) => /^\d{4} maxima read in the morning/.test(note))).toBe(true);
  });

  it('all read without a bad row, in every folder, and few unflagged minima fall', async () => {
    const folders: [string, TemperatureUnit | null, number, number][] = [
      ['agweather-southeast-us', null, 9, 0.001], ['aemet-spain', 'C', 78, 0.0005], ['aemet-spain-1950-2024', null, 34, 0.0005],
      ['australia-bom', 'C', 6, 0.0005], ['trentino-italy', 'C', 31, 0.001], ['us-cornbelt-network', null, 112, 0.001],
      ['ghcn-daily-michigan', null, 13, 0.01], ['other-daily', 'C', 7, 0.001], ['ghcn-daily', 'F', 17, 0.001],
    ]; // prettier-ignore
    for (const [name, unit, count, most] of folders) {
      const files = readdirSync(join(folder, name)).filter(
        (file) => /\.(gz|txt|csv)$/.test(file) && !/NOTA|maestro/.test(file),
      );
      expect(files.length, name).toBe(count);
      let [rows, fallen] = [0, 0];
      for (const file of files) {
        const read = await readReal(`${name}/${file}`, unit);
        expect(read.badRows, file).toEqual([]);
        for (const raw of read.daily) {
          const { dropped } = cleanDaily([raw]);
          rows += raw.day.length;
          fallen += dropped.filter(
            (drop) => drop.element === 'tmin' && !drop.reason.startsWith('source flag'),
          ).length;
        }
      }
      console.log(`${name}: ${fallen} of ${rows} minima dropped by rules`);
      expect(fallen / rows, name).toBeLessThan(most);
    }
  }, 240_000);

  it('hourly: ten years of an airport lose nothing, and its great freeze is there', async () => {
    const file = await readReal('hourly/dallas_fort_worth_2012-2021.csv.gz', null);
    const raw = { ...file.hourly[0]!, station: { ...file.hourly[0]!.station, lat: 32.9, lon: -97.02 } };
    const { series, dropped } = cleanHourly([raw]);
    expect(dropped).toEqual([]);
    const at = series.tempC.indexOf(Math.min(...series.tempC));
    // 06:53 local standard time is 12:53 UTC.
    expect(new Date(Math.round(series.timeUtcH[at]! * 60) * 60_000).toISOString()).toBe(
      '2021-02-16T12:53:00.000Z',
    );
    expect(series.tempC[at]).toBeCloseTo((-1 - 32) / 1.8, 9);
  });

  it('hourly: every file reads, the mixed order file without its daily summaries', async () => {
    const names = readdirSync(join(folder, 'hourly')).filter((file) => file.endsWith('.gz'));
    for (const name of names) {
      const file = await readReal(`hourly/${name}`, null);
      expect(file.badRows, name).toEqual([]);
      expect(file.hourly.length, name).toBeGreaterThan(0);
    }
    expect((await readReal('hourly/lcd_full_columns_sample_atlanta_2020.csv.gz', null)).rows).toBe(1945);
  });
});
