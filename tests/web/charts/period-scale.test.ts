import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { periodMarks, periodPosition, periodTicks } from '../../../web/charts/period-scale.ts';

describe('the axis of return periods', () => {
  it('is logarithmic: equal ratios are equal distances', () => {
    const gap = (a: number, b: number): number => periodPosition(b) - periodPosition(a);
    expect(gap(1, 10)).toBeCloseTo(gap(10, 100), 10);
    expect(gap(2, 20)).toBeCloseTo(gap(5, 50), 10);
    expect(periodPosition(Math.sqrt(200))).toBeCloseTo((periodPosition(1) + periodPosition(200)) / 2, 10);
  });
  it('never runs backwards and stays inside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 5000, noNaN: true }),
        (a, b) => {
          const [x, y] = [periodPosition(Math.min(a, b)), periodPosition(Math.max(a, b))];
          expect(x).toBeLessThanOrEqual(y);
          expect(x).toBeGreaterThan(0);
          expect(y).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
  it('has an open end for what is rarer than it reaches or unknown', () => {
    expect(periodPosition(200)).toBeLessThan(1);
    expect(periodPosition(201)).toBe(1);
    expect(periodPosition(null)).toBe(1);
    expect(periodPosition(Infinity)).toBe(1);
  });
  it('labels round periods, the first as every winter', () => {
    expect(periodTicks().map(({ label }) => label)).toEqual([
      'every',
      '2',
      '5',
      '10',
      '20',
      '50',
      '100',
      '200',
    ]);
    expect(periodTicks(50).at(-1)!.period).toBe(50);
  });
});

describe('the marks of a row', () => {
  const LAST = periodPosition(120);

  it('put the point inside its range', () => {
    const marks = periodMarks({ period: 12, low: 7, high: 25, basis: 'fitted' }, 60);
    expect(marks).toMatchObject({ kind: 'estimate', open: false });
    expect([marks.from, marks.point, marks.to]).toEqual([7, 12, 25].map((period) => periodPosition(period)));
  });
  it('end open at twice the record where the range goes farther or has no end', () => {
    for (const high of [121, 199, 900, null]) {
      expect(periodMarks({ period: 60, low: 24, high, basis: 'fitted' }, 60)).toMatchObject({
        open: true,
        to: LAST,
      });
    }
    expect(periodMarks({ period: 60, low: 24, high: 120, basis: 'fitted' }, 60)).toMatchObject({
      open: false,
      to: LAST,
    });
    // A short record's count reaches no farther either.
    expect(periodMarks({ period: 12, low: 4, high: 66, basis: 'counted' }, 12).to).toBe(periodPosition(24));
  });
  it('end open at the axis where the record reaches beyond it', () => {
    const marks = periodMarks({ period: 150, low: 60, high: 230, basis: 'fitted' }, 130);
    expect(marks.open).toBe(true);
    expect(marks.to).toBeGreaterThan(periodPosition(200));
    expect(marks.to).toBeLessThan(1);
  });
  it('run from the bound to twice the record where only a bound is known', () => {
    const beyond = periodMarks({ period: 70, low: 70, high: null, basis: 'beyond' }, 60);
    const at = periodPosition(70);
    expect(beyond).toEqual({ point: null, from: at, to: LAST, open: true, kind: 'beyond' });
    const atTheEnd = periodMarks({ period: 120, low: 120, high: null, basis: 'beyond' }, 60);
    expect([atTheEnd.from, atTheEnd.to]).toEqual([LAST, LAST]);
    const unseen = periodMarks({ period: null, low: 6, high: null, basis: 'not seen' }, 15);
    expect(unseen).toMatchObject({
      point: null,
      from: periodPosition(6),
      to: periodPosition(30),
      open: true,
    });
  });
  it('keep a range around a headline that monotony moved outside its own interval', () => {
    const marks = periodMarks({ period: 5, low: 6, high: 9, basis: 'fitted' }, 60);
    expect(marks.from).toBe(marks.point);
    expect(marks.to).toBe(periodPosition(9));
  });
  it('never reach beyond twice the record, whatever the answer', () => {
    const periods = fc.double({ min: 1, max: 5000, noNaN: true });
    fc.assert(
      fc.property(periods, periods, periods, fc.integer({ min: 1, max: 150 }), (a, b, c, winters) => {
        const [low, period, high] = [a, b, c].sort((x, y) => x - y);
        for (const basis of ['fitted', 'counted', 'beyond', 'not seen'] as const) {
          const { from, to, point } = periodMarks({ period, low, high, basis }, winters);
          expect(from).toBeLessThanOrEqual(to);
          expect(point ?? from).toBeLessThanOrEqual(to);
          expect(to).toBeLessThanOrEqual(periodPosition(2 * winters));
        }
      }),
    );
  });
});
