import { describe, expect, it } from 'vitest';
import {
  calibrate,
  NO_CHOICES,
  type Calibration,
  type ReadingChoices,
} from '../../../../analysis/spot/thermometer/calibrate.ts';
import { swapped } from '../../../../analysis/spot/thermometer/mend.ts';
import { readReadings } from '../../../../analysis/spot/thermometer/read-readings.ts';
import { civilDate, dayNumber } from '../../../../analysis/units/calendar.ts';
import { asText, inventedStation, readingsBeside } from './invented-station.ts';

const NIGHTS = inventedStation();
const BESIDE = { nights: NIGHTS, from: 'The record', latDeg: 31 };

function run(text: string, choices: Partial<ReadingChoices> = {}): Calibration {
  return calibrate(readReadings(text, 'The text'), BESIDE, { ...NO_CHOICES, ...choices }, 'F');
}

describe('readings beside a station', () => {
  it('give back the offset they were made with, by kind of night, without faults', () => {
    const { estimate, unit, unitBasis, faults, pairing, problem } = run(
      asText(readingsBeside(NIGHTS, { count: 60, step: 1 })),
    );
    expect([unit, unitBasis, faults, problem]).toEqual(['F', 'station', [], null]);
    expect(pairing.pairs).toHaveLength(60);
    const { lowC, centreC, highC } = estimate.calm!.spread;
    expect(lowC).toBeLessThan(1.5);
    expect(highC).toBeGreaterThan(1.5);
    expect(centreC).toBeCloseTo(1.5, 0);
    expect(estimate.nights.calm + estimate.nights.windy + estimate.nights.unclear).toBe(60);
  });

  it('tell their unit by the station where the text does not', () => {
    const inC = asText(readingsBeside(NIGHTS, { unit: 'C' }));
    expect(run(inC)).toMatchObject({ unit: 'C', unitBasis: 'station' });
    expect(run(inC.replace('Minimum', 'Min (°C)'))).toMatchObject({ unit: 'C', unitBasis: 'stated' });
  });

  it('say what a wrong unit looks like, and are right once it is accepted', () => {
    const text = asText(readingsBeside(NIGHTS), 'Date,Low (°C)');
    const { faults } = run(text);
    expect(faults.map(({ id }) => id)).toEqual(['unit']);
    expect(faults[0]!.sentence).toMatch(/taken as °C, and differ from the station by \d+\.\d °F/);
    const mended = run(text, { mends: [faults[0]!.mend!.mend] });
    expect(mended.faults).toEqual([]);
    expect(mended.estimate.calm!.spread.centreC).toBeCloseTo(1.5, 0);
  });

  it('find day and month exchanged, propose it, and change nothing until accepted', () => {
    const right = readingsBeside(NIGHTS, { count: 60, step: 1 });
    const wrong = right.map(({ day, shown }) => ({ day: swapped(day), shown }));
    const asRead = run(asText(wrong));
    expect(asRead.faults.map(({ id }) => id)).toEqual(['swapped']);
    const mended = run(asText(wrong), { mends: [asRead.faults[0]!.mend!.mend] });
    expect(mended.faults).toEqual([]);
    expect(mended.estimate.calm).toEqual(run(asText(right)).estimate.calm);
  });

  it.each([1, -1] as const)('find dates %i day off', (days) => {
    const wrong = readingsBeside(NIGHTS).map(({ day, shown }) => ({ day: day + days, shown }));
    const [fault] = run(asText(wrong)).faults;
    expect(fault).toMatchObject({ id: 'shifted', mend: { mend: { kind: 'shift', days: -days } } });
    expect(run(asText(wrong), { mends: [fault!.mend!.mend] }).faults).toEqual([]);
  });

  it('find a thermometer indoors', () => {
    const indoors = readingsBeside(NIGHTS).map(({ day, shown }) => ({ day, shown: 60 + 0.1 * shown }));
    expect(run(asText(indoors)).faults.map(({ id }) => id)).toEqual(['indoors']);
  });

  it('find a logger in the sun by its maxima', () => {
    const rows = readingsBeside(NIGHTS).map(({ day, shown }) => {
      const { year, month, day: of } = civilDate(day);
      return `${year}-${month}-${of},${shown},${shown + 55}`;
    });
    const { faults, estimate } = run(['Date,Min,Max', ...rows].join('\n'));
    expect(faults.map(({ id, mend }) => [id, mend])).toEqual([['sun', null]]);
    expect(estimate.calm).not.toBeNull();
  });

  it('find a stuck thermometer and name its lines', () => {
    const rows = readingsBeside(NIGHTS).map((row, i) => (i >= 5 && i < 11 ? { ...row, shown: 31 } : row));
    const [fault] = run(asText(rows)).faults;
    expect(fault).toMatchObject({ id: 'stuck', mend: { mend: { lines: [7, 8, 9, 10, 11, 12] } } });
    expect(run(asText(rows), { mends: [fault!.mend!.mend] }).pairing.pairs).toHaveLength(18);
  });

  it('find one wild value, which hardly moves the result', () => {
    const plain = readingsBeside(NIGHTS);
    const rows = plain.map((row, i) => (i === 3 ? { ...row, shown: 99 } : row));
    const { faults, estimate } = run(asText(rows));
    expect(faults).toMatchObject([{ id: 'outlier', mend: { mend: { lines: [5] } } }]);
    expect(faults[0]!.sentence).toContain('Line 5');
    const before = run(asText(plain)).estimate.calm!.spread.centreC;
    expect(Math.abs(estimate.calm!.spread.centreC - before)).toBeLessThan(0.3);
  });

  it('find no fault in good readings of any kind', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const offsetC = -3 + (seed % 8);
      const text = asText(readingsBeside(NIGHTS, { seed, offsetC, noiseC: 1.2, step: 1 + (seed % 3) }));
      expect([seed, run(text).faults]).toEqual([seed, []]);
    }
  });
});

describe('readings that find no nights', () => {
  const daily = (year: number, month: number, day: number): string =>
    asText(
      Array.from({ length: 20 }, (_, i) => ({ day: dayNumber(year, month, day) + i, shown: 30 + (i % 7) })),
    );

  it.each([
    [
      'after the record ends',
      daily(2025, 12, 3),
      'record ends before',
      /^The record ends on 3\d? ?March 2024 and your readings begin on 3 December 2025, so no night is known on both sides\. A file of the station/,
    ],
    [
      'before it begins',
      daily(2010, 12, 3),
      'record begins after',
      /^The record begins on \d+ November 2021/,
    ],
    [
      'in summer',
      daily(2023, 6, 3),
      'warm season',
      /^All 20 readings are from the warm months \(line 2: 3 June 2023, 30\.0 °F\)/,
    ],
    [
      'in autumn',
      daily(2023, 10, 1),
      'too few',
      /^Of 20 readings \(1 October 2023 to 20 October 2023\) no night is/,
    ],
  ])('say so in one sentence: %s', (_, text, id, sentence) => {
    const { problem } = run(text);
    expect(problem?.id).toBe(id);
    expect(problem?.sentence).toMatch(sentence as RegExp);
  });

  it('count how many nights a record that ends too early leaves', () => {
    const { problem, pairing } = run(daily(2024, 3, 29));
    expect(problem?.sentence).toContain('2 nights are known on both sides');
    expect(pairing.after).toBe(18);
  });
});
