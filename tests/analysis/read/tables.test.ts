import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseColumnMap, type ColumnMap } from '../../../analysis/read/column-map.ts';
import { plainDays, plainHours, readText, refusal } from './reading.ts';

const folder = join(import.meta.dirname, '..', '..', '..', 'analysis', 'read', 'columns');
const maps = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => parseColumnMap(readFileSync(join(folder, file), 'utf8'), file));
const named = (id: string): ColumnMap => maps.find((map) => map.id === id)!;

describe('column maps', () => {
  it('that are shipped are valid and named like their files', () => {
    expect(maps.length).toBeGreaterThan(10);
    const files = readdirSync(folder).filter((file) => file.endsWith('.json'));
    expect(maps.map((map) => `${map.id}.json`)).toEqual(files);
  });

  it('apply by themselves when their signature fits, and say so', async () => {
    const cases: [string, string, unknown[]][] = [
      ['spain-city-series', 'fecha,maxima,minima\n2001-01-01,10.5,-2.0\n', ['2001-01-01', -2, 10.5]],
      ['tab-day-max-min', '20010101\t  -22\t -128\t   94\n20010102\t-9999\t-9999\t    0\n', ['2001-01-01', -12.8, -2.2]],
      ['australia-locations', 'date,location,tmin,tmax\n2001-01-01,Hill Top,-2,10.5\n', ['2001-01-01', -2, 10.5]],
      ['year-month-day-max-min', 'Year,Mn,Dy,MxT,MnT,Prec,Snow,SnCv\n1900,1,1,50,14,0,0,\n', ['1900-01-01', -10, 10]],
      ['year-mon-day-min', 'Time,Year,Mon,Day,Min\n1,1949,1,1,14\n', ['1949-01-01', -10, null]],
      ['short-year-max-min', 'Year,Month,Day,MaxT,MinT\n48,7,1,50,14\n', ['1948-07-01', -10, 10]],
    ]; // prettier-ignore
    for (const [id, text, row] of cases) {
      const file = await readText(text, { maps });
      expect((plainDays(file)[0] as unknown[]).slice(1), id).toEqual(row);
      expect(file.notes).toEqual([
        `invented.csv was read with the column map ${id}, whose signature it fits.`,
      ]);
    }
  });

  it('for hourly tables know the clock', async () => {
    const head =
      'origin,year,month,day,hour,temp,dewp,humid,wind_dir,wind_speed,wind_gust,precip,pressure,visib';
    const offset = await readText(
      `${head},time_hour\nZZA,2013,1,1,1,39.02,26,59,270,10,,0,1012,10,2013-01-01T01:00:00-0500\n`,
      { maps },
    );
    expect(plainHours(offset)).toEqual([['ZZA', '2013-01-01T06:00', 3.9, 4.47]]);
    const utc = await readText(
      `${head},date\nZZA,2014,1,1,1,50,26,59,270,10,,0,1012,10,2014-01-01 01:00:00\n`,
      { maps },
    );
    expect(plainHours(utc)).toEqual([['ZZA', '2014-01-01T01:00', 10, 4.47]]);
    const half = await readText(
      'Station.Number,Year,Month,Day,Hour,Temp,Tdew,RH,n,uz\n99,2001,3,1,12,16.7,10,68,8,2.5\n',
      { maps },
    );
    expect(plainHours(half)).toEqual([['99', '2001-03-01T02:30', 16.7, 2.5]]);
    expect(half.hourly[0]!.localStandard).toBe(false);
  });

  it('read semicolons, decimal commas, day-first dates, own marks and several stations', async () => {
    const text =
      'date;station;tmax;tmin\n01.02.2001;A;10,5;-2,25\n01.02.2001;B;n/d;-9999\n02.02.2001;A;1;-3\n02.02.2001;B;2;-4\n';
    const file = await readText(text, { columns: named('semicolon-day-first') });
    expect(plainDays(file)).toEqual([
      ['A', '2001-02-01', -2.25, 10.5],
      ['A', '2001-02-02', -3, 1],
      ['B', '2001-02-02', -4, 2],
    ]);
  });

  it('read fixed columns, skipped lines and comments', async () => {
    const map = parseColumnMap(
      JSON.stringify({
        kind: 'daily', layout: 'fixed', skipLines: 1, comment: '#', unit: 'tenthsF', station: { id: 'Q', lat: 30, lon: 5 },
        columns: { year: [1, 4], month: [5, 6], day: [7, 8], tmin: [9, 12], tmax: [13, 17], tminFlag: [18, 18] },
      }),
      'q.json',
    ); // prettier-ignore
    const file = await readText('any title\n# note\n20010101 320 410 X\n20010102-400  400\n20010103\n', {
      columns: map,
    });
    expect(plainDays(file)).toEqual([
      ['Q', '2001-01-01', 0, 5],
      ['Q', '2001-01-02', -40, 4.44],
    ]);
    expect(file.daily[0]!.station).toMatchObject({ id: 'Q', lat: 30, lon: 5 });
    expect([...file.daily[0]!.tminFlag]).toEqual([88, 0]);
    expect(file.badRows).toMatchObject([{ reason: 'row cut short', lines: [5] }]);
  });

  it('with a fault are refused with the file and the fault', () => {
    const parse =
      (map: unknown): (() => ColumnMap) =>
      () =>
        parseColumnMap(JSON.stringify(map), 'm.json');
    const good = { kind: 'daily', columns: { date: 1, tmin: 2 } };
    expect(parse(good)).not.toThrow();
    expect(() => parseColumnMap('{', 'm.json')).toThrow('m.json is not JSON.');
    expect(parse({ ...good, kind: 'weekly' })).toThrow('m.json: "kind" is one of daily, hourly, stations.');
    expect(parse({ ...good, unit: 'R' })).toThrow('m.json: "unit" is one of C, F, tenthsC, tenthsF.');
    expect(parse({ ...good, colour: 1 })).toThrow('m.json: "colour" is not a key of a column map.');
    expect(parse({ kind: 'daily', columns: { date: 1 } })).toThrow('m.json: "columns" needs tmin.');
    expect(parse({ kind: 'daily', columns: { tmin: 1 } })).toThrow(
      'm.json: "columns" needs date, or year, month and day.',
    );
    expect(parse({ kind: 'daily', columns: { date: 0, tmin: 2 } })).toThrow(
      'm.json: column "date" must be a header name or a position, counted from 1.',
    );
    expect(parse({ ...good, clock: 99 })).toThrow('"clock" is at most 14 hours from UTC');
    expect(parse({ ...good, signature: { lines: '(' } })).toThrow('"signature.lines" is not a pattern');
  });

  it('whose columns the file lacks are refused with both', async () => {
    expect(await refusal(readText('day,low\n1,2\n', { columns: named('date-minimum') }))).toBe(
      'invented.csv, line 1: the column map date-minimum wants the columns Date, Temp, which the header (day, low) does' +
        "n't have.",
    );
    expect(await refusal(readText('a\n', { columns: named('spain-station-list') }))).toContain(
      'is for lists of stations',
    );
  });
});
