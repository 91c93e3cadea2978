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
  it('put the point inside its range', () => {
    const marks = periodMarks({ period: 12, low: 7, high: 25, basis: 'fitted' });
    expect(marks).toMatchObject({ kind: 'estimate', open: false });
    expect([marks.from, marks.point, marks.to]).toEqual([7, 12, 25].map((period) => periodPosition(period)));
  });
  it('open the range where its rare end is unknown or beyond the axis', () => {
    expect(periodMarks({ period: 60, low: 24, high: null, basis: 'fitted' })).toMatchObject({
      open: true,
      to: 1,
    });
    expect(periodMarks({ period: 60, low: 24, high: 900, basis: 'counted' })).toMatchObject({
      open: true,
      to: 1,
    });
  });
  it('draw only a bound where only a bound is known', () => {
    const beyond = periodMarks({ period: 70, low: 70, high: null, basis: 'beyond' });
    expect(beyond).toEqual({ point: null, from: periodPosition(70), to: 1, open: true, kind: 'beyond' });
    const unseen = periodMarks({ period: null, low: 6, high: null, basis: 'not seen' });
    expect(unseen).toEqual({ point: null, from: periodPosition(6), to: 1, open: true, kind: 'not seen' });
  });
  it('keep a range around a headline that monotony moved outside its own interval', () => {
    const marks = periodMarks({ period: 5, low: 6, high: 9, basis: 'fitted' });
    expect(marks.from).toBe(marks.point);
    expect(marks.to).toBe(periodPosition(9));
  });
});
