import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { valleyWidthH } from '../../../analysis/night/curve-sustained.ts';
import {
  curveHoursAtOrBelow,
  curveTemperatureC,
  fallBeforeSunriseH,
  riseToH,
  sunsetTemperatureC,
} from '../../../analysis/night/night-curve.ts';
import reference from '../../reference/night/check-values.json';
import { anyCurve, curveOf } from './curves.ts';

const { sun, cases } = reference.hours_below;

describe('hours at or below a level against the time-step counts of tests/reference/night (°F, 0.02 h allowed)', () => {
  for (const night of cases) {
    const curve = curveOf({
      dayLength: sun.Ho - sun.Hn,
      tmaxTwoBefore: night.tmax1,
      tminBefore: night.tmin0,
      tmaxBefore: night.tmax1,
      tmin: night.tmin1,
      tmaxAfter: night.tmax2,
      tminAfter: night.tmin2,
    });
    it.each(Object.entries(night.tm))(`minimum ${night.tmin1}, level %s`, (level, hours) => {
      const theta = Number(level);
      const total = typeof hours === 'number' ? hours : hours.total;
      expect(Math.abs(curveHoursAtOrBelow(curve, theta, -11, 13) - total)).toBeLessThan(0.02);
      if (typeof hours === 'number') return;
      const before = fallBeforeSunriseH(curve, theta, curve.tmaxBefore, curve.tmin);
      const after = riseToH(curve, theta, curve.tmin, curve.tmaxAfter);
      expect(before).toBeCloseTo(hours.pre, 3);
      expect(after).toBeCloseTo(hours.post, 3);
      expect(valleyWidthH(curve, theta)).toBeCloseTo(hours.pre + hours.post, 2);
    });
  }

  it('has the sunset temperature of the hard radiation night, 42.13 °F', () => {
    expect(sunsetTemperatureC(cases[0].tmax1, cases[0].tmin1)).toBeCloseTo(cases[0].tm_sunset_temp!, 9);
  });
});

describe('properties', () => {
  it('passes through its extremes and has no jump', () => {
    fc.assert(
      fc.property(anyCurve, (figures) => {
        const curve = curveOf(figures);
        expect(curveTemperatureC(curve, curve.sunrise)).toBeCloseTo(figures.tmin, 9);
        expect(curveTemperatureC(curve, curve.warmest)).toBeCloseTo(figures.tmaxAfter, 9);
        expect(curveTemperatureC(curve, curve.warmest - 24)).toBeCloseTo(figures.tmaxBefore, 9);
        for (const t of [
          curve.sunrise - 24,
          curve.warmest - 24,
          curve.sunset - 24,
          curve.sunrise,
          curve.sunset,
        ]) {
          const [left, right] = [t - 1e-9, t + 1e-9].map((near) => curveTemperatureC(curve, near));
          expect(Math.abs(left - right)).toBeLessThan(1e-3);
        }
      }),
    );
  });

  it('counts hours like a fine time step, for any level and span', () => {
    const span = fc.tuple(fc.integer({ min: -24, max: 24 }), fc.integer({ min: -24, max: 24 }));
    fc.assert(
      fc.property(anyCurve, fc.integer({ min: -2200, max: 3100 }), span, (figures, hundredths, [a, b]) => {
        const level = hundredths / 100 + 0.005;
        const curve = curveOf(figures);
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const step = 1 / 100;
        let counted = 0;
        for (let t = from + step / 2; t < to; t += step)
          if (curveTemperatureC(curve, t) <= level) counted += step;
        expect(Math.abs(curveHoursAtOrBelow(curve, level, from, to) - counted)).toBeLessThan(0.06);
      }),
    );
  });
});
