import { describe, expect, it } from 'vitest';
import {
  depthCurves,
  depthExtent,
  hoursScale,
  linePath,
  spreadLabels,
} from '../../../web/charts/depth-duration.ts';
import { recentSpan, senSegment, type TrendPoint } from '../../../web/charts/trend-line.ts';

describe('depth against duration', () => {
  const entry = (hours: number, period: number, level: number | null) => ({
    hours,
    period_winters: period,
    level_c: level,
    low_c: level === null ? null : level - 1,
    high_c: level === null ? null : level + 1,
  });
  it('makes one curve a period, frequent first, hours rising, none without a level', () => {
    const curves = depthCurves([entry(4, 10, -3), entry(0, 10, -5), entry(0, 2, -1), entry(0, 50, null)]);
    expect(curves.map(({ periodWinters }) => periodWinters)).toEqual([2, 10]);
    expect(curves[1].points.map(({ hours }) => hours)).toEqual([0, 4]);
    expect(depthExtent(curves, 10)).toEqual([-6.5, -0.5]);
    expect(depthExtent(curves, null)).toEqual([-5.5, -0.5]);
  });
  it('gives the first six hours half of the width', () => {
    const x = hoursScale(0, 100);
    expect([x(0), x(6), x(24)]).toEqual([0, 50, 100]);
  });
  it('pushes labels apart in their order', () => {
    const placed = spreadLabels([10, 12, 13, 80], 17);
    placed.reduce((before, at) => (expect(at - before).toBeGreaterThan(16.9), at));
    expect(placed[3]).toBe(80);
    expect(spreadLabels([0, 50], 17)).toEqual([0, 50]);
    // Two lines that end at the ground: both labels stand over it, in their order.
    expect(spreadLabels([260, 260], 17, 258)).toEqual([241, 258]);
    expect(spreadLabels([20, 260], 17, 258)).toEqual([20, 258]);
    expect(
      linePath([
        [0, 1],
        [2, 3.25],
      ]),
    ).toBe('M0.0,1.0L2.0,3.3');
  });
});

describe('the trend', () => {
  const points = (count: number, value: (i: number) => number): TrendPoint[] =>
    Array.from({ length: count }, (_, i) => ({ winter: 1960 + i, valueC: value(i), complete: true }));
  it('draws Sen’s slope through the middle of the winters', () => {
    const line = senSegment(
      points(41, (i) => -5 + 0.02 * i),
      0.2,
    )!;
    expect(line.from[0]).toBe(1960);
    expect(line.from[1]).toBeCloseTo(-5, 10);
    expect(line.to[1]).toBeCloseTo(-4.2, 10);
    const outlier = senSegment(
      points(41, (i) => (i === 40 ? -50 : -5)),
      0,
    )!;
    expect(outlier.to[1]).toBe(-5);
    expect(
      senSegment(
        points(1, () => 0),
        0,
      ),
    ).toBeNull();
  });
  it('counts the last 30 by complete winters', () => {
    const some = points(40, () => -3).map((point, i) => (i === 20 ? { ...point, complete: false } : point));
    expect(recentSpan(some)).toEqual([1969, 1999]);
    expect(recentSpan(points(29, () => -3))).toBeNull();
  });
});
