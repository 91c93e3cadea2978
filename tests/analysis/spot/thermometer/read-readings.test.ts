import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../../analysis/records/input-error.ts';
import { readReadings } from '../../../../analysis/spot/thermometer/read-readings.ts';
import { formatIsoDay } from '../../../../analysis/units/calendar.ts';

/** `date minimum` of each reading. */
function read(text: string, order?: 'day first' | 'month first'): string[] {
  return readReadings(text, 'The text', order).readings.map(
    ({ day, minimum }) => `${formatIsoDay(day)} ${minimum}`,
  );
}
const THREE = ['2024-01-05 28.4', '2024-01-06 -3', '2024-01-15 30'];

describe('readings as people and loggers write them', () => {
  it.each([
    ['commas, ISO, no heading', '2024-01-05,28.4\n2024-01-06,-3\n2024-01-15,30'],
    [
      'a mark of byte order, blank lines, CRLF',
      '\uFEFFDate,Low\r\n\r\n2024-01-05,28.4\r\n2024-01-06,-3\r\n\r\n2024-01-15,30\r\n',
    ],
    ['semicolons and decimal commas', 'Datum;Tiefstwert\n05.01.2024;28,4\n06.01.2024;-3\n15.01.2024;30,0'],
    ['tabs, month first', 'When\tMin (°F)\n1/5/2024\t28.4\n1/6/2024\t-3\n1/15/2024\t30'],
    ['commas and decimal commas at once', 'date,min\n2024-01-05,28,4\n2024-01-06,-3,0\n2024-01-15,30,0'],
    ['blanks, day first, years of two figures', '5/1/24 28.4\n6/1/24 -3\n15/1/24 30'],
    ['names of months', '5 Jan 2024, 28.4\nJan 6, 2024, -3\nMonday 15-January-2024, 30'],
    [
      'quotes and units behind the values',
      '"2024-01-05","28.4 °F"\n"2024-01-06","−3 °F"\n"2024-01-15","30 °F"',
    ],
    [
      'other columns',
      '#,Date,Humidity %,Max,Min\n1,2024-01-05,80,50,28.4\n2,2024-01-06,82,41,-3\n3,2024-01-15,60,52,30',
    ],
    [
      'lines of a logger above its heading',
      'Logger 12\nSerial,991\nDate,Temp\n2024-01-05,28.4\n2024-01-06,-3\n2024-01-15,30',
    ],
    ['newest first', '2024-01-15,30\n2024-01-06,-3\n2024-01-05,28.4'],
    ['dates without marks', '20240105;28.4\n20240106;-3\n20240115;30'],
    ['bars', '2024/01/05 | 28.4\n2024/01/06 | -3\n2024/01/15 | 30'],
    ['two numbers without a name: the lower one', '2024-01-05,51,28.4\n2024-01-06,40,-3\n2024-01-15,60,30'],
  ])('reads %s', (_, text) => {
    expect(read(text)).toEqual(THREE);
  });

  it.each([
    ['Min (°F)', 'F'],
    ['tmin_c', 'C'],
    ['Temp, Celsius', 'C'],
    ['Low F', 'F'],
    ['TempF', 'F'],
    ['Minimum', null],
    ['Freezer', null],
  ])('takes the unit of the heading %s', (heading, unit) => {
    expect(readReadings(`Date;${heading}\n2024-01-05;1\n2024-01-06;2\n2024-01-07;3`, 'x').unit).toBe(unit);
  });

  it('takes the unit from the values', () => {
    expect(readReadings('2024-01-05,28F\n2024-01-06,30F\n2024-01-07,29F', 'x').unit).toBe('F');
  });

  it("makes a logger's readings each night's lowest, noon to noon", () => {
    const lines = ['Time stamp,Celsius(°C),Humidity(%rh)'];
    for (let hour = 0; hour < 96; hour++) {
      const date = new Date(Date.UTC(2024, 0, 4, 12 + hour)).toISOString();
      // Coldest at 6 in the morning; one reading of the evening of the 5th colder than its own morning.
      const cold = hour === 34 ? -9 : 5 - 4 * Math.cos(((hour - 18) / 24) * 2 * Math.PI);
      lines.push(`${date.slice(0, 10)} ${date.slice(11, 19)},${cold.toFixed(1)},80`);
    }
    const found = readReadings(lines.join('\n'), 'log.csv');
    expect(found.unit).toBe('C');
    expect(found.perNight).toBe(24);
    expect(found.readings.map(({ day, minimum }) => [formatIsoDay(day), minimum])).toEqual([
      ['2024-01-05', 1],
      ['2024-01-06', -9],
      ['2024-01-07', 1],
      ['2024-01-08', 1],
    ]);
    expect(found.notes.join()).toContain('noon to noon');
  });

  it('knows hours of twelve', () => {
    const days = ['01/15/24', '01/16/24', '01/17/24', '01/18/24'];
    const times = ['12:00:00 AM', '06:00:00 AM', '12:00:00 PM', '06:00:00 PM'];
    const text = days.flatMap((day, d) => times.map((time, t) => `${day} ${time},${t === 1 ? d : 20}`));
    // Of the night to the 15th the evening is missing, of that to the 19th the morning.
    expect(read(['Date Time,Temp F', ...text].join('\n'))).toEqual([
      '2024-01-16 1',
      '2024-01-17 2',
      '2024-01-18 3',
    ]);
  });

  it('says when day and month are a guess, and takes what the reader chose', () => {
    const text = '03/01/2024,28\n05/01/2024,30\n09/01/2024,31';
    const found = readReadings(text, 'x');
    expect([found.order, found.orderGuessed]).toEqual(['day first', true]);
    expect(read(text, 'month first')[0]).toBe('2024-03-01 28');
    expect(readReadings(text, 'x', 'month first').orderGuessed).toBe(false);
    const told = readReadings(`${text}\n25/01/2024,30`, 'x');
    expect([told.order, told.orderGuessed]).toEqual(['day first', false]);
  });

  it('keeps what it leaves out, with line and reason', () => {
    const found = readReadings(
      'Date,Low\n2024-01-05,28\n2024-01-06,\n2024-02-30,25\nnote: cold\n2024-01-09,-999\n2024-01-10,30\n2024-01-11,29',
      'x',
    );
    expect(found.readings).toHaveLength(3);
    expect(found.skipped.map(({ line, reason }) => [line, reason])).toEqual([
      [3, 'no number'],
      [4, 'no such date'],
      [5, 'no date'],
      [6, 'beyond any air temperature'],
    ]);
  });
});

describe('texts that hold no readings', () => {
  it.each([
    ['', /^The text is empty/],
    ['cold last night\nvery', /^The text: no line has a date \(line 2: “very”\)/],
    ['28.4\n30\n31', /no line has a date \(line 2: “30”\)/],
    [
      '2024-01-05\n2024-01-06\n2024-01-07',
      /no line has a temperature beside its date \(line 1: “2024-01-05”\)/,
    ],
    [
      '2024-01-05,28\n2024-01-06,30',
      /^The text: 2 nights were read, up to line 2 \(“2024-01-06,30”\), and at least 3/,
    ],
    [
      '2024-01-05,28\n2024-01-06,\n2024-01-07,',
      /1 night was read.*2 more could not be read, the first in line 2/,
    ],
    [
      '25/01/2024,28\n01/25/2024,30\n26/01/2024,31',
      /line 1 can only be day first, the one in line 2 only month first/,
    ],
  ])('are refused with one sentence: %j', (text, sentence) => {
    const attempt = (): unknown => readReadings(text, 'The text');
    expect(attempt).toThrow(InputError);
    expect(attempt).toThrow(sentence);
  });

  it('never break anything else', () => {
    const piece = fc.constantFrom(
      ',',
      ';',
      '\t',
      '\n',
      '2024-01-05',
      '1/2/24',
      '-3',
      '28,4',
      '"',
      ' ',
      'Min °F',
      '6:30 PM',
      '\u0000',
      'x',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        try {
          const { readings } = readReadings(pieces.join(''), 'x');
          expect(readings.every(({ minimum }) => Number.isFinite(minimum))).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('read back whatever table they are written in', () => {
    const rows = fc.uniqueArray(
      fc.record({ day: fc.integer({ min: 18000, max: 20000 }), tenths: fc.integer({ min: -300, max: 500 }) }),
      { minLength: 3, maxLength: 40, selector: ({ day }) => day },
    );
    fc.assert(
      fc.property(
        rows,
        fc.constantFrom(';', '\t', '|'),
        fc.constantFrom('.', ','),
        (list, separator, mark) => {
          const lines = list.map(
            ({ day, tenths }) =>
              `${formatIsoDay(day)}${separator}${(tenths / 10).toFixed(1).replace('.', mark)}`,
          );
          const found = readReadings(['day', ...lines].join('\n'), 'x').readings;
          const sorted = [...list].sort((a, b) => a.day - b.day);
          expect(found.map(({ day, minimum }) => ({ day, tenths: Math.round(minimum * 10) + 0 }))).toEqual(
            sorted,
          );
        },
      ),
    );
  });
});
