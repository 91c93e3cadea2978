import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import { yardProblems } from '../../../analysis/spot/check-yard.ts';
import type { PlanPoint, Yard } from '../../../analysis/spot/yard.ts';
import { bearingTo, edgePoint, withBearing } from '../../../web/yard/bearings.ts';
import { cornersOf, duplicated, extentOf, movedBy, without } from '../../../web/yard/edit-yard.ts';
import { offsetColour } from '../../../web/yard/field-colours.ts';
import {
  formatLength,
  inLengthUnit,
  lengthFigure,
  lengthToM,
  planScaleBar,
} from '../../../web/yard/lengths.ts';
import { cellAt, filledValues, isDoubtful, paintDoubt, paintOffsets } from '../../../web/yard/paint-field.ts';
import { planScale, toPlan, toPx } from '../../../web/yard/plan-scale.ts';
import { lineBearing, lineLength, sizeOf, straightLine, stretchedTo } from '../../../web/yard/sizes.ts';
import type { PlanScale } from '../../../web/yard/plan-scale.ts';
import { snapPoint } from '../../../web/yard/snapping.ts';
import { TOOLS, usualThing } from '../../../web/yard/tools.ts';
import { pictureOnCanvas, scaledByLength, turnedTo } from '../../../web/yard/underlaid-picture.ts';
import { yardWith } from '../../analysis/spot/drawn-yard.ts';

const EMPTY = yardWith([], { name: 'Empty', widthM: 20, depthM: 15 });

describe('lengths', () => {
  it('are told in metres or feet: a foot is 0.3048 m', () => {
    expect(formatLength(3.048, 'ft')).toBe('10\u00a0ft');
    expect(formatLength(12.5, 'm')).toBe('12.5\u00a0m');
    expect(lengthToM(80, 'ft')).toBeCloseTo(24.384, 9);
    // Kept in steps of 5 cm, ten feet are ten feet still.
    expect(lengthFigure(3.05, 'ft')).toBe(10);
    expect(lengthFigure(1.9, 'ft')).toBe(6.2);
  });

  it('in sentences made in metres are told in feet, other figures left alone', () => {
    expect(inLengthUnit('1.8 m from the wall; crowns hide 14 % of the sky', 'ft')).toBe(
      '6\u00a0ft from the wall; crowns hide 14 % of the sky',
    );
    expect(inLengthUnit('9 square metres or more', 'ft')).toBe('97 square feet or more');
    expect(inLengthUnit('1.8 m from the wall', 'm')).toBe('1.8 m from the wall');
  });

  it('of the scale bar are round and fit', () => {
    expect(planScaleBar(20, 'm', 120)).toEqual({ px: 100, label: '5\u00a0m' });
    fc.assert(
      fc.property(fc.double({ min: 2, max: 100, noNaN: true }), (pxPerM) => {
        expect(planScaleBar(pxPerM, 'm').px).toBeLessThanOrEqual(120);
      }),
    );
  });
});

describe('the sheet', () => {
  it('takes a point there and back again, north up', () => {
    const scale = planScale(40, 30, 800, 640);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (e, n) => {
          const [x, y] = toPx(scale, [e, n]);
          const [east, north] = toPlan(scale, x, y);
          expect([east, north]).toEqual([expect.closeTo(e, 6), expect.closeTo(n, 6)]);
        },
      ),
    );
    expect(toPx(scale, [0, 1])[1]).toBeLessThan(toPx(scale, [0, 0])[1]);
  });
});

describe('things', () => {
  it('of every tool can be reckoned with when put in the middle of any plot', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 200 }), fc.integer({ min: 8, max: 200 }), (widthM, depthM) => {
        let yard: Yard = { ...EMPTY, widthM, depthM };
        for (const tool of TOOLS) {
          const thing = usualThing(tool, yard, [widthM / 2, depthM / 2]);
          yard = { ...yard, things: [...yard.things, thing] };
        }
        expect(yardProblems(yard)).toEqual([]);
      }),
    );
  });

  it('keep their shape and stay on the plot wherever they are moved', () => {
    const metres = fc.double({ min: -80, max: 80, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...READY_YARDS), metres, metres, ({ yard }, east, north) => {
        for (const thing of yard.things) {
          const [before, after] = [cornersOf(thing), cornersOf(movedBy(thing, [east, north], yard))];
          const [dx, dy] = [after[0][0] - before[0][0], after[0][1] - before[0][1]];
          after.forEach(([x, y], i) => {
            expect(Math.abs(x - before[i][0] - dx)).toBeLessThan(0.051);
            expect(Math.abs(y - before[i][1] - dy)).toBeLessThan(0.051);
          });
          const [west, south, eastM, northM] = extentOf(after);
          expect(Math.min(west, south)).toBeGreaterThan(-0.03);
          expect(eastM).toBeLessThan(yard.widthM + 0.03);
          expect(northM).toBeLessThan(yard.depthM + 0.03);
        }
      }),
    );
  });

  it('are duplicated under an id of their own, and taken away again', () => {
    const { yard } = READY_YARDS[0];
    const copy = duplicated(yard, yard.things[0].id);
    expect(copy.yard.things).toHaveLength(yard.things.length + 1);
    expect(new Set(copy.yard.things.map(({ id }) => id)).size).toBe(copy.yard.things.length);
    expect(without(copy.yard, copy.id!)).toEqual(yard);
    expect(duplicated(yard, 'nothing').id).toBeNull();
  });

  it('take sizes typed as numbers', () => {
    const { yard } = READY_YARDS[0];
    const house = yard.things.find(({ kind }) => kind === 'building')!;
    const wider = stretchedTo(house, 'across', 20);
    expect(sizeOf(wider)).toEqual({ acrossM: 20, upM: sizeOf(house).upM });
    expect(extentOf(cornersOf(wider))[0]).toBe(extentOf(cornersOf(house))[0]);
    expect(stretchedTo(house, 'up', 0)).toBe(house);
    const line = straightLine([2, 2], 5, 90);
    expect(line[1]).toEqual([7, 2]);
    expect([lineLength(line), lineBearing(line)]).toEqual([5, 90]);
  });
});

describe('snapping', () => {
  const on = { on: true, gridM: 0.5, cornerM: 0.6 };
  it('a corner near by goes before the grid, the nearest of several first', () => {
    expect(snapPoint([3.1, 3.1], on, { corners: [[3.3, 3.3], [3.2, 3.2]] })).toEqual([3.2, 3.2]); // prettier-ignore
    expect(snapPoint([3.1, 3.1], on, { corners: [[8, 8]] })).toEqual([3, 3]);
  });

  it('never moves a point farther than the grid or a corner is', () => {
    const metres = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(metres, metres, metres, metres, (e, n, cornerE, cornerN) => {
        const to = snapPoint([e, n], on, { corners: [[cornerE, cornerN]] });
        expect(Math.hypot(to[0] - e, to[1] - n)).toBeLessThanOrEqual(0.6 + 1e-9);
      }),
    );
  });
});

describe('bearings', () => {
  it('are clockwise from north in steps of five degrees, and turn the yard’s arrows', () => {
    expect(bearingTo([0, 0], [0, 5])).toBe(0);
    expect(bearingTo([0, 0], [5, 0])).toBe(90);
    expect(bearingTo([0, 0], [-5, -5])).toBe(225);
    expect(withBearing(EMPTY, 'wind', [10, 0]).coldWindFromDeg).toBe(180);
  });

  it('end on the edge of the plot', () => {
    expect(edgePoint(EMPTY, 0)).toEqual([10, 15]);
    const [east, north] = edgePoint(EMPTY, 90);
    expect([east, north]).toEqual([20, expect.closeTo(7.5, 9)]);
  });
});

describe('the field on the sheet', () => {
  const FIELD = {
    columns: 3,
    rows: 2,
    stepM: 0.5,
    calmC: Float32Array.from([0, 2, 0, -2, 0, 4.5]),
    windyC: new Float32Array(6),
    calmHalfRangeC: Float32Array.from([0, 0.5, 0, 2.5, 0, 1]),
    windyHalfRangeC: Float32Array.from([0.1, 0.5, 0, 0, 0, 0]),
    blocked: Uint8Array.from([0, 0, 1, 0, 0, 0]),
  };
  const COLOURS = {
    ground: [250, 250, 250],
    cold: [[200, 200, 255], [100, 100, 255], [0, 0, 255]],
    warm: [[255, 220, 150], [255, 180, 80], [200, 120, 0]],
  } as const; // prettier-ignore

  it('has the ground’s colour at nothing, the last of a side at its end and beyond', () => {
    expect(offsetColour(0, COLOURS)).toEqual([250, 250, 250]);
    expect(offsetColour(9, COLOURS)).toEqual([200, 120, 0]);
    expect(offsetColour(-1.1, COLOURS)).toEqual([200, 200, 255]);
  });

  it('is painted north up', () => {
    const rgba = new Uint8ClampedArray(3 * 2 * 4);
    paintOffsets(FIELD, FIELD.calmC, COLOURS, rgba);
    // The first row of the picture is the northern one: -2 in the west, 4.5 in the east.
    expect(rgba[2]).toBeGreaterThan(rgba[0]);
    expect([...rgba.slice(8, 11)]).toEqual([200, 120, 0]);
  });

  it('runs up to what blocks it: a blocked cell is filled from around for the eye, never read', () => {
    expect(filledValues(FIELD, FIELD.calmC)[2]).toBeCloseTo((2 + 0 + 4.5) / 3, 6);
    expect(cellAt(FIELD, 'calm', [1.2, 0.2])).toBeNull();
    expect(cellAt(FIELD, 'calm', [0.7, 0.2])).toEqual({ offsetC: 2, halfRangeC: 0.5 });
    expect(cellAt(FIELD, 'calm', [1.6, 0.2])).toBeNull();
    expect(cellAt(FIELD, 'calm', [-0.1, 0.2])).toBeNull();
  });

  it('is hatched where the range is wider than the offset', () => {
    const mask = new Uint8ClampedArray(3 * 2 * 4);
    expect(paintDoubt(FIELD, 'calm', mask)).toBe(1);
    expect(mask[3]).toBe(255);
    expect(paintDoubt(FIELD, 'windy', mask)).toBe(1);
    expect(isDoubtful(0, 0)).toBe(false);
    expect(isDoubtful(-1, 0.9)).toBe(false);
  });
});

describe('a picture under the plan', () => {
  const picture = { at: [0, 0] as PlanPoint, widthM: 20 };
  it('is stretched about the first point until the two are as far apart as told', () => {
    const scaled = scaledByLength(picture, [4, 4], [8, 4], 8)!;
    expect(scaled).toMatchObject({ widthM: 40, at: [-4, -4] });
    // What lay at 8, 4 now lies 8 m from the first point.
    const share = (8 - picture.at[0]) / picture.widthM;
    expect(scaled.at[0] + share * scaled.widthM).toBeCloseTo(12, 6);
  });

  it('lies on its own edges unturned, and turned keeps its middle', () => {
    const placed = { ...picture, at: [2, 1] as PlanPoint, shape: 0.5, turnDeg: 0 };
    const scale = { pxPerM: 10, leftPx: 5, bottomPx: 300 } as PlanScale;
    const flat = pictureOnCanvas(placed, scale);
    // 20 m by 10 m at 10 dots a metre, its west edge 2 m east, its north edge 11 m north of the plan's corner.
    expect([flat.x - flat.offsetX, flat.y - flat.offsetY]).toEqual([25, 190]);
    expect([flat.width, flat.height]).toEqual([200, 100]);
    expect(pictureOnCanvas(turnedTo(placed, 30), scale)).toEqual({ ...flat, rotation: 30 });
  });

  it('is turned by less than a whole round', () => {
    const turns = [0, 180, 190, 270, 360, -90, -200, 725].map((deg) => turnedTo(picture, deg).turnDeg);
    expect(turns).toEqual([0, 180, -170, -90, 0, -90, 160, 5]);
  });

  it('is left alone by the same point twice, no length, or one that would blow it up', () => {
    expect(scaledByLength(picture, [4, 4], [4, 4], 8)).toBeNull();
    expect(scaledByLength(picture, [4, 4], [8, 4], 0)).toBeNull();
    expect(scaledByLength(picture, [4, 4], [4.1, 4], 100)).toBeNull();
  });
});
