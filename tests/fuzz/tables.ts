import fc from 'fast-check';

import { BATCH_LIMITS } from '../../analysis/answer/batch.ts';
import { locateBatch } from '../../analysis/answer/batch-places.ts';
import { batchText, readBatch } from '../../analysis/answer/batch-read.ts';
import { readStock, STOCK_AGE_MOST, STOCK_SIZE_LONGEST, stockTable } from '../../analysis/answer/stock.ts';
import { parseColumnMap } from '../../analysis/read/column-map.ts';
import { readRecords } from '../../analysis/read/read-records.ts';
import { shippedColumnMaps } from '../../analysis/read/shipped-column-maps.ts';
import { readStationList } from '../../analysis/read/station-list.ts';
import { CITRUS_TYPES, findType } from '../../analysis/tree/catalogue.ts';
import { placesIn } from '../../data-scripts/build/read-places.ts';
import { plainCsv } from '../../web/format/export-csv.ts';
import { bytesOf, streamOf } from '../analysis/read/reading.ts';
import { anyText, damaged, damagedBytes, damagedJsonText } from './damage.ts';
import { laterOrRefused, must, property, readOrRefused, type ReaderProperty } from './reader-property.ts';

const maps = shippedColumnMaps();

const STATION_LISTS = [
  'id,name,lat,lon,elevation_m,file\nZZ1,"León, alto",31.5,-42,12,a.dly\nZZ2,B,31.25,-42.5,,b.csv\nZZ3,,-31,170.5,3,\n',
  'ZZ000000001  31.0000  -42.0000   12.0    FIRST PLACE\nZZ000000002  31.5000  -42.5000 -999.9    SECOND\n',
  'station;latitude;longitude\nA;31,5;-42,1\nB;31;-42\n',
];

const PLACES = [
  'code,name,lat,lon\nSC 101,"Tern Bay, old",31.1,-42.2\nSC 102,Ewer,31.2,-42.3\n',
  'ZZ\tSC 101\tTern Bay\ta\tb\tc\td\te\tf\t31.1\t-42.2\t4\nZZ\tSC 102\tEwer\ta\tb\tc\td\te\tf\t31.2\t-42.3\n',
  '{"postcodes":[{"code":"SC 101","name":"Tern","lat":31.1,"lon":-42.2}],"towns":[{"name":"Tern","lat":31,"lon":-42,"rank":1}]}',
];
const PACK_PLACES = {
  postcodes: [
    { code: 'SC 101', name: 'Tern', lat: 31.1, lon: -42.2 },
    { code: '00501', name: 'Ewer', lat: 31.2, lon: -42.3 },
  ],
  towns: [],
};

const BATCHES = [
  'customer,postcode,lat,lon,elevation,place\n1,SC 101,,,,Harbour\n2,,31.1,-42.2,30,"Hill, upper"\n3,501,,,,\n4,SC 999,,,,\n',
  'cliente;Código postal;lat;lon;altitud;etiqueta\n7;SC 101;;;;Uno\n8;;31,2;-42,4;120;Dos\n',
  'sep=;\n"zip";"elevation_ft"\n"00501";"300"\n"SC 101";""\n',
];

const STOCKS = [
  'Type,Pot,Age\nMeyer lemon,3 gal,2\nSatsuma,C-20,\nlime,5 l,1\n',
  'edad;nombre;maceta\n2;Limón Meyer;C-20\n3;Plum;C-10\n',
];

/** A line of the nursery's list, as the page lets people make it. */
const stockRow = fc.record({
  typeId: fc.constantFrom(...CITRUS_TYPES.map(({ id }) => id)),
  size: anyText.map((text) => text.replace(/\s+/g, ' ').slice(0, STOCK_SIZE_LONGEST).trim()),
  ageYears: fc.option(fc.integer({ min: 1, max: STOCK_AGE_MOST })),
});

const of = (texts: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof({ weight: 5, arbitrary: damaged(fc.constantFrom(...texts)) }, anyText);

const isPlace = ({ lat, lon }: { readonly lat: number; readonly lon: number }): boolean =>
  Math.abs(lat) <= 90 && Math.abs(lon) <= 180;

function checkBatch(text: string): void {
  const file = readOrRefused(() => readBatch(text, 'batch.csv'));
  if (!file) return;
  const rows = file.asks.length + file.bad.length;
  must(rows > 0 && rows <= BATCH_LIMITS.rows, `${rows} rows`);
  for (const { where, elevationM, line } of file.asks) {
    must(
      where.by === 'postcode' ? where.code.trim() !== '' : isPlace(where),
      `line ${line}: ${JSON.stringify(where)}`,
    );
    must(
      elevationM === null || (elevationM >= -450 && elevationM <= 9000),
      `line ${line}: height ${elevationM}`,
    );
  }
  const lines = [...file.asks, ...file.bad].map(({ line }) => line);
  must(
    new Set(lines).size === rows && lines.every((line) => line >= 1),
    'a line told twice, or of no number',
  );
  for (const { reason } of file.bad)
    must(reason !== '' && !/[\r\n]/.test(reason), 'a row refused without a reason');
  const located = locateBatch(file.asks, PACK_PLACES);
  must(located.rows.length + located.bad.length === file.asks.length, 'a row was lost when it was looked up');
  must(
    located.rows.every(({ place }) => isPlace(located.places[place])),
    'a row without a place',
  );
}

export const TABLES: readonly ReaderProperty[] = [
  property(
    'column maps: whatever was changed in one, it is refused, or reads in the usual way',
    fc.constantFrom(...maps).chain(damagedJsonText),
    async (json) => {
      const map = readOrRefused(() => parseColumnMap(json, 'map.json'));
      if (!map) return;
      await laterOrRefused(() =>
        readRecords(streamOf(bytesOf('a,b,c,d\n2001,01,01,3.5\n2001,01,02,4.5\n')), {
          fileName: 'a.csv',
          columns: map,
          unit: 'C',
        }),
      );
      await laterOrRefused(() =>
        readRecords(streamOf(bytesOf('date,tmin_c\n2001-01-01,1\n')), { fileName: 'a.csv', maps: [map] }),
      );
      readOrRefused(() => readStationList(STATION_LISTS[0], 'list.csv', map));
      readOrRefused(() => readStationList(STATION_LISTS[2], 'list.csv', null, [map]));
    },
  ),
  property('station lists: only stations with an id, at places on earth', of(STATION_LISTS), (text) => {
    const list = readOrRefused(() => readStationList(text, 'list.csv', null, maps));
    for (const [id, { lat, lon, elevationM }] of list?.byId ?? []) {
      must(/[A-Za-z0-9]/.test(id), `the id ${JSON.stringify(id)}`);
      must(lat === null || Math.abs(lat) <= 90, `latitude ${lat}`);
      must(lon === null || Math.abs(lon) <= 180, `longitude ${lon}`);
      must(elevationM === null || (elevationM > -999 && elevationM <= 9000), `height ${elevationM}`);
    }
  }),
  property('places files: only places on earth with a name and a code', of(PLACES), (text) => {
    const places = readOrRefused(() => placesIn(text, 'places.csv'));
    if (!places) return;
    must([...places.postcodes, ...places.towns].every(isPlace), 'a place that is nowhere');
    must(
      places.postcodes.every(({ code, name }) => code.trim() !== '' && typeof name === 'string'),
      'a postcode without its code',
    );
  }),
  property('batch: each row is asked about or told of, once, within the limits', of(BATCHES), checkBatch),
  property(
    'batch: any bytes are refused in one sentence or read',
    damagedBytes(fc.constantFrom(...BATCHES).map(bytesOf)),
    (bytes) => checkBatch(batchText(bytes)),
  ),
  property('stock: each line is a kind of the catalogue or told of', of(STOCKS), (text) => {
    const list = readOrRefused(() => readStock(text));
    for (const { typeId, size, ageYears } of list?.rows ?? []) {
      must(findType(typeId) !== undefined, `the type ${typeId}`);
      must(size.length <= STOCK_SIZE_LONGEST, `a size of ${size.length} letters`);
      must(
        ageYears === null || (Number.isInteger(ageYears) && ageYears >= 1 && ageYears <= STOCK_AGE_MOST),
        `age ${ageYears}`,
      );
    }
    for (const { words, line } of list?.faults ?? [])
      must(words !== '' && line > 1, 'a line refused without a word');
  }),
  property(
    'stock: what is written is read again',
    fc.array(stockRow, { minLength: 1, maxLength: 6 }),
    (rows) => {
      const { rows: again, faults } = readStock(plainCsv(stockTable(rows)));
      must(faults.length === 0, JSON.stringify(faults));
      must(
        JSON.stringify(again) === JSON.stringify(rows),
        `${JSON.stringify(again)} is not ${JSON.stringify(rows)}`,
      );
    },
  ),
];
