import { describe, expect, it } from 'vitest';
import { parseColumnMap } from '../../../analysis/read/column-map.ts';
import { readRecords } from '../../../analysis/read/read-records.ts';
import { bytesOf, dlyLine, gzipOf, plainDays, plainHours, readText, refusal, streamOf } from './reading.ts';

describe('bad input', () => {
  it('with unknown columns says what was found and what is needed', async () => {
    expect(await refusal(readText('alpha,beta\n1,2\n'))).toBe(
      "invented.csv, line 1: the columns aren't known (found alpha, beta): a date and tmin are needed, or a column map by --columns.",
    );
  });

  it('with more bad rows than good ones is refused by the first of them', async () => {
    expect(await refusal(readText('date,tmin_c\n2001-01-01,1\n2001-01-02,cold\n2001-01-03,very\n'))).toBe(
      'invented.csv, line 3: not a number ("cold"); 2 of 3 rows can\'t be read, more than half.',
    );
  });

  it('with a few bad rows keeps the rest and counts them with reason and line', async () => {
    const rows = Array.from({ length: 9 }, (_, i) => `2001-01-0${i + 1},${i}`);
    const file = await readText(
      `date,tmin_c,note\n${rows.map((row) => `${row},x`).join('\n')}\n2001-01-10\n2001-01-11,1o,x\n2001-01-12,3`,
    );
    expect(file.rows).toBe(9);
    expect(file.badRows).toEqual([
      { reason: 'row cut short', count: 2, lines: [11, 13], example: '2001-01-10' },
      { reason: 'not a number', count: 1, lines: [12], example: '1o' },
    ]);
  });

  it('with rows of nothing but marks says how many it left out, and what it took for a mark', async () => {
    const rows = ['1,2', 'M,*', '-99.9,999', '3,M', ',', '-9999,-9999', 'M,cold', '4,5'];
    const text = `date,tmin_c,tmax_c\n${rows.map((row, i) => `2001-01-0${i + 1},${row}`).join('\n')}\n`;
    const file = await readText(text);
    expect(plainDays(file).map((row) => (row as unknown[])[1])).toEqual([
      '2001-01-01',
      '2001-01-04',
      '2001-01-08',
    ]);
    expect(file.badRows).toMatchObject([{ reason: 'not a number', count: 1, lines: [8] }]);
    expect(file.notes).toEqual([
      'invented.csv: rows with nothing but a mark of a missing reading were left out, 2 in all, the first on line 3 (“*”).',
    ]);
    const columns = parseColumnMap(
      '{"kind":"daily","unit":"C","columns":{"date":1,"tmin":2},"missing":["M",999]}',
      'm.json',
    );
    const told = await readText('d,t\n2001-01-01,m\n2001-01-02,999\n2001-01-03,-1\n', { columns });
    expect([told.rows, told.notes]).toEqual([1, []]);
    const hours = await readText(
      'DATE,HourlyDryBulbTemperature\n2020-01-01T00:52:00,40\n2020-01-01T01:52:00,*\n',
    );
    expect(hours.notes[0]).toContain('1 in all, the first on line 3 (“*”)');
  });

  it('without a single reading is refused', async () => {
    expect(await refusal(readText('date,tmin_c\n2001-01-01,\n2001-01-02,-9999\n'))).toBe(
      'invented.csv holds no temperature readings.',
    );
    expect(await refusal(readText('date,tmin_c\n'))).toBe('invented.csv holds no temperature readings.');
    expect(await refusal(readText('\n\n'))).toBe('invented.csv is empty.');
  });

  it('with a latitude of 95 is refused', async () => {
    const text = 'STATION,DATE,LATITUDE,LONGITUDE,TMIN_C\nZZ1,2001-01-01,95,10,1\n';
    expect(await refusal(readText(text))).toBe('invented.csv, line 2: latitude 95 is beyond 90 degrees.');
  });

  it('in a list of values: name without element, too few values', async () => {
    const text = 'Z9 -29.97 30.95 14.00\n2001010112 2001010312 0\nDOCK\n14.90\n';
    expect(await refusal(readText(text, { fileName: 'z9.txt' }))).toBe(
      'z9.txt must say in its name whether its values are tmin or tmax.',
    );
    expect(await refusal(readText(text, { fileName: 'z9_tmin.txt' }))).toBe(
      'z9_tmin.txt, line 4: there are 2 fewer values than days in the span of line 2.',
    );
  });
});

describe('cutting the bytes', () => {
  const files: [string, string][] = [
    ['a.dly', [dlyLine('ZZ000000001', '200102', 'TMAX', [100, null, 111]), dlyLine('ZZ000000001', '200102', 'TMIN', [-22, -33])].join('\r\n')],
    ['b.csv', 'STATION,NAME,DATE,TMIN_C\nZZ1,"León, ""alto""",2001-01-01,-2.5\nZZ2,B,2001-01-01,3\n'],
    ['c.csv', 'ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\nZZ1,20010101,TMIN,-22,,I,S,0700\n'],
    ['d.WTH', '*WEATHER DATA : N\n@ INSI LAT LONG ELEV\n ZZ 31 -83 9\n@DATE TMAX TMIN\n96001 20.0 13.6\n'],
    ['e_tmin.txt', 'Z9 -29.97 30.95 14\n2001010112 2001010212 0\nDOCK\n14.9\n15\n'],
    ['f-99999-2017', '2017 01 01 00   -35   -42 10296   190    10     9 -9999     0\n'],
    ['g.csv', 'DATE,HourlyDryBulbTemperature\n2020-01-01T00:52:00,40\n'],
    ['h.csv', 'date,tmin_c\r01/02/2001,1\r02/02/2001,2\r03/02/2001,3\r'],
  ]; // prettier-ignore

  it('at every byte changes no row, plain or gzipped', async () => {
    for (const [fileName, text] of files) {
      const rows = async (bytes: Uint8Array, size: number): Promise<unknown> => {
        const file = await readRecords(streamOf(bytes, size), { fileName });
        return [plainDays(file), plainHours(file), file.daily.map((raw) => raw.station), file.badRows];
      };
      const whole = await rows(bytesOf(text), text.length * 2);
      for (let size = 1; size < Math.min(text.length, 40); size += 1) {
        expect(await rows(bytesOf(text), size), `${fileName} by ${size}`).toEqual(whole);
      }
      for (const size of [1, 7]) expect(await rows(gzipOf(text), size), fileName).toEqual(whole);
    }
  });
});
