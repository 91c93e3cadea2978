import fc from 'fast-check';

import { cleanDaily } from '../../analysis/clean/clean-daily.ts';
import { cleanHourly } from '../../analysis/clean/clean-hourly.ts';
import { COLDEST_ON_EARTH_C, WARMEST_ON_EARTH_C } from '../../analysis/clean/bounds.ts';
import { readRecords, type FileReadings } from '../../analysis/read/read-records.ts';
import { shippedColumnMaps } from '../../analysis/read/shipped-column-maps.ts';
import type { Station } from '../../analysis/records/station.ts';
import { bytesOf, dlyLine, gzipOf, streamOf } from '../analysis/read/reading.ts';
import { damaged, damagedBytes, nastyText, NASTY_TEXTS } from './damage.ts';
import { laterOrRefused, must, property, type ReaderProperty } from './reader-property.ts';

const DAYS = Array.from({ length: 12 }, (_, at) => at + 1);
const two = (value: number): string => String(value).padStart(2, '0');
const iso = (day: number): string => `2001-01-${two(day)}`;
const table = (head: string, row: (day: number) => string): string =>
  `${head}\n${DAYS.map(row).join('\n')}\n`;

/** A small sound file of every format, and of some column maps. */
const FILES: readonly (readonly [name: string, text: string])[] = [
  ['a.dly', [
    dlyLine('ZZ000000001', '200101', 'TMAX', DAYS.map((day) => 100 + day)),
    dlyLine('ZZ000000001', '200101', 'TMIN', DAYS.map((day) => day - 30), { 3: 'I' }),
    dlyLine('ZZ000000001', '200102', 'TMIN', DAYS.map((day) => day)),
  ].join('\n')],
  ['b.csv', table('ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME', (day) => `ZZ1,200101${two(day)},TMIN,${day * -3},,,S,0700`)],
  ['c.csv', table('STATION,NAME,LATITUDE,LONGITUDE,ELEVATION,DATE,TMIN_C,TMAX_C', (day) => `ZZ1,"León, ""alto""",31.5,-42,12,${iso(day)},${day / 2},${day + 4}`)],
  ['d.WTH', `*WEATHER DATA : N\n@ INSI LAT LONG ELEV\n ZZ 31 -83 9\n@DATE TMAX TMIN\n${DAYS.map((day) => `960${two(day)} 20.0 13.${day % 10}`).join('\n')}\n`],
  ['e_tmin.txt', `Z9 -29.97 30.95 14\n2001010112 2001011212 0\nDOCK\n${DAYS.join('\n')}\n`],
  ['f-99999-2017', DAYS.map((day) => `2017 01 01 ${two(day)}   -35   -42 10296   190    10     9 -9999     0`).join('\n')],
  ['g.csv', table('DATE,HourlyDryBulbTemperature,HourlyWindSpeed', (day) => `2020-01-01T${two(day)}:52:00,${30 + day},5`)],
  ['h.csv', table('date;tmin', (day) => `${two(day)}/01/2001;${day},5`)],
  ['i.csv', table('date,tmin_f,tmax_f', (day) => `${iso(day)},${28 + day},${50 + day}`)],
]; // prettier-ignore

const maps = shippedColumnMaps();
const read = (bytes: Uint8Array, fileName: string, mostBytes = 1e6, size = 0): Promise<FileReadings | null> =>
  laterOrRefused(() =>
    readRecords(streamOf(bytes, size || undefined), { fileName, unit: 'C', maps, mostBytes }),
  );

function checkStation({ id, lat, lon, elevationM }: Station): void {
  must(typeof id === 'string' && id !== '', 'a station has no id');
  must(lat === null || Math.abs(lat) <= 90, `latitude ${lat}`);
  must(lon === null || Math.abs(lon) <= 180, `longitude ${lon}`);
  must(elevationM === null || (elevationM > -999 && elevationM <= 9000), `height ${elevationM}`);
}

const onEarth = (value: number): boolean =>
  Number.isNaN(value) || (value >= COLDEST_ON_EARTH_C && value <= WARMEST_ON_EARTH_C);
const FIRST_DAY = Date.UTC(1600, 0, 1) / 864e5;
const LAST_DAY = Date.UTC(2501, 0, 1) / 864e5;

/** What was read is whole, and what cleaning leaves of it could have been measured. */
function checkReadings(file: FileReadings): void {
  const count = [...file.daily.map(({ day }) => day), ...file.hourly.map(({ timeUtcH }) => timeUtcH)];
  must(file.rows > 0, 'no row, and not refused');
  must(
    count.reduce((sum, { length }) => sum + length, 0) <= file.rows,
    `${file.rows} rows told, but more given`,
  );
  for (const raw of file.daily) {
    checkStation(raw.station);
    must(
      raw.day.every((day) => day >= FIRST_DAY && day < LAST_DAY),
      'a day that is no day',
    );
    must([raw.tminC, raw.tmaxC, raw.windMs].every((values) => values.every((value) => Math.abs(value) !== Infinity)), 'an endless value'); // prettier-ignore
    must(
      raw.day.every((_, at) => !Number.isNaN(raw.tminC[at]) || !Number.isNaN(raw.tmaxC[at])),
      'a day without a reading',
    );
    const { series } = cleanDaily([raw]);
    must(series.tminC.every(onEarth) && series.tmaxC.every(onEarth), 'a temperature beyond the earth’s');
  }
  for (const raw of file.hourly) {
    checkStation(raw.station);
    must(
      raw.timeUtcH.every((time) => time >= FIRST_DAY * 24 - 24 && time < LAST_DAY * 24 + 24),
      'a time that is no time',
    );
    must(
      raw.tempC.every((value) => Number.isFinite(value)),
      'an hour without a temperature',
    );
    const { series } = cleanHourly([{ ...raw, station: { ...raw.station, lat: 31, lon: -42 } }]);
    must(series.tempC.every(onEarth), 'a temperature beyond the earth’s');
  }
}

const plain = (file: FileReadings | null): string => JSON.stringify(file);
const whole = new Map(
  await Promise.all(
    FILES.map(async ([name, text]) => [name, plain(await read(bytesOf(text), name))] as const),
  ),
);

/** A value in one cell of a plain table; no mark of a missing value, so that nothing may vanish without a word. */
const MARKS = /^\s*$|^-?9{3,5}(\.9)?$|^na$|^nan$|^null$|^[-.]$/i;
const cellText = fc.constantFrom(
  ...NASTY_TEXTS.filter((text) => !MARKS.test(text) && !/[,;\t\r\n"#\u0000]/.test(text)),
);

export const STATION_FILES: readonly ReaderProperty[] = [
  property(
    'station files: any junk is refused in one sentence or read',
    fc.tuple(
      fc.oneof(
        fc.uint8Array({ maxLength: 200 }),
        fc.string({ maxLength: 200 }).map(bytesOf),
        fc.string({ maxLength: 80 }).map((text) => gzipOf(`date,tmin_c\n${text}`)),
        fc.array(fc.oneof(nastyText, fc.constantFrom('date', 'tmin_c', ',', '\n', '2001-01-01', '*WEATHER')), { maxLength: 40 }).map((parts) => bytesOf(parts.join(''))),
        fc.array(fc.constantFrom(dlyLine('ZZ000000001', '200101', 'TMIN', [1, 2]), 'ZZ000000001200101TMIN', ' ', '\n', 'x'), { maxLength: 6 }).map((parts) => bytesOf(parts.join(''))),
        fc.uint8Array({ maxLength: 60 }).map((tail) => Uint8Array.from([0x1f, 0x8b, 8, 0, ...tail])),
      ),
      fc.integer({ min: 1, max: 50 }),
    ), // prettier-ignore
    async ([bytes, size]) => {
      const file = await read(bytes, 'junk_tmin', 1e6, size);
      if (file) checkReadings(file);
    },
  ),
  property(
    'station files: a sound file of any format that was damaged gives whole readings or a sentence',
    fc
      .constantFrom(...FILES)
      .chain(([name, text]) => fc.tuple(fc.constant(name), damaged(fc.constant(text)), fc.boolean())),
    async ([name, text, packed]) => {
      const file = await read(packed ? gzipOf(text) : bytesOf(text), name);
      if (file) checkReadings(file);
    },
  ),
  property(
    'station files: a damaged gzip gives what was packed or a sentence, never something else',
    fc
      .constantFrom(...FILES)
      .chain(([name, text]) => fc.tuple(fc.constant(name), damagedBytes(fc.constant(gzipOf(text))))),
    async ([name, bytes]) => {
      // Without its two marks it is no gzip any more, and what text it then makes is the property above.
      if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return;
      const file = await read(bytes, name);
      must(file === null || plain(file) === whole.get(name), 'other readings than were packed');
    },
  ),
  property(
    'station files: each row of a table is read or told of',
    fc.tuple(fc.array(fc.tuple(fc.nat(11), fc.nat(2), cellText), { minLength: 1, maxLength: 4 })),
    async ([changes]) => {
      const rows = DAYS.map((day) => [iso(day), String(day), String(day + 9)]);
      for (const [row, cell, text] of changes) rows[row][cell] = text;
      const file = await read(
        bytesOf(`date,tmin_c,tmax_c\n${rows.map((row) => row.join(',')).join('\n')}\n`),
        't.csv',
      );
      if (!file) return;
      const bad = file.badRows.reduce((sum, { count }) => sum + count, 0);
      must(file.rows + bad >= rows.length, `${rows.length} rows, ${file.rows} read and ${bad} told of`);
    },
  ),
  property(
    'station files: never more text than allowed is taken, packed or not',
    fc.tuple(fc.constantFrom(...FILES), fc.boolean(), fc.integer({ min: -1, max: 1 })),
    async ([[name, text], packed, over]) => {
      const most = bytesOf(text).length - over;
      const file = await read(packed ? gzipOf(text) : bytesOf(text), name, most);
      must((file !== null) === over <= 0, `${name} of ${bytesOf(text).length} bytes at a limit of ${most}`);
    },
  ),
];
