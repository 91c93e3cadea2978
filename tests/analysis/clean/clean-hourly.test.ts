import { describe, expect, it } from 'vitest';
import { cleanHourly, zoneOffsetH } from '../../../analysis/clean/clean-hourly.ts';
import { rawHours, STATION } from './invented-record.ts';

const day = (base: number): number[] =>
  Array.from({ length: 48 }, (_, i) => base + 5 * Math.sin((i / 24) * 2 * Math.PI));

describe('hourly readings', () => {
  it('in order and without fault stay as they are', () => {
    const raw = rawHours(day(3.33));
    const { series, dropped, doubtful } = cleanHourly([raw]);
    expect([...series.timeUtcH]).toEqual([...raw.timeUtcH]);
    expect([...series.tempC]).toEqual([...raw.tempC]);
    expect([dropped, doubtful]).toEqual([[], []]);
  });

  it('in local standard time become UTC by the zone meridian of the longitude', () => {
    expect([zoneOffsetH(-90.28), zoneOffsetH(-75), zoneOffsetH(2), zoneOffsetH(138.6)]).toEqual([
      6, 5, -0, -9,
    ]);
    const raw = { ...rawHours([1, 2]), localStandard: true, station: { ...STATION, lon: -90.28 } };
    expect([...cleanHourly([raw]).series.timeUtcH]).toEqual([400_006, 400_007]);
    expect(() => cleanHourly([{ ...raw, station: { ...STATION, lon: null } }])).toThrow(
      'hours.csv: times are local, so the longitude of station ZZ1 is needed.',
    );
  });

  it('are sorted; of the same time one stays, the colder where they conflict', () => {
    const raw = rawHours([5, 4, 3, 3.4, -2, 2], { hours: [2, 0, 1, 1, 1, 3] });
    const { series, dropped, doubtful, notes } = cleanHourly([raw]);
    expect([...series.timeUtcH].map((h) => h - 400_000)).toEqual([0, 1, 2, 3]);
    expect([...series.tempC]).toEqual([4, -2, 5, 2]);
    expect(dropped.map((v) => [v.valueC, v.reason])).toEqual([[3, 'conflicting repeat']]);
    expect(doubtful.map((v) => v.valueC)).toEqual([-2]);
    expect(notes).toEqual(['1 readings were written more than once for the same time.']);
  });

  it('flagged, impossible or jumping there and back are dropped by reason', () => {
    const temps = day(10);
    temps[10] = -18;
    temps[20] = temps[21] = -25;
    temps[30] = 99;
    const flags = new Uint8Array(48);
    flags[40] = 115;
    const { series, dropped } = cleanHourly([rawHours(temps, { tempFlag: flags })]);
    expect(dropped.map((v) => v.reason).sort()).toEqual([
      'beyond world records', 'source flag s (marked suspect)', 'spike', 'spike', 'spike',
    ]); // prettier-ignore
    expect(series.tempC).toHaveLength(43);
    expect(Math.min(...series.tempC)).toBeGreaterThan(4);
  });

  it('keep a true front and a basin filling overnight', () => {
    const front = [18, 17, 16, 9, 2, -3, -6, -8, -9, -10, -11, -11, -8, -4, 0];
    const basin = [5, 1, -4, -9, -13, -16, -18, -19, -10, -1, 4];
    for (const temps of [front, basin]) expect(cleanHourly([rawHours(temps)]).dropped).toEqual([]);
  });

  it('stuck for two days are dropped, for one day doubtful', () => {
    const stuck = (hours: number): number[] => [
      ...day(8),
      ...Array.from({ length: hours }, () => 3.3),
      ...day(8),
    ];
    expect(cleanHourly([rawHours(stuck(60))]).dropped.filter((v) => v.reason === 'stuck value')).toHaveLength(
      59,
    );
    const short = cleanHourly([rawHours(stuck(30))]);
    expect(short.dropped).toEqual([]);
    expect(short.doubtful.map((v) => v.reason)).toEqual(['stuck value']);
  });

  it('restore whole °F that came as tenths of °C', () => {
    const temps = Array.from({ length: 200 }, (_, i) => Math.round(((20 + (i % 17) - 32) / 1.8) * 10) / 10);
    const { series } = cleanHourly([rawHours(temps)]);
    expect(series.tempC[8]).toBeCloseTo((28 - 32) / 1.8, 12);
  });

  it('refuse a station with nothing left', () => {
    expect(() => cleanHourly([rawHours([NaN])])).toThrow('Station ZZ1 has no usable hourly readings.');
  });
});
