import { describe, expect, it } from 'vitest';
import { plainDays, readText, refusal } from './reading.ts';

const daysOf = async (dates: readonly string[]): Promise<unknown[]> => {
  const file = await readText(`date,tmin_c\n${dates.map((date, i) => `${date},${i}`).join('\n')}\n`);
  return plainDays(file).map((row) => (row as unknown[])[1]);
};

describe('dates', () => {
  it('are day first or month first for the whole file, told by any part above 12', async () => {
    expect(await daysOf(['11/12/1950', '12/12/1950', '13/12/1950'])).toEqual([
      '1950-12-11',
      '1950-12-12',
      '1950-12-13',
    ]);
    expect(await daysOf(['5/30/1960', '5/31/1960', '6/1/1960'])).toEqual([
      '1960-05-30',
      '1960-05-31',
      '1960-06-01',
    ]);
    expect(await daysOf(['01-01-1960', '02-01-1960', '13-01-1960'])).toEqual([
      '1960-01-01',
      '1960-01-02',
      '1960-01-13',
    ]);
  });

  it('without any part above 12 follow the days that come one after another', async () => {
    expect(await daysOf(['01/02/2001', '02/02/2001', '03/02/2001'])).toEqual([
      '2001-02-01',
      '2001-02-02',
      '2001-02-03',
    ]);
    expect(await daysOf(['2/1/2001', '2/2/2001', '2/3/2001'])).toEqual([
      '2001-02-01',
      '2001-02-02',
      '2001-02-03',
    ]);
  });

  it('that contradict each other or stay unclear are refused', async () => {
    expect(await refusal(daysOf(['13/01/2001', '01/14/2001']))).toBe(
      'invented.csv: the date in line 2 can only be day first, the one in line 3 only month first.',
    );
    expect(await refusal(daysOf(['01/02/2001', '05/07/2001']))).toContain(
      'nothing tells whether dates are day first',
    );
  });

  it('that do not exist are counted and left out', async () => {
    const file = await readText('date,tmin_c\n2001-02-28,1\n2001-02-29,2\n2001-03-01,3\nwhen,4\n');
    expect(file.rows).toBe(2);
    expect(file.badRows).toEqual([
      { reason: 'impossible date', count: 2, lines: [3, 5], example: '2001-02-29' },
    ]);
    const dayFirst = await readText('date,tmin_c\n28/02/2001,1\n29/02/2001,2\n01/03/2001,3\n');
    expect(dayFirst.badRows).toMatchObject([{ reason: 'impossible date', lines: [3] }]);
  });

  it('out of order are refused with line and both dates', async () => {
    expect(await refusal(daysOf(['2001-01-01', '2001-01-03', '2001-01-02', '2001-01-04']))).toBe(
      'invented.csv, line 4: dates out of order, 2001-01-02 comes after 2001-01-03 (station invented).',
    );
  });

  it('newest first, repeated, or in whole blocks are settled later', async () => {
    expect(await daysOf(['2001-01-03', '2001-01-02', '2001-01-01'])).toHaveLength(3);
    expect(await daysOf(['2001-01-01', '2001-01-01', '2001-01-02'])).toHaveLength(3);
    const month = (m: string): string[] =>
      Array.from({ length: 25 }, (_, i) => `2001-${m}-${String(i + 1).padStart(2, '0')}`);
    expect(await daysOf([...month('02'), ...month('01'), ...month('03')])).toHaveLength(75);
  });
});

describe('units', () => {
  const order = (values: readonly (number | string)[]): string =>
    `STATION,NAME,DATE,TMIN\n${values.map((v, i) => `ZZ1,N,${new Date(i * 86_400_000).toISOString().slice(0, 10)},${v}`).join('\n')}\n`;

  it('that are not stated are asked for', async () => {
    const message =
      "invented.csv: the unit of the temperatures isn't stated: --unit F or --unit C is needed.";
    expect(await refusal(readText('date,tmax,tmin\n2001-01-01,50,28\n'))).toBe(message);
    expect(await refusal(readText(order([28, 30, 31])))).toBe(message);
  });

  it('are tenths of °C where the values leave nothing else, whatever was given', async () => {
    const values = Array.from({ length: 60 }, (_, i) => 100 + i * 3);
    for (const unit of [null, 'F', 'C'] as const) {
      const file = await readText(order(values), { unit });
      expect([file.unit, file.daily[0]!.tminC[10]]).toEqual(['tenthsC', 13]);
      expect(file.notes).toEqual([
        'invented.csv was read as tenths of °C: its values fit neither °F nor °C.',
      ]);
    }
    // One mistyped value proves nothing.
    expect(
      (await readText(order([...values.map((v) => v / 4).map(Math.round), 300]), { unit: 'F' })).unit,
    ).toBe('F');
  });

  it('are °C, not the °F given, where all values are °F turned into tenths of °C', async () => {
    const values = Array.from({ length: 150 }, (_, i) => ((20 + (i % 50) - 32) / 1.8).toFixed(1));
    const file = await readText(order(values), { unit: 'F' });
    expect(file.unit).toBe('C');
    expect(file.notes[0]).toContain('was read as °C, not °F');
    expect(await refusal(readText(order(values)))).toContain('--unit F or --unit C is needed');
  });
});
