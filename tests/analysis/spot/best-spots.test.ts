import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestSpots, ENOUGH_SUN_HOURS } from '../../../analysis/spot/best-spots.ts';
import { groundTaken, roomToStandM } from '../../../analysis/spot/ground-taken.ts';
import { distanceToOutlines } from '../../../analysis/spot/mechanisms/areas.ts';
import { offsetAt, prepareYard } from '../../../analysis/spot/offset-at.ts';
import type { YardThing } from '../../../analysis/spot/yard.ts';
import { anyYard, HOUSE, rectangle, yardWith } from './drawn-yard.ts';

const LAT = 31;

describe('the best spots', () => {
  it('stand by the sun-facing walls of the heated house, in either hemisphere', () => {
    for (const latDeg of [LAT, -LAT]) {
      const [best, ...others] = bestSpots(
        yardWith([HOUSE], { coldWindFromDeg: latDeg > 0 ? 0 : 180 }),
        latDeg,
      );
      expect(others).toHaveLength(2);
      for (const { at, sunHours, offset } of [best, ...others]) {
        const facesSun = latDeg > 0 ? at[1] < 15 : at[1] > 21;
        expect(facesSun || at[0] < 5).toBe(true);
        expect(sunHours).toBeGreaterThanOrEqual(ENOUGH_SUN_HOURS);
        expect(offset.gain.calm.centreC).toBeGreaterThan(2);
      }
      expect(best.why).toContain(`sun-warmed ${latDeg > 0 ? 'south' : 'north'} wall of the heated house`);
      expect(best.why).toMatch(/hours of winter sun a day\.$/);
      expect(best.why).not.toContain('°');
    }
  });

  it('keep off what stands, off water and paving, off the edge and off each other', () => {
    fc.assert(
      fc.property(
        anyYard(),
        fc.constantFrom(LAT, -LAT),
        fc.integer({ min: 1, max: 8 }),
        (yard, latDeg, widthM) => {
          const spots = bestSpots(yard, latDeg, { grownWidthM: widthM, count: 3 });
          const taken = groundTaken(yard);
          expect(spots.length).toBeLessThanOrEqual(3);
          spots.forEach(({ at: [east, north], offset, why }, k) => {
            expect(Math.min(east, north, 30 - east, 30 - north)).toBeGreaterThanOrEqual(widthM / 2);
            expect(roomToStandM(taken, east, north)).toBeGreaterThanOrEqual(widthM / 2);
            expect(distanceToOutlines(taken.paving, east, north)).toBeGreaterThanOrEqual(widthM / 2);
            for (const { at } of spots.slice(0, k)) {
              expect(Math.hypot(at[0] - east, at[1] - north)).toBeGreaterThanOrEqual(widthM);
            }
            expect(offset).toEqual(offsetAt(prepareYard(yard, latDeg), [east, north]));
            expect(why).toMatch(/^[A-Z0-9].*\.$/);
          });
        },
      ),
      { numRuns: 10 },
    );
  });

  it('are the mildest with enough sun: no sunny place with room, a width away from them, is clearly milder', () => {
    const yard = yardWith([HOUSE, { id: 'dip', kind: 'hollow', at: [15, 8], byM: 2, radiusM: 6 }]);
    const [best] = bestSpots(yard, LAT);
    const prepared = prepareYard(yard, LAT);
    const scoreAt = (at: readonly [number, number]) => {
      const { calm, windy } = offsetAt(prepared, at).gain;
      return calm.centreC + windy.centreC / 2;
    };
    for (let east = 2; east < 28; east += 1.5) {
      for (let north = 2; north < 13.5; north += 1.5) {
        expect(scoreAt([east, north])).toBeLessThanOrEqual(scoreAt(best.at) + 0.11);
      }
    }
  });

  it('say so where no place with room has enough sun', () => {
    const yard = yardWith(
      [
        { ...HOUSE, outline: rectangle(0, -9, 12, -1), heightM: 12 },
        { ...HOUSE, id: 'w', outline: rectangle(-9, -9, -1, 21), heightM: 12 },
        { ...HOUSE, id: 'e', outline: rectangle(11, -9, 20, 21), heightM: 12 },
      ],
      { widthM: 10, depthM: 8 },
    );
    const spots = bestSpots(yard, LAT);
    expect(spots.length).toBeGreaterThan(0);
    for (const { sunHours, why } of spots) {
      expect(sunHours).toBeLessThan(ENOUGH_SUN_HOURS);
      expect(why).toMatch(/Only .* no better spot with room has 4\.$/);
    }
  });

  it('are none where there is no room', () => {
    expect(bestSpots(yardWith([], { widthM: 4, depthM: 4 }), LAT, { grownWidthM: 5 })).toEqual([]);
    const court: YardThing = { id: 'court', kind: 'paving', outline: rectangle(-1, -1, 31, 31) };
    expect(bestSpots(yardWith([court]), LAT)).toEqual([]);
  });
});
