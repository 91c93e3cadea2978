import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { cleanDaily, type CleanedDaily } from '../../../analysis/clean/clean-daily.ts';
import { formatIsoDay } from '../../../analysis/units/calendar.ts';
import { InventedRecord, rawRows } from './invented-record.ts';

type Listed = [string, string, number, string];
const list = (values: CleanedDaily['dropped']): Listed[] =>
  values.map((v) => [formatIsoDay(v.day), v.element, Math.round(v.valueC * 10) / 10, v.reason]);
const of = (values: CleanedDaily['dropped'], element: string): Listed[] =>
  list(values).filter((v) => v[1] === element);
const tminOn = (cleaned: CleanedDaily, day: string): number =>
  cleaned.series.tminC[Date.parse(day) / 86_400_000 - cleaned.series.firstDay]!;
const tmaxOn = (cleaned: CleanedDaily, day: string): number =>
  cleaned.series.tmaxC[Date.parse(day) / 86_400_000 - cleaned.series.firstDay]!;

describe('an untouched record', () => {
  it('loses nothing', () => {
    for (const kind of [
      {},
      { winterC: -8, winterSpreadC: 7 },
      { winterC: 12, summerC: 20, winterSpreadC: 2 },
    ]) {
      const record = new InventedRecord(kind);
      const cleaned = cleanDaily([record.raw()]);
      expect(list(cleaned.dropped)).toEqual([]);
      expect([...cleaned.series.tminC]).toEqual(record.tmin);
      expect([...cleaned.series.tmaxC]).toEqual(record.tmax);
    }
  });

  it('is the same whatever the order of its rows', () => {
    const rows = Array.from({ length: 30 }, (_, i) => [formatIsoDay(i), i, i + 9] as const);
    const expected = cleanDaily([rawRows(rows)]).series.tminC;
    fc.assert(
      fc.property(fc.shuffledSubarray(rows, { minLength: 30 }), (shuffled) => {
        expect(cleanDaily([rawRows(shuffled)]).series.tminC).toEqual(expected);
      }),
      { numRuns: 30 },
    );
  });
});

describe('repeats', () => {
  it('with the same value count once, with a note', () => {
    const cleaned = cleanDaily([rawRows([['2001-01-01', 1, 5], ['2001-01-01', 1, 5], ['2001-01-02', 2, 6]])]); // prettier-ignore
    expect([...cleaned.series.tminC]).toEqual([1, 2]);
    expect(list(cleaned.dropped)).toEqual([]);
    expect(cleaned.notes).toEqual(['1 days were written more than once with the same value.']);
  });

  it('that conflict keep the colder minimum as doubtful, or the one without a flag', () => {
    const cleaned = cleanDaily([rawRows([['2001-01-01', 1, null], ['2001-01-01', -4, null], ['2001-01-02', -9, null, 'I'], ['2001-01-02', 2, null]])]); // prettier-ignore
    expect([...cleaned.series.tminC]).toEqual([-4, 2]);
    expect(list(cleaned.dropped)).toContainEqual(['2001-01-01', 'tmin', 1, 'conflicting repeat']);
    expect(list(cleaned.doubtful)).toContainEqual(['2001-01-01', 'tmin', -4, 'conflicting repeat']);
  });

  it('join the elements of two files', () => {
    const cleaned = cleanDaily([rawRows([['2001-01-01', 1, null]]), rawRows([['2001-01-01', null, 9]])]);
    expect([tminOn(cleaned, '2001-01-01'), tmaxOn(cleaned, '2001-01-01')]).toEqual([1, 9]);
  });
});

describe('values that cannot be used', () => {
  it('flagged by the source, by the meaning of the flag', () => {
    const cleaned = cleanDaily([rawRows([['2001-01-01', 1, 5, 'I'], ['2001-01-02', 2, 5, 'q']])]); // prettier-ignore
    expect(list(cleaned.dropped)).toEqual([
      ['2001-01-01', 'tmin', 1, 'source flag I (internal consistency)'],
      ['2001-01-02', 'tmin', 2, 'source flag q'],
    ]);
  });

  it('beyond the records of the earth', () => {
    const cleaned = cleanDaily([rawRows([['2001-01-01', -95, 150]])]);
    expect(list(cleaned.dropped).map((v) => v[3])).toEqual(['beyond world records', 'beyond world records']);
  });

  it('minimum above maximum: the plainly wrong one; little differences stay, doubtful', () => {
    const record = new InventedRecord()
      .set('1990-03-05', [8, 17], [9, 2], [8, 17])
      .set('1991-03-05', [8, 14], [9, 7], [8, 14]);
    const cleaned = cleanDaily([record.raw()]);
    expect(list(cleaned.dropped)).toEqual([['1990-03-06', 'tmax', 2, 'minimum above maximum']]);
    expect(of(cleaned.doubtful, 'tmin')).toEqual([['1991-03-06', 'tmin', 9, 'minimum above maximum']]);
    expect(tminOn(cleaned, '1990-03-06')).toBe(9);
  });
});

describe('low values that are no weather', () => {
  const dropped = (record: InventedRecord): Listed[] => list(cleanDaily([record.raw()]).dropped);

  it('a single spike among maxima too warm for it', () => {
    const record = new InventedRecord().set('1990-01-10', [5, 15], [-26, 16], [6, 15]);
    expect(dropped(record)).toEqual([['1990-01-11', 'tmin', -26, 'spike']]);
  });

  it('two equal bad days', () => {
    const record = new InventedRecord().set('1990-01-10', [5, 15], [-36, 14], [-36, 16], [7, 17]);
    expect(dropped(record).map((v) => v[0])).toEqual(['1990-01-11', '1990-01-12']);
  });

  it('out of season', () => {
    const record = new InventedRecord().set('1990-05-27', [19, 29], [-14.2, 29.6], [19, 33]);
    expect(dropped(record)).toEqual([['1990-05-28', 'tmin', -14.2, 'spike']]);
  });

  it('zero for missing', () => {
    const record = new InventedRecord().set('1990-04-10', [14, 24], [0, 25], [15, 25]);
    expect(dropped(record)).toEqual([['1990-04-11', 'tmin', 0, 'zero for missing']]);
    const days = new InventedRecord().set('1990-07-01', [0, 0], [0, 0], [0, 0]);
    const gone = dropped(days).map((v) => `${v[0]} ${v[1]}`);
    for (const day of ['01', '02', '03']) {
      expect(gone).toEqual(expect.arrayContaining([`1990-07-${day} tmin`, `1990-07-${day} tmax`]));
    }
    expect(gone).toHaveLength(6);
  });

  it('beside a gap, where only one side speaks', () => {
    const gap = Array.from({ length: 20 }, () => [null, null] as const);
    const record = new InventedRecord({ winterSpreadC: 2.5 }).set('1990-01-01', ...gap, [-24, null], [-24, null], [null, null], [-25, null], [7, null]); // prettier-ignore
    expect(dropped(record).map((v) => [v[0], v[3]])).toEqual([
      ['1990-01-21', 'spike'],
      ['1990-01-22', 'spike'],
      ['1990-01-24', 'spike'],
    ]);
  });

  it('a stuck thermometer, and days copied', () => {
    const record = new InventedRecord();
    const stuck = Array.from({ length: 14 }, (_, i) => [20.5, 30 + (i % 5)] as const);
    record.set('1990-07-01', ...stuck).set('1995-02-01', [3, 12], [3, 12], [3, 12], [3, 12], [3, 12]);
    const reasons = dropped(record).map((v) => `${v[0].slice(0, 4)} ${v[1]} ${v[3]}`);
    expect(reasons.filter((r) => r === '1990 tmin stuck value')).toHaveLength(13);
    expect(reasons.filter((r) => r === '1995 tmin copied days')).toHaveLength(4);
    expect(reasons.filter((r) => r === '1995 tmax copied days')).toHaveLength(4);
  });

  it('may be judged by neighbours: kept where they agree, dropped where they deny a doubtful one', () => {
    const spike = new InventedRecord().set('1990-01-10', [5, 15], [-26, 16], [6, 15]).raw();
    expect(cleanDaily([spike], { isSupportedByNeighbours: () => true }).dropped).toEqual([]);
    const odd = new InventedRecord().set('1990-01-10', [7, 15], [-7, 13], [7, 15]).raw();
    const alone = cleanDaily([odd]);
    expect(list(alone.dropped)).toEqual([]);
    expect(list(alone.doubtful)).toEqual([['1990-01-11', 'tmin', -7, 'spike']]);
    const denied = cleanDaily([odd], { isSupportedByNeighbours: () => false });
    expect(list(denied.dropped)).toEqual([['1990-01-11', 'tmin', -7, 'spike']]);
    expect(list(denied.doubtful)).toEqual([]);
  });
});

describe('true extremes, as invented sequences like the great freezes', () => {
  it('stay: fronts of two to four days, a radiation night, the coldest day by far', () => {
    const record = new InventedRecord()
      .set('1989-12-21', [2, 12], [0, 8], [-9.4, 0.6], [-11.7, -2.8], [-9.4, 1.1], [-5.6, 9.4])
      .set('1985-01-19', [3.3, 18.3], [-5.6, 14.4], [-12.2, -1.7], [-8.3, 8.3], [-1.1, 13.3])
      .set('1996-02-03', [-1.2, 16.6], [-6.7, 0.5], [-10.9, 4.3], [-7.1, 11.7], [-5.3, 16.7])
      .set('1982-02-10', [3.5, 13.6], [-2.6, 6.4], [-5.5, 9], [-5, 10], [-3.5, 11.8])
      .set('2000-12-20', [4, 9], [-9, -4], [-17, -2.8], [-3.4, -0.6], [-6.4, 2.2]);
    const cleaned = cleanDaily([record.raw()]);
    expect(list(cleaned.dropped)).toEqual([]);
    for (const [day, value] of [['1989-12-24', -11.7], ['1985-01-21', -12.2], ['1996-02-05', -10.9], ['2000-12-22', -17]] as const) {
      expect(tminOn(cleaned, day)).toBe(value);
    } // prettier-ignore
  });

  it('stay in any winter, whatever the depth of a three-day front', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1981, max: 2008 }),
        fc.double({ min: 6, max: 14, noNaN: true }),
        (year, depth) => {
          const record = new InventedRecord();
          const at = record.at(`${year}-01-15`);
          [0.5, 0.9, 1, 0.6].forEach((share, i) => {
            record.tmin[at + i]! -= depth * share;
            record.tmax[at + i]! -= depth * share;
          });
          expect(of(cleanDaily([record.raw()]).dropped, 'tmin')).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('whole °F stored as tenths of °C', () => {
  const asTenths = (f: number): number => Math.round(((f - 32) / 1.8) * 10) / 10;

  it('are restored, month by month', () => {
    const record = new InventedRecord({ years: 2 });
    const cut = record.at('1981-01-01');
    const kept = record.tmin.slice(cut);
    for (let i = 0; i < cut; i += 1) {
      record.tmin[i] = asTenths(Math.round(record.tmin[i]! * 1.8 + 32));
      record.tmax[i] = asTenths(Math.round(record.tmax[i]! * 1.8 + 32));
    }
    record.tmin[5] = asTenths(28);
    const cleaned = cleanDaily([record.raw()]);
    expect(cleaned.series.tminC[5]).toBeCloseTo((28 - 32) / 1.8, 12);
    for (let i = 0; i < cut; i += 1) {
      const fahrenheit = cleaned.series.tminC[i]! * 1.8 + 32;
      expect(Math.abs(fahrenheit - Math.round(fahrenheit))).toBeLessThan(1e-9);
    }
    expect([...cleaned.series.tminC.slice(cut)]).toEqual(kept);
    expect(cleaned.notes[0]).toMatch(
      /^\d+ values were whole °F stored as tenths of °C; they were restored\.$/,
    );
  });

  it('are restored too where the archive added a half and cut, a tenth too warm below zero', () => {
    const record = new InventedRecord({ years: 2, winterC: 0 });
    const cutTenths = (f: number): number => Math.trunc(((f - 32) / 1.8) * 10 + 0.5) / 10;
    const whole = record.tmin.map((value) => Math.round(value * 1.8 + 32));
    record.tmin.forEach((_, i) => {
      record.tmin[i] = cutTenths(whole[i]!);
      record.tmax[i] = cutTenths(Math.round(record.tmax[i]! * 1.8 + 32));
    });
    expect(record.tmin).toContain(-2.1);
    const { series } = cleanDaily([record.raw()]);
    series.tminC.forEach((value, i) => expect(value * 1.8 + 32).toBeCloseTo(whole[i]!, 9));
  });

  it('keep zero for both as 32 °F, where °C would take it for missing', () => {
    const record = new InventedRecord({ winterC: -2, winterSpreadC: 4 });
    for (let i = 0; i < record.tmin.length; i += 1) {
      record.tmin[i] = asTenths(Math.round(record.tmin[i]! * 1.8 + 32));
      record.tmax[i] = asTenths(Math.round(record.tmax[i]! * 1.8 + 32));
    }
    record.set('1990-02-10', [1.1, 7.2], [0, 0], [0.6, 7.2]);
    const cleaned = cleanDaily([record.raw()]);
    expect(tminOn(cleaned, '1990-02-11')).toBe(0);
    expect(list(cleaned.dropped)).toEqual([]);
  });
});

describe('hours of reading', () => {
  it('in the morning: maxima go back to their day', () => {
    const record = new InventedRecord({ years: 3 });
    const truth = record.tmax.slice();
    for (let i = record.tmax.length - 1; i > 0; i -= 1) record.tmax[i] = truth[i - 1]!;
    record.hour.fill(7);
    record.tmax[0] = NaN;
    const cleaned = cleanDaily([record.raw()]);
    expect([...cleaned.series.tmaxC.slice(0, -1)]).toEqual(truth.slice(0, -1));
    expect(cleaned.series.tmaxC.at(-1)).toBeNaN();
    expect(cleaned.notes).toEqual([
      `${truth.length - 1} maxima read in the morning were moved to the day before.`,
    ]);
  });

  it('unknown, but plainly a day late: left, with the years in a note', () => {
    const record = new InventedRecord({ years: 10, winterSpreadC: 5, summerSpreadC: 4 });
    // A maximum that follows both nights around it, as in nature.
    for (let i = 0; i + 1 < record.tmax.length; i += 1)
      record.tmax[i] = (record.tmin[i]! + record.tmin[i + 1]!) / 2 + 10;
    const right = cleanDaily([record.raw()]);
    expect(right.notes.filter((note) => note.includes('a day late'))).toEqual([]);
    for (let i = record.tmax.length - 1; i > 0; i -= 1) record.tmax[i] = record.tmax[i - 1]!;
    const before = record.tmax.slice();
    const late = cleanDaily([record.raw()]);
    expect(late.notes.find((note) => note.includes('a day late'))).toContain('In 1980-1989 the maxima look');
    expect([...late.series.tmaxC].filter((v, i) => v !== before[i])).toHaveLength(late.dropped.length);
  });

  it('afternoon: the second of two equal minima falls before a much warmer night and day, else stays', () => {
    const record = new InventedRecord({ years: 3 });
    record.hour.fill(17);
    record
      .set('1981-01-10', [6, 14], [-3, 6], [-3, 12], [7, 16])
      .set('1981-02-10', [6, 14], [-3, 6], [-3, 7], [-1, 8]);
    const cleaned = cleanDaily([record.raw()]);
    expect(list(cleaned.dropped)).toEqual([['1981-01-12', 'tmin', -3, 'minimum booked twice']]);
    expect([tminOn(cleaned, '1981-02-11'), tminOn(cleaned, '1981-02-12')]).toEqual([-3, -3]);
  });

  it('unknown: equal minima stay', () => {
    const record = new InventedRecord({ years: 3 }).set('1981-01-10', [6, 14], [-3, 6], [-3, 12], [7, 16]);
    expect(list(cleanDaily([record.raw()]).dropped)).toEqual([]);
  });
});
