import { describe, expect, test } from 'vitest';
import { sunPosition } from '../../../analysis/spot/sun-position.ts';
import noaa from '../../reference/spot/sun-positions.json' with { type: 'json' };

/** Difference of bearings seen on the sky, degrees: a degree of bearing is less high up. */
function apart(bearingDeg: number, otherDeg: number, elevationDeg: number) {
  const turn = Math.abs(((bearingDeg - otherDeg + 540) % 360) - 180);
  return turn * Math.cos((elevationDeg * Math.PI) / 180);
}

describe('against the published', () => {
  test('example of the solar position algorithm (Reda and Andreas 2004, table A5.1)', () => {
    const utcMs = Date.UTC(2003, 9, 17, 19, 30, 30);
    const sun = sunPosition({ latDeg: 39.742476, lonDeg: -105.1786, utcMs });
    expect(Math.abs(sun.elevationDeg - (90 - 50.11162))).toBeLessThan(0.01);
    expect(Math.abs(sun.bearingDeg - 194.34024)).toBeLessThan(0.01);
  });

  test('declination of 13 October 1992 (Meeus, Astronomical Algorithms, example 25.a), seen from the pole', () => {
    const sun = sunPosition({ latDeg: -90, lonDeg: 0, utcMs: Date.UTC(1992, 9, 13) - 59_000 });
    const refractionDeg = 0.11;
    expect(Math.abs(sun.elevationDeg - refractionDeg - 7.78507)).toBeLessThan(0.01);
  });

  test.each([
    // Instants of the almanac, from memory: the sun's declination is then 0 and plus and minus 23.44 degrees.
    ['equinox', Date.UTC(2024, 2, 20, 3, 6), 0],
    ['June solstice', Date.UTC(2024, 5, 20, 20, 51), 23.44],
    ['December solstice', Date.UTC(2024, 11, 21, 9, 21), -23.44],
  ])('%s: the height at noon on the 40th parallel', (_, utcMs, declinationDeg) => {
    // All longitudes: at one of them it is noon.
    const heights = Array.from(
      { length: 1440 },
      (_, at) => sunPosition({ latDeg: 40, lonDeg: at / 4 - 180, utcMs }).elevationDeg,
    );
    expect(Math.abs(Math.max(...heights) - (50 + declinationDeg))).toBeLessThan(0.04);
  });

  test.each([
    // Equation of time at its ends, minutes, from memory of the almanac's table.
    ['11 February', Date.UTC(2026, 1, 11, 12, 0), -14.2],
    ['3 November', Date.UTC(2026, 10, 3, 12, 0), 16.4],
  ])('%s: the sun bears south at noon by the sundial', (_, utcMs, ahead) => {
    const { bearingDeg } = sunPosition({ latDeg: 45, lonDeg: 0, utcMs: utcMs - ahead * 60_000 });
    expect(Math.abs(bearingDeg - 180)).toBeLessThan(0.1);
  });
});

test('against the formulas of NOAA, 1990 to 2059, both hemispheres: a 25th of the disc', () => {
  const risen = noaa.rows.filter(({ apparent }) => apparent > 0);
  expect(risen.length).toBeGreaterThan(200);
  for (const { lat, lon, utc, apparent, bearing } of risen) {
    const sun = sunPosition({ latDeg: lat, lonDeg: lon, utcMs: Date.parse(utc) });
    expect(Math.abs(sun.elevationDeg - apparent)).toBeLessThan(0.02);
    expect(apart(sun.bearingDeg, bearing, apparent)).toBeLessThan(0.02);
  }
});
