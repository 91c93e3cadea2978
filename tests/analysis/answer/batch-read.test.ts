import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BATCH_LIMITS } from '../../../analysis/answer/batch.ts';
import { askAllPostcodes, batchPieces, locateBatch } from '../../../analysis/answer/batch-places.ts';
import { batchText, readBatch } from '../../../analysis/answer/batch-read.ts';
import { csvLine } from '../../../analysis/records/csv-text.ts';
import { InputError } from '../../../analysis/records/input-error.ts';

const read = (...lines: string[]) => readBatch(lines.join('\n'), 'customers.csv');
const wheres = (...lines: string[]) => read(...lines).asks.map(({ where }) => where);

describe('the columns of a batch', () => {
  it.each([
    ['postcode', 'SC 101'],
    ['Zip Code', 'SC 101'],
    ['"Código postal"', '"SC 101"'],
    ['label,POSTCODE,x', 'a,SC 101,1'],
    ['cliente;C.P.;notas', '7;SC 101;"a;b"'],
    ['id\tpostal_code', '7\tSC 101'],
  ])('are known as %s', (header, row) => {
    expect(wheres(header, row)).toEqual([{ by: 'postcode', code: 'SC 101' }]);
  });
  it.each([
    ['lat,lon', '31.2,-42.5'],
    ['Longitude (deg),x,Latitude', '-42.5,,31.2'],
    ['latitud;longitud', '31,2;-42,5'],
    ['lon\tlat', '-42.5\t31.2'],
    ['"lat","lng"', '"31,2","-42,5"'],
  ])('are coordinates as %s, in either order, with either decimal mark', (header, row) => {
    expect(wheres(header.replace(' (deg)', ''), row)).toEqual([{ by: 'point', lat: 31.2, lon: -42.5 }]);
  });
  it('keep label, customer and elevation, in metres or feet', () => {
    const { asks, columns } = read(
      'Town,Elevation_ft,lat,lon,Customer No.,phone',
      'Tern "Bay",100,31.2,-42.5,=7,555',
    );
    expect(asks).toEqual([
      {
        line: 2,
        label: 'Tern "Bay"',
        customer: '=7',
        elevationM: expect.closeTo(30.48, 9) as number,
        where: { by: 'point', lat: 31.2, lon: -42.5 },
      },
    ]);
    expect(columns.used).toEqual(['Town', 'Elevation_ft', 'lat', 'lon', 'Customer No.']);
    expect(columns.ignored).toEqual(['phone']);
    expect(read('altitud;latitud;longitud', '12,5;31,2;-42,5').asks[0].elevationM).toBe(12.5);
  });
  it('give the point where a row has both, else the postcode', () => {
    expect(wheres('cp,lat,lon', 'SC 101,31.2,-42.5', 'SC 102,,')).toEqual([
      { by: 'point', lat: 31.2, lon: -42.5 },
      { by: 'postcode', code: 'SC 102' },
    ]);
  });
  it('may come after remarks, a word on the separator, and in UTF-16', () => {
    expect(read('# from the till', '', 'sep=;', 'cp;nota', 'SC 101;a,b,c').asks[0]).toMatchObject({
      line: 5,
    });
    const wide = Uint8Array.from([0xff, 0xfe, ...[...'cp\nSC 1'].flatMap((c) => [c.charCodeAt(0), 0])]);
    expect(readBatch(batchText(wide), 'x').asks[0].where).toEqual({ by: 'postcode', code: 'SC 1' });
    const latin = Uint8Array.from([...'C\u00f3digo postal\nSC 1'].map((c) => c.charCodeAt(0)));
    expect(readBatch(batchText(latin), 'x').asks).toHaveLength(1);
  });
  it('that can be used are missing: one sentence names the file and what is needed', () => {
    expect(() => read('name,phone,lat', 'a,1,31')).toThrow(
      'customers.csv has no column to go by: its first line must name a column postcode, or the columns lat and lon (it has name, phone, lat).',
    );
    expect(() => read('')).toThrow('customers.csv is empty.');
    expect(() => read('postcode')).toThrow('customers.csv has no row under its names of columns.');
  });
});

describe('rows of a batch', () => {
  const { asks, bad } = read(
    'postcode,lat,lon,elevation,label',
    'SC 101,,,,',
    ',,,,',
    ',95,-42,,north of north',
    ',31,-42,99999,',
    '',
    ',31,,,"two',
    'lines"',
    ',thirty,-42,,',
    'SC 102,,,high,',
    ',,,,nobody',
    'SC 103,,,,last',
  );
  it('that make no sense are listed by line and reason, and stop nothing', () => {
    expect(asks.map(({ line }) => line)).toEqual([2, 12]);
    expect(bad.map(({ line, reason }) => [line, reason])).toEqual([
      [3, 'the row is empty'],
      [4, 'latitude 95 is beyond 90 degrees'],
      [5, 'elevation 99999 is out of range: -450 to 9000 m are possible'],
      [6, 'the row is empty'],
      [7, 'the longitude is empty'],
      [9, 'latitude "thirty" is not a coordinate'],
      [10, 'elevation "high" is not a number'],
      [11, 'no postcode and no coordinates'],
    ]);
    expect(bad[4].text).toBe(',31,,,"two lines"');
  });
  it('are told by the line they begin on, whatever ends the lines inside a quoted cell', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const text = ['label,postcode', `"Tern${end}Bay",SC 101`, 'Ewer,SC 102'].join(end);
      expect(readBatch(text, 'customers.csv').asks.map(({ line }) => line)).toEqual([2, 4]);
    }
  });
  it('after a quote that is never closed are read on, but for the row that it stands in', () => {
    const rows = Array.from({ length: 2000 }, (_, at) => `Ewer ${at},SC 101`);
    const { asks, bad } = read('label,postcode', '"Tern,SC 101', ...rows, '"Corrow, upper",SC 102');
    expect(asks.slice(-2).map(({ label, line }) => [label, line])).toEqual([
      ['Ewer 1999', 2002],
      ['Corrow, upper', 2003],
    ]);
    expect([asks.length + bad.length, bad.map(({ line }) => line)]).toEqual([2002, [2]]);
  });
  it('are counted and measured', () => {
    const many = (count: number) => `cp\n${'SC 1\n'.repeat(count)}`;
    expect(readBatch(many(BATCH_LIMITS.rows), 'x').asks).toHaveLength(BATCH_LIMITS.rows);
    expect(() => readBatch(many(BATCH_LIMITS.rows + 1), 'big.csv')).toThrow(
      'big.csv has more than 20,000 rows',
    );
    expect(() => readBatch('x'.repeat(BATCH_LIMITS.bytes + 1), 'big.csv')).toThrow(
      'big.csv has 10.0 MB; at most 10 MB are read.',
    );
  });
  it('are all accounted for, whatever a file holds', () => {
    const cell = fc.oneof(
      fc.constantFrom('', '"', '""', ',', ';', '\n', '\r\n', '\t', 'SC 101', '31', '-42', '1e9', '=1', ' '),
      fc.string({ maxLength: 4 }),
    );
    fc.assert(
      fc.property(
        fc.constantFrom('cp', 'lat,lon', 'lat;lon;cp', 'cp\tlabel'),
        fc.array(cell, { maxLength: 60 }),
        (header, cells) => {
          try {
            const found = readBatch(`${header}\n${cells.join('')}`, 'x');
            const lines = [...found.asks, ...found.bad].map(({ line }) => line).sort((a, b) => a - b);
            expect(new Set(lines).size).toBe(lines.length);
            expect(lines[0]).toBe(2);
            for (const { where, elevationM } of found.asks) {
              if (where.by === 'point')
                expect(Math.abs(where.lat) <= 90 && Math.abs(where.lon) <= 180).toBe(true);
              expect(elevationM === null || Number.isFinite(elevationM)).toBe(true);
            }
          } catch (error) {
            expect(error).toBeInstanceOf(InputError);
          }
        },
      ),
      { numRuns: 500 },
    );
  });
  it('written by an export are read as they were, in any order of columns', () => {
    const text = fc.stringMatching(/^[A-Za-z"=+@,;][A-Za-z 0-9",;]{0,8}[a-z]$/);
    const row = fc.record({ code: text, label: text, customer: text });
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 5 }),
        fc.shuffledSubarray(['code', 'label', 'customer'] as const, { minLength: 3 }),
        (rows, order) => {
          const names = { code: 'postcode', label: 'label', customer: 'customer' };
          const file = [csvLine(order.map((name) => names[name]))];
          for (const one of rows) file.push(csvLine(order.map((name) => one[name])));
          const plain = (value: string) => value.replaceAll("'", '').replace(/\s+/g, ' ').trim();
          expect(
            read(...file).asks.map(({ where, label, customer }) => [
              plain((where as { code: string }).code),
              plain(label),
              plain(customer),
            ]),
          ).toEqual(rows.map((one) => [plain(one.code), plain(one.label), plain(one.customer)]));
        },
      ),
    );
  });
});

describe('places of a batch', () => {
  const places = {
    postcodes: [
      { code: 'SC 101', name: 'Sallowmere', lat: 31, lon: -42 },
      { code: '01234', name: 'Zeroes', lat: 31.5, lon: -42 },
    ],
    towns: [],
  };
  const located = (...lines: string[]) => locateBatch(read(...lines).asks, places);
  it('are looked up however a code is written, and asked once however many rows ask', () => {
    const {
      rows,
      places: found,
      bad,
    } = located(
      'cp,lat,lon,label',
      'sc101,,,',
      'SC-101,,,Mine',
      '1234,,,',
      '01234-9999,,,',
      ',31,-42,The same',
      'SC 999,,,',
    );
    expect(rows.map(({ line, label, postcode, place }) => [line, label, postcode, place])).toEqual([
      [2, 'Sallowmere', 'SC 101', 0],
      [3, 'Mine', 'SC 101', 0],
      [4, 'Zeroes', '01234', 1],
      [5, 'Zeroes', '01234', 1],
      [6, 'The same', '', 0],
    ]);
    expect(found).toHaveLength(2);
    expect(bad).toEqual([
      { line: 7, reason: 'the postcode is not in the pack, which has 2', text: 'SC 999' },
    ]);
    expect(locateBatch(read('cp', 'x').asks, { postcodes: [], towns: [] }).bad[0].reason).toContain(
      'has no postcodes',
    );
  });
  it('with another elevation are others', () => {
    expect(located('cp,elev', 'SC 101,', 'SC 101,5', 'SC 101,5').places).toHaveLength(2);
  });
  it('are all of a pack when asked for, and every one is in one piece', () => {
    expect(locateBatch(askAllPostcodes(places), places).rows.map(({ postcode }) => postcode)).toEqual([
      'SC 101',
      '01234',
    ]);
    const many = Array.from({ length: 53 }, (_, i) => ({
      lat: (i * 7) % 5,
      lon: (i * 3) % 4,
      elevationM: null,
    }));
    const pieces = batchPieces(many, 8);
    expect(pieces.flat().sort((a, b) => a - b)).toEqual(many.map((_, i) => i));
    expect(Math.max(...pieces.map(({ length }) => length))).toBe(8);
  });
});
