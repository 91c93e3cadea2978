import { describe, expect, it } from 'vitest';
import { dlyLine, plainDays, plainHours, readText } from './reading.ts';

const wide = `"STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","PRCP","PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES","TOBS","TOBS_ATTRIBUTES"
"ZZ000000001","2001-01-01","30.5","-81.25","12.5","SOMEWHERE, ZZ","    0",",,7,0730","  100",",,7","  -22",",,7","   11",",,7,0700"
"ZZ000000001","2001-01-02","30.5","-81.25","12.5","SOMEWHERE, ZZ","    0",",,7,0730","  111",",,7","  -33",",I,7",,
"ZZ000000001","2001-01-03","30.5","-81.25","12.5","SOMEWHERE, ZZ","    0",",,7,",,,,,,
`;

describe('formats of the daily archive', () => {
  it('.dly: both elements of a day in one row, quality flags, wind, days in order', async () => {
    const file = await readText(
      [
        dlyLine('ZZ000000001', '200102', 'TMAX', [100, null, 111]),
        dlyLine('ZZ000000001', '200102', 'TMIN', [-22, -33, -9999, 50], { 1: 'I' }),
        dlyLine('ZZ000000001', '200102', 'AWND', [31]),
        dlyLine('ZZ000000001', '200102', 'PRCP', [5]),
      ].join('\n'),
    );
    expect(file.format).toBe('ghcn-dly');
    expect(plainDays(file)).toEqual([
      ['ZZ000000001', '2001-02-01', -2.2, 10],
      ['ZZ000000001', '2001-02-02', -3.3, null],
      ['ZZ000000001', '2001-02-03', null, 11.1],
      ['ZZ000000001', '2001-02-04', 5, null],
    ]);
    const [raw] = file.daily;
    expect([...raw!.tminFlag]).toEqual([0, 'I'.charCodeAt(0), 0, 0]);
    expect(raw!.windMs[0]).toBeCloseTo(3.1);
  });

  it('.dly: a cut line and an impossible month are counted, the rest is kept', async () => {
    const good = dlyLine('ZZ000000001', '200101', 'TMIN', [-22, -33]);
    const file = await readText(
      `${good}\nZZ000000001200113TMIN  -22\n${good.replace('200101', '200102').slice(0, 80)}`,
    );
    expect(file.rows).toBe(2);
    expect(file.badRows.map(({ reason, lines }) => [reason, lines])).toEqual([
      ['impossible date', [2]],
      ['row cut short', [3]],
    ]);
  });

  it('long table, with the header of the archive, another header, or none', async () => {
    const rows =
      'ZZ1,20010101,TMAX,100,,,S,\nZZ1,20010101,TMIN,-22,,,S,0700\nZZ1,20010101,PRCP,5,,,S,\nZZ1,20010102,TMIN,-33,,X,S,2400\n';
    const heads = [
      'ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n',
      'id,date,element,value,m,q,s,time\n',
      '',
    ];
    for (const head of heads) {
      const file = await readText(head + rows);
      expect(file.format).toBe('ghcn-long');
      expect(plainDays(file)).toEqual([
        ['ZZ1', '2001-01-01', -2.2, 10],
        ['ZZ1', '2001-01-02', -3.3, null],
      ]);
      expect([...file.daily[0]!.readingHour]).toEqual([7, 24]);
      expect([...file.daily[0]!.tminFlag]).toEqual([0, 88]);
    }
  });

  it('long table sorted by element is as good as one sorted by day', async () => {
    const file = await readText(
      'ZZ1,20010101,TMAX,100,,,S,\nZZ1,20010102,TMAX,90,,,S,\nZZ1,20010101,TMIN,-22,,,S,\nZZ1,20010102,TMIN,-33,,,S,\n',
    );
    expect(file.rows).toBe(4);
  });

  it('wide table with attributes: tenths, flags, hour of reading, coordinates', async () => {
    const file = await readText(wide);
    expect([file.title, file.unit]).toEqual(['GHCN-Daily access table', 'tenthsC']);
    expect(file.daily[0]!.station).toEqual({
      id: 'ZZ000000001', name: 'SOMEWHERE, ZZ', lat: 30.5, lon: -81.25, elevationM: 12.5,
    }); // prettier-ignore
    expect(plainDays(file).map((row) => (row as unknown[]).slice(1))).toEqual([
      ['2001-01-01', -2.2, 10],
      ['2001-01-02', -3.3, 11.1],
    ]);
    expect([...file.daily[0]!.readingHour]).toEqual([7, 7]);
    expect([...file.daily[0]!.tminFlag]).toEqual([0, 73]);
  });

  it('order table in °F or °C as told, wind with it', async () => {
    const text =
      'STATION,NAME,DATE,AWND,TMAX,TMIN\nGHCND:ZZ1,"A, B",2001-01-01,10,55,28\nGHCND:ZZ1,"A, B",2001-01-02,,,\n';
    const inF = await readText(text, { unit: 'F' });
    expect(plainDays(inF)).toEqual([['ZZ1', '2001-01-01', -2.22, 12.78]]);
    expect(inF.daily[0]!.windMs[0]).toBeCloseTo(4.4704);
    const inC = await readText(text, { unit: 'C' });
    expect(plainDays(inC)).toEqual([['ZZ1', '2001-01-01', 28, 55]]);
    expect(inC.daily[0]!.windMs[0]).toBe(10);
  });
});

describe('other daily formats', () => {
  it('plain table: station from the file name before its first dot', async () => {
    const file = await readText('date,tmax,tmin\n2001-01-01,10.5,-2\n2001-01-02,,NA\n', {
      unit: 'C',
      fileName: 'a/Hill.v2.csv.gz',
    });
    expect(plainDays(file)).toEqual([['Hill', '2001-01-01', -2, 10.5]]);
  });

  it('plain table whose header states the unit', async () => {
    expect(plainDays(await readText('date,tmin_f\n2001-01-01,28\n'))).toEqual([
      ['invented', '2001-01-01', -2.22, null],
    ]);
    expect(plainDays(await readText('date;tmin_c\n2001-01-01;-2,5\n'))).toEqual([
      ['invented', '2001-01-01', -2.5, null],
    ]);
  });

  it('.WTH: station line, both kinds of dates, wind in km a day, comments', async () => {
    const head =
      '*WEATHER DATA : Nowhere, ZZ\n! a comment\n@ INSI      LAT     LONG  ELEV   TAV\n  ZZNW   31.500  -83.500   116  19.4\n';
    const days =
      '@DATE  SRAD  TMAX  TMIN  RAIN  WIND\n96001   4.4  20.0  13.6  34.5  86.4\n96366   4.4  20.0  -1.5   0.0   -99\n97366   1.0   1.0   1.0   0.0   -99\n';
    const file = await readText(head + days, { fileName: 'ZZNW9697.WTH' });
    expect(file.daily[0]!.station).toMatchObject({
      id: 'ZZNW',
      name: 'Nowhere, ZZ',
      lat: 31.5,
      lon: -83.5,
      elevationM: 116,
    });
    expect(plainDays(file)).toEqual([
      ['ZZNW', '1996-01-01', 13.6, 20],
      ['ZZNW', '1996-12-31', -1.5, 20],
    ]);
    expect(file.daily[0]!.windMs[0]).toBeCloseTo(1);
    expect(file.badRows).toMatchObject([{ reason: 'impossible date', lines: [8], example: '97366' }]);
    const long = await readText(head + days.replace('96001', '2006365'), { fileName: 'x.WTH' }).catch(
      (e: Error) => e.message,
    );
    expect(long).toContain('dates out of order, 1996-12-31 comes after 2006-12-31');
  });

  it('list of daily values: minimum or maximum by the file name, span checked', async () => {
    const text = 'Z9 -29.97 30.95 14.00\n2001010112 2001010312 0\nDOCK_WO____\n14.90\n-999\n19.40\n';
    const file = await readText(text, { fileName: 'z9_tasmin.txt' });
    expect(file.daily[0]!.station).toMatchObject({ id: 'Z9', name: 'DOCK WO', lat: -29.97 });
    expect(plainDays(file)).toEqual([
      ['Z9', '2001-01-01', 14.9, null],
      ['Z9', '2001-01-03', 19.4, null],
    ]);
    expect(plainDays(await readText(text, { fileName: 'z9_tasmax.txt' }))[0]).toEqual([
      'Z9',
      '2001-01-01',
      null,
      14.9,
    ]);
  });
});

describe('hourly formats', () => {
  it('ISD-Lite: UTC, tenths, station without the year of the file', async () => {
    const text =
      '2017 01 01 00   -35   -42 10296   190    10     9 -9999     0\n2017 01 01 01 -9999   -39 10288   180    10     9     0 -9999\n2017 01 01 02    12   -37 10280     0 -9999     9     0 -9999\n';
    const file = await readText(text, { fileName: '999990-99999-2017.gz' });
    expect(plainHours(file)).toEqual([
      ['999990-99999', '2017-01-01T00:00', -3.5, 1],
      ['999990-99999', '2017-01-01T02:00', 1.2, null],
    ]);
    expect(file.hourly[0]!.localStandard).toBe(false);
  });

  it('hourly order table: local standard time, suspect values, summaries left out', async () => {
    const text =
      'STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyWindSpeed\n' +
      '99999000001,2020-01-01T00:52:00,FM-15,40,10\n99999000001,2020-01-01T01:00:00,FM-12,41s,\n' +
      '99999000001,2020-01-01T01:52:00,FM-15,*,5\n99999000001,2020-01-01T23:59:00,SOD  ,30,\n' +
      '99999000001,2020-01-02T00:52:00,FM-16,-4,VRB\n';
    const file = await readText(text);
    expect(plainHours(file)).toEqual([
      ['99999000001', '2020-01-01T00:52', 4.44, 4.47],
      ['99999000001', '2020-01-01T01:00', 5, null],
      ['99999000001', '2020-01-02T00:52', -20, null],
    ]);
    expect(file.hourly[0]!.localStandard).toBe(true);
    expect([...file.hourly[0]!.tempFlag!]).toEqual([0, 115, 0]);
    expect(file.unit).toBe('F');
  });

  it('hourly order table without station, and the newer kind in tenths of °C', async () => {
    const rows = Array.from(
      { length: 20 },
      (_, i) => `2024-06-01T${String(i).padStart(2, '0')}:53:00,${10 + i * 0.7}`,
    );
    const file = await readText(`DATE,HourlyDryBulbTemperature\n${rows.join('\n')}\n`, {
      fileName: 'field.csv',
    });
    expect([file.unit, file.hourly[0]!.station.id]).toEqual(['C', 'field']);
    expect(file.notes[0]).toContain('read as °C');
  });
});
