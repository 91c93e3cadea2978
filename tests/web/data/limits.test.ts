import { expect, it } from 'vitest';

import { BATCH_LIMITS } from '../../../analysis/answer/batch.ts';
import { readBatch } from '../../../analysis/answer/batch-read.ts';
import { readStock, STOCK_BYTES_MOST, STOCK_ROWS_MOST } from '../../../analysis/answer/stock.ts';
import { COLUMN_MAP_LONGEST, parseColumnMap } from '../../../analysis/read/column-map.ts';
import { LIST_LONGEST, readStationList } from '../../../analysis/read/station-list.ts';
import { checkPackStations, checkPlaces, PACK_LIMITS } from '../../../analysis/records/check-pack.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import { READINGS_BYTES_MAX, readReadings } from '../../../analysis/spot/thermometer/read-readings.ts';
import { readYardFile, YARD_BYTES_MAX, yardFileText } from '../../../analysis/spot/yard-file.ts';
import { checkSize } from '../../../web/data/check-size.ts';
import { readOnlyQuestion, STATEMENT_LONGEST } from '../../../web/engine/read-only.ts';
import { checkSizes } from '../../../web/gather/gather-pack.ts';
import { ALL_BYTES_MAX, FILE_BYTES_MAX, FILES_MAX } from '../../../web/gather/limits.ts';
import { PICTURE_BYTES_MAX } from '../../../web/yard/underlaid-picture.ts';

const file = (size: number): Blob => ({ size, name: 'f' }) as unknown as Blob;
const map = JSON.stringify({ kind: 'daily', columns: { date: 'd', tmin: 't' } });
const station = {
  id: 'a',
  name: 'A',
  lat: 1,
  lon: 1,
  elevation_m: 1,
  winters: { complete: 1 },
  tile: 'n00e000',
};
const stations = (count: number) =>
  Array.from({ length: count }, (_, at) => ({ ...station, id: String(at) }));
const town = { name: 'A', lat: 1, lon: 1, rank: 1 };
const padded = (text: string, length: number): string => text + ' '.repeat(length - text.length);

/** Each limit: its value, and a reader given as much. */
const LIMITS: readonly (readonly [what: string, most: number, read: (size: number) => unknown])[] = [
  ['a batch, letters', BATCH_LIMITS.bytes, (size) => readBatch(padded('zip\n1', size), 'f')],
  ['a batch, rows', BATCH_LIMITS.rows, (rows) => readBatch(`zip\n${'1\n'.repeat(rows)}`, 'f')],
  ['stock, letters', STOCK_BYTES_MOST, (size) => readStock(padded('type\nlime', size))],
  ['stock, lines', STOCK_ROWS_MOST, (rows) => readStock(`type\n${'lime\n'.repeat(rows)}`)],
  ['a column map, letters', COLUMN_MAP_LONGEST, (size) => parseColumnMap(padded(map, size), 'f')],
  [
    'a list of stations, letters',
    LIST_LONGEST,
    (size) => readStationList(padded('id,lat,lon\na,1,1', size), 'f'),
  ],
  ['stations of a pack', PACK_LIMITS.stations, (count) => checkPackStations(stations(count), 'f')],
  ['towns of a pack', PACK_LIMITS.places, (count) => checkPlaces({ towns: Array(count).fill(town) }, 'f')],
  [
    'a yard file, letters',
    YARD_BYTES_MAX,
    (size) => readYardFile(padded(yardFileText(READY_YARDS[0].yard), size), 'f'),
  ],
  [
    'readings, letters',
    READINGS_BYTES_MAX,
    (size) => readReadings(padded('2024-01-05,1\n2024-01-06,1\n2024-01-07,1\n', size), 'f'),
  ],
  ['a statement, letters', STATEMENT_LONGEST, (size) => readOnlyQuestion(`select${'x'.repeat(size - 6)}`, 1)],
  ['a picture, bytes', PICTURE_BYTES_MAX, (size) => checkSize({ name: 'f', size }, PICTURE_BYTES_MAX)],
  ['a station file, bytes', FILE_BYTES_MAX, (size) => checkSize({ name: 'f', size }, FILE_BYTES_MAX)],
  ['files brought, bytes together', ALL_BYTES_MAX, (size) => checkSizes([file(size - 5), file(5)])],
  ['files brought at a time', FILES_MAX, (count) => checkSizes(Array(count).fill(file(1)))],
];

it.each(LIMITS)(
  '%s: as much as allowed is taken, one more is refused in one sentence with the limit',
  (_, most, read) => {
    read(most);
    const refusal = (() => {
      try {
        read(most + 1);
      } catch (error) {
        return error;
      }
      return null;
    })();
    expect(refusal).toBeInstanceOf(InputError);
    expect((refusal as InputError).message).toMatch(/\d.*\d.*\.$/);
  },
);
