import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  dayLengthH,
  dayLengthOfAngle,
  declinationFao,
  declinationSpencer,
  sunriseH,
  sunsetAngle,
  sunsetH,
} from '../../../analysis/night/sun.ts';
import reference from '../../reference/night/check-values.json';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

describe('the FAO-56 worked example (20 S, 3 September: 0.120 rad, 1.527 rad, 11.7 h)', () => {
  const { lat, J, delta, ws, hours } = reference.daylength.fao56_example;
  it('has its declination, sunset angle and day length', () => {
    expect(declinationFao(J)).toBeCloseTo(0.12, 3);
    expect(declinationFao(J)).toBeCloseTo(delta, 6);
    expect(sunsetAngle(lat, declinationFao(J))).toBeCloseTo(1.527, 3);
    expect(sunsetAngle(lat, declinationFao(J))).toBeCloseTo(ws, 6);
    expect(dayLengthH(lat, J)).toBeCloseTo(11.67, 2);
    expect(dayLengthH(lat, J)).toBeCloseTo(hours, 6);
  });
});

describe('day lengths computed in Python (tests/reference/night)', () => {
  it.each(reference.daylength.rows)('$lat N, day $J', ({ lat, J, fao, spencer, spencer_90_833 }) => {
    const declination = declinationSpencer(J);
    expect(dayLengthH(lat, J)).toBeCloseTo(fao, 3);
    expect(dayLengthOfAngle(sunsetAngle(lat, declination))).toBeCloseTo(spencer, 3);
    expect(dayLengthOfAngle(sunsetAngle(lat, declination, 90.833))).toBeCloseTo(spencer_90_833, 3);
  });
});

describe('properties', () => {
  const lat = fc.double({ min: -90, max: 90, noNaN: true });
  const day = fc.integer({ min: 1, max: 366 });

  it('a day and its mirror across the equator fill 24 hours', () => {
    fc.assert(
      fc.property(lat, day, (l, d) => {
        expect(dayLengthH(l, d) + dayLengthH(-l, d)).toBeCloseTo(24, 6);
      }),
    );
  });

  it('sunrise and sunset lie about noon, within the day, also in polar night and polar day', () => {
    fc.assert(
      fc.property(lat, day, (l, d) => {
        const length = dayLengthH(l, d);
        expect(length).toBeGreaterThanOrEqual(0);
        expect(length).toBeLessThanOrEqual(24);
        expect((sunriseH(length) + sunsetH(length)) / 2).toBeCloseTo(12, 9);
      }),
    );
    expect(dayLengthH(80, 355)).toBe(0);
    expect(dayLengthH(80, 172)).toBe(24);
    expect(sunsetAngle(89, radians(-20))).toBe(0);
  });
});
