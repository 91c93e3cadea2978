import { describe, expect, it } from 'vitest';
import { FitBook } from '../../../analysis/answer/fit-book.ts';
import { threeReadings } from '../../../analysis/answer/three-readings.ts';
import { fitMovingGev, movingGevAt } from '../../../analysis/extremes/gev-moving-location.ts';
import { gevReturnPeriod } from '../../../analysis/extremes/gev.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';
import evd from '../../reference/extremes/moving-period.json' with { type: 'json' };
import made from '../../reference/extremes/series.json' with { type: 'json' };
import { inventedWinters } from './invented-winters.ts';

const NAMES = Object.keys(evd.series) as (keyof typeof evd.series)[];

function readings(winters: WinterTable, limitC: number, interpolation: 'none' | 'rough' = 'none') {
  const subject = {
    place: { label: 'Nowhere', lat: 31, lon: -42, elevation_m: 5, basis: 'station' as const },
    winters,
    neighbours: [],
    interpolation:
      interpolation === 'none'
        ? null
        : Array.from({ length: 12 }, () => ({ meanC: -3, meanErrorC: 1, logScaleError: 0.15 })),
    evidence: [],
    notes: [],
  };
  return threeReadings(subject, new FitBook(subject, NO_GAINS), { hours: 0, limitC });
}
/** Winters whose coldest levels are the negated values of a reference series. */
const wintersOf = (name: keyof typeof made.series) =>
  inventedWinters(
    made.series[name].length,
    0,
    1,
    made.series[name].map((value) => -value),
  );

describe("R evd's fgev with a moving location (moving-period.json)", () => {
  it.each(NAMES)('%s: periods in the last winter, and ten winters on', (name) => {
    const values = made.series[name];
    const winters = values.map((_, i) => i + 1);
    const moving = fitMovingGev(values, winters);
    const { levels, periods_last, periods_ten_later } = evd.series[name];
    levels.forEach((level, i) => {
      const at = (winter: number) => gevReturnPeriod(level, movingGevAt(moving, winter));
      expect(at(values.length) / periods_last[i]).toBeCloseTo(1, 3);
      expect(at(values.length + 10) / periods_ten_later[i]).toBeCloseTo(1, 3);
    });
  });

  it.each(NAMES)('%s: the reading of a place, whose levels are kept in hundredths of a degree', (name) => {
    const { levels, periods_last } = evd.series[name];
    levels.forEach((level, i) => {
      const { moving } = readings(wintersOf(name), -level);
      expect(moving!.period / periods_last[i]).toBeCloseTo(1, 1);
      expect(moving!.low).toBeLessThan(moving!.period);
      expect(moving!.high).toBeGreaterThan(moving!.period);
    });
  });
});

describe('three readings', () => {
  it('the whole record is what the ranking says, the last 30 is a record of 30', () => {
    const winters = inventedWinters(60, -3);
    const { whole, last30, moving, change } = readings(winters, -6);
    expect([whole!.winters, whole!.first, whole!.last]).toEqual([60, 1960, 2019]);
    expect([last30!.winters, last30!.first, last30!.last]).toEqual([30, 1990, 2019]);
    const late = { ...winters, complete: winters.complete.map((_, w) => (w < 30 ? 0 : 1)) };
    const alone = readings(late, -6);
    expect(alone.last30).toBeNull();
    expect(last30).toEqual(alone.whole);
    expect(moving!.winter).toBe(2019);
    expect(change!.mannKendallP).toBeGreaterThan(0.05);
  });

  it('winters that grow milder: the moving curve is rarer than the whole record, and the tests say so', () => {
    const steady = inventedWinters(60, -3).coldest[0][0];
    const milder = Array.from({ length: 60 }, (_, w) => Math.min(steady[w], 2000) / 100 + 0.1 * (w - 30));
    const { whole, moving, change } = readings(inventedWinters(60, 0, 1, milder), -5);
    expect(moving!.period).toBeGreaterThan(2 * whole!.headline.period!);
    expect(change!.mannKendallP).toBeLessThan(0.01);
    expect(change!.ratioP).toBeLessThan(0.01);
    // 0.1 °C a winter was put in: 1 °C a decade, 5.9 °C from first to last.
    expect(Math.abs(change!.senCPerDecade - 1)).toBeLessThan(0.3);
    expect(Math.abs(change!.movedC - 5.9)).toBeLessThan(1.8);
  });

  it('an estimated place has wider ranges, and the same question gets the same answer', () => {
    const winters = inventedWinters(60, -3);
    const [sharp, rough] = [readings(winters, -6).moving!, readings(winters, -6, 'rough').moving!];
    expect(rough.low).toBeLessThan(sharp.low);
    expect(rough.high).toBeGreaterThan(sharp.high);
    expect(readings(winters, -6, 'rough').moving).toEqual(rough);
  });

  it('says nothing where there is nothing to say', () => {
    const none = inventedWinters(30, -3);
    expect(readings({ ...none, complete: none.complete.map(() => 0) }, -6)).toEqual({
      whole: null,
      last30: null,
      moving: null,
      change: null,
    });
    expect(readings(inventedWinters(19, -3), -6)).toMatchObject({ last30: null, moving: null, change: null });
    const mild = inventedWinters(40, 0, 1, new Array<number>(40).fill(NaN));
    expect(readings(mild, -6).moving).toBeNull();
  });
});
