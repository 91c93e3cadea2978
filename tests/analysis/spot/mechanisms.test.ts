import { describe, expect, it } from 'vitest';
import { areaShare, yardAreas } from '../../../analysis/spot/mechanisms/areas.ts';
import { coldAir, dammedDepthM } from '../../../analysis/spot/mechanisms/cold-air.ts';
import { bigWaterShares } from '../../../analysis/spot/mechanisms/surroundings.ts';
import { sunnyAspect, wallShares, warmFaces } from '../../../analysis/spot/mechanisms/wall-warmth.ts';
import { shelterShare, windBarriers } from '../../../analysis/spot/mechanisms/wind-shelter.ts';
import type { PlanPoint, YardThing } from '../../../analysis/spot/yard.ts';
import { BARE_YARD, HOUSE, rectangle, yardWith } from './drawn-yard.ts';

const sharesBeside = (things: readonly YardThing[], [east, north]: PlanPoint, latDeg = 31) => {
  const out = new Float64Array(2);
  wallShares(warmFaces({ things }, latDeg), east, north, out);
  return { stored: out[0], heating: out[1] };
};

describe('wall warmth', () => {
  it('is kept by walls that face from the equator round to west', () => {
    const facing = (bearingDeg: number, latDeg: number) => {
      const turn = (bearingDeg * Math.PI) / 180;
      return Number(sunnyAspect(Math.sin(turn), Math.cos(turn), latDeg).toFixed(6));
    };
    for (const bearing of [180, 225, 269.9]) expect(facing(bearing, 31)).toBe(1);
    for (const bearing of [0.1, 45, 90]) expect(facing(bearing, 31)).toBeLessThan(0.01);
    for (const bearing of [270.1, 315, 359.9]) expect(facing(bearing, -31)).toBe(1);
    for (const bearing of [90, 135, 179.9]) expect(facing(bearing, -31)).toBeLessThan(0.01);
    expect(facing(135, 31)).toBeCloseTo(Math.SQRT1_2, 6);
  });

  it('falls to 37 % over 2 m beyond the first 1.5 m, and with the height below 2.4 m', () => {
    expect(sharesBeside([HOUSE], [15, 15 - 3.5]).heating).toBeCloseTo(Math.exp(-1), 9);
    const low = { ...HOUSE, heightM: 1.2 };
    expect(sharesBeside([low], [15, 14]).stored).toBeCloseTo(0.5, 9);
  });

  it('is the same for outlines listed either way, has no gap round a corner, and ends at the house’s line', () => {
    const turned = { ...HOUSE, outline: [...HOUSE.outline].reverse() };
    for (const at of [
      [15, 13],
      [3, 18],
      [26, 22],
      [4, 14],
      [3.9, 14.4],
    ] as const) {
      expect(sharesBeside([turned], at)).toEqual(sharesBeside([HOUSE], at));
      expect(sharesBeside([HOUSE], at).heating).toBeGreaterThan(0.4);
    }
    for (let turn = 180; turn <= 270; turn += 5) {
      const at: PlanPoint = [5 + Math.sin((turn * Math.PI) / 180), 15 + Math.cos((turn * Math.PI) / 180)];
      expect(sharesBeside([HOUSE], at).stored, `${turn}°`).toBeCloseTo(1, 9);
    }
    // Beyond the east end, level with the wall: nothing of the south face, the east face keeps no sun.
    expect(sharesBeside([HOUSE], [26, 15]).stored).toBeCloseTo(0, 9);
  });
});

describe('shelter', () => {
  // A wall that fills half of the wind's 65 degrees shelters half; edges are shared out, not jumped.
  it('is the share of the veering wind that is kept off', () => {
    const half: YardThing = {
      id: 'w',
      kind: 'windbreak',
      line: [
        [15, 20],
        [60, 20],
      ],
      heightM: 3,
    };
    const shareAt = (east: number) => shelterShare(windBarriers(yardWith([half])), east, 15);
    expect(shareAt(15)).toBeCloseTo(0.5, 9);
    expect(shareAt(25)).toBeCloseTo(1, 9);
    expect(shareAt(5)).toBeCloseTo(0, 9);
    for (let east = 8; east < 22; east += 0.1) {
      expect(shareAt(east + 0.1) - shareAt(east)).toBeGreaterThanOrEqual(-1e-12);
      expect(shareAt(east + 0.1) - shareAt(east)).toBeLessThan(0.03);
    }
  });

  it('does not count the back of a house besides its front', () => {
    const near = shelterShare(windBarriers(yardWith([HOUSE])), 4, 8);
    const frontOnly = shelterShare(
      windBarriers(
        yardWith([
          { id: 'w', kind: 'windbreak', line: [[5, 21], [5, 15], [25, 15]], heightM: 5 }, // prettier-ignore
        ]),
      ),
      4,
      8,
    );
    expect(near).toBeCloseTo(frontOnly, 9);
  });
});

describe('areas on the ground', () => {
  it('reach a little beyond their edge and do less when small', () => {
    const court = (east: number) =>
      yardAreas({ things: [{ id: 'p', kind: 'paving', outline: rectangle(0, 0, east, 6) }] }).paving;
    expect(areaShare(court(6), 7, 3)).toBe(1);
    expect(areaShare(court(6), 9, 3)).toBeCloseTo(Math.exp(-1), 9);
    expect(areaShare(court(1), 0.5, 3)).toBeCloseTo(0.5, 9);
    expect(areaShare(yardAreas({ things: [] }).ponds, 1, 1)).toBe(0);
  });
});

describe('dammed cold air', () => {
  it('stands as deep as the dam at its foot, less uphill, and no deeper than 3 m', () => {
    const dam = (heightM: number): YardThing => ({
      id: 'd',
      kind: 'windbreak',
      line: [
        [-300, 10],
        [300, 10],
      ],
      heightM,
    });
    const depthAt = (north: number, heightM: number) =>
      dammedDepthM(
        coldAir(yardWith([dam(heightM)], { slope: { towardsDeg: 180, percent: 5, position: 'middle' } })),
        15,
        north,
      );
    expect(depthAt(10.0001, 2)).toBeCloseTo(2, 3);
    expect(depthAt(10.0001, 12)).toBeCloseTo(3, 3);
    expect(depthAt(16, 2)).toBeLessThan(depthAt(12, 2));
    expect(depthAt(31, 2)).toBe(0);
    expect(depthAt(9, 2)).toBe(0);
  });
});

describe('big water', () => {
  it('counts whole within 45 degrees of the cold wind, not at all on windy nights from 90 on', () => {
    const at = (bearingDeg: number) =>
      bigWaterShares({ ...BARE_YARD, bigWater: { bearingDeg, distanceM: 0, kind: 'lake' } });
    expect(at(44)).toEqual({ calm: 1, windy: 1 });
    expect(at(91)).toEqual({ calm: 0.5, windy: 0 });
    expect(at(60).windy).toBeGreaterThan(0.6);
    expect(at(60).windy).toBeLessThan(0.8);
  });
});
