import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { dayLengthOfAngle, declinationSpencer, sunsetAngle } from '../../../analysis/night/sun.ts';
import { prepareObstacles } from '../../../analysis/spot/obstacles.ts';
import { winterSun, winterSunHours } from '../../../analysis/spot/sun-hours.ts';
import type { Canopy, PlanPoint, Wall, YardThing } from '../../../analysis/spot/yard.ts';
import { anyYard } from './any-yard.ts';

const FAR_M = 1e5;
const RADIANS = Math.PI / 180;
/** Days of the year from 6 November to 4 February, and from 6 May to 5 August. */
const WINTER_NORTH = Array.from({ length: 91 }, (_, at) => ((355 - 45 + at - 1) % 365) + 1);
const WINTER_SOUTH = Array.from({ length: 91 }, (_, at) => 172 - 45 + at);

function endless(northM: number, heightM: number): Wall {
  const line: PlanPoint[] = [
    [-FAR_M, northM],
    [FAR_M, northM],
  ];
  return { kind: 'wall', id: 'wall', line, heightM, masonry: true, open: false };
}

function hoursAt(latDeg: number, ...things: YardThing[]): number {
  return winterSunHours(prepareObstacles({ things }), [0, 0], latDeg, 0);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Minute by minute from the day's declination (Spencer), without refraction; `seen` tells by elevation and bearing. */
function byMinutes(
  latDeg: number,
  days: readonly number[],
  seen: (elevation: number, bearing: number) => boolean,
) {
  const lat = latDeg * RADIANS;
  const hours = days.map((day) => {
    const declination = declinationSpencer(day);
    let minutes = 0;
    for (let minute = 0; minute < 1440; minute++) {
      const angle = ((minute + 0.5 - 720) / 720) * Math.PI;
      const up = Math.asin(
        Math.sin(lat) * Math.sin(declination) + Math.cos(lat) * Math.cos(declination) * Math.cos(angle),
      );
      const north =
        Math.cos(lat) * Math.sin(declination) - Math.sin(lat) * Math.cos(declination) * Math.cos(angle);
      const bearing = Math.atan2(-Math.cos(declination) * Math.sin(angle), north);
      if (up > 0 && seen(up, bearing)) minutes++;
    }
    return minutes / 60;
  });
  return mean(hours);
}

describe('in the open', () => {
  test.each([
    [31, WINTER_NORTH],
    [45, WINTER_NORTH],
    [-34, WINTER_SOUTH],
    [0, WINTER_NORTH],
  ])('at latitude %i the winter’s mean day length, the disc’s middle up by refraction', (latDeg, days) => {
    const lengths = days.map((day) => dayLengthOfAngle(sunsetAngle(latDeg, declinationSpencer(day), 90.5)));
    expect(Math.abs(hoursAt(latDeg) - mean(lengths))).toBeLessThan(0.1);
  });

  test('no sun in the polar night', () => {
    expect(hoursAt(80)).toBe(0);
  });

  test('the sun of the south stands in the north', () => {
    const noon = winterSun(-34);
    const highest = noon.up.indexOf(Math.max(...noon.up));
    expect([71, 0]).toContain(noon.azimuth[highest]);
  });
});

describe('behind a long wall on the side of the sun, against minutes of the sun’s path', () => {
  test.each([
    // The wall's top at degrees of elevation straight before the eye.
    [31, 20],
    [31, 33],
    [31, 60],
    [42, 25],
    [-34, 30],
  ])('latitude %i, wall to %i degrees', (latDeg, degrees) => {
    const towards = latDeg < 0 ? 1 : -1;
    const rise = Math.tan(degrees * RADIANS);
    const expected = byMinutes(latDeg, latDeg < 0 ? WINTER_SOUTH : WINTER_NORTH, (up, bearing) => {
      const towardsWall = Math.cos(bearing) * towards;
      return towardsWall <= 0 || Math.tan(up) > rise * towardsWall;
    });
    expect(Math.abs(hoursAt(latDeg, endless(towards * 4, 4 * rise)) - expected)).toBeLessThan(0.25);
  });

  test('a wall on the side away from the sun takes nothing', () => {
    expect(hoursAt(31, endless(2, 30))).toBe(hoursAt(31));
    expect(hoursAt(-31, endless(-2, 30))).toBe(hoursAt(-31));
  });
});

test('a crown of density 0.6 before all of the sky lets 0.4 of the hours through, a second one 0.16', () => {
  const outline: PlanPoint[] = [
    [-FAR_M, -FAR_M],
    [FAR_M, -FAR_M],
    [FAR_M, FAR_M],
    [-FAR_M, FAR_M],
  ];
  const crown: Canopy = { kind: 'canopy', id: 'c', outline, baseM: 0, heightM: 5, density: 0.6 };
  expect(hoursAt(31, crown)).toBeCloseTo(0.4 * hoursAt(31), 10);
  expect(hoursAt(31, crown, crown)).toBeCloseTo(0.16 * hoursAt(31), 10);
});

test('the low sun reaches beneath a roof', () => {
  const outline: PlanPoint[] = [
    [-2, -2],
    [2, -2],
    [2, 2],
    [-2, 2],
  ];
  const roof: Canopy = { kind: 'canopy', id: 'c', outline, baseM: 3, heightM: 3.2, density: 1 };
  expect(hoursAt(31, roof)).toBe(hoursAt(31));
  expect(hoursAt(31, { ...roof, baseM: 0.5 })).toBeLessThan(hoursAt(31) - 3);
});

test('in a building there is none, and what was asked at another latitude before changes nothing', () => {
  const square: PlanPoint[] = [
    [-2, -2],
    [2, -2],
    [2, 2],
    [-2, 2],
  ];
  const shape = { kind: 'building' as const, id: 'b', outline: square, heated: false, masonry: false };
  expect(hoursAt(31, { ...shape, heightM: 3 })).toBe(0);
  const before = hoursAt(31);
  hoursAt(-20);
  expect(hoursAt(31)).toBe(before);
});

test('higher things never let more sun through, and a mirrored yard has as much in the other hemisphere', () => {
  const tenths = fc.nat(139).map((at) => 0.0137 + at / 10);
  const byM = fc.double({ min: 0, max: 5, noNaN: true });
  fc.assert(
    fc.property(
      anyYard,
      tenths,
      tenths,
      byM,
      fc.integer({ min: 10, max: 50 }),
      (yard, east, north, raise, lat) => {
        const at: PlanPoint = [east, north];
        const hours = winterSunHours(prepareObstacles(yard), at, lat);
        const things = yard.things.map((thing) =>
          'heightM' in thing ? { ...thing, heightM: thing.heightM + raise } : thing,
        );
        expect(winterSunHours(prepareObstacles({ things }), at, lat)).toBeLessThanOrEqual(hours + 1e-9);
        const flip = ([e, n]: PlanPoint): PlanPoint => [e, -n];
        const mirrored = yard.things.map((thing): YardThing => {
          if ('outline' in thing) return { ...thing, outline: thing.outline.map(flip) };
          return 'line' in thing ? { ...thing, line: thing.line.map(flip) } : thing;
        });
        const south = winterSunHours(prepareObstacles({ things: mirrored }), flip(at), -lat);
        // June is not quite December: the sun's path differs by minutes, at each shadow's edge once more.
        expect(Math.abs(south - hours)).toBeLessThan(0.6);
      },
    ),
    { numRuns: 60 },
  );
});
