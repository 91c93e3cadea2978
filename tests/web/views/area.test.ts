import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AreaDraft } from '../../../web/state/area-draft.svelte.ts';
import { CORNERS_MAX, type Corner } from '../../../web/state/chosen.ts';
import type { Surface } from '../../../web/state/ports.ts';
import { areaSummary } from '../../../web/views/compare/area-summary.ts';
import {
  areaSentence,
  cellsWords,
  spreadHeadline,
  squareAround,
} from '../../../web/views/compare/area-words.ts';

/** Cells of a degree, ten by ten, the middle of the first at 0, 0; periods as given by column and row. */
function made(
  period: (column: number, row: number) => number,
  state = (_c: number, _r: number) => 1,
): Surface {
  const cells = Array.from({ length: 100 }, (_, i) => [i % 10, Math.floor(i / 10)] as const);
  return {
    columns: 10,
    rows: 10,
    west: 0,
    south: 0,
    stepLonDeg: 1,
    stepLatDeg: 1,
    periods: Float32Array.from(cells, ([column, row]) => period(column, row)),
    longestClaims: new Float32Array(100).fill(100),
    states: Uint8Array.from(cells, ([column, row]) => state(column, row)),
    knowsElevation: true,
  };
}
const box = (west: number, south: number, east: number, north: number): readonly Corner[] => [
  { lat: south, lon: west },
  { lat: south, lon: east },
  { lat: north, lon: east },
  { lat: north, lon: west },
];
/** By columns 1, 2, 3 ... winters: rarer to the east. */
const eastward = made((column) => column + 1);

describe('the spread over an area', () => {
  it('is told by the cells whose middle lies inside', () => {
    // Columns 2-6 and rows 3-5: periods 3, 4, 5, 6, 7 three times each.
    const told = areaSummary(eastward, box(1.5, 2.5, 6.5, 5.5));
    expect(told).toMatchObject({ cells: 15, unanswered: 0, oneCell: false });
    expect([told.coldestTenth, told.middle, told.mildestTenth]).toEqual([
      { winters: 3, beyond: false },
      { winters: 5, beyond: false },
      { winters: 7, beyond: false },
    ]);
    // Of column 6 the cell in the middle row.
    expect(told.spot).toEqual({ lat: 4, lon: 6, period: { winters: 7, beyond: false } });
  });

  it('counts by the even-odd rule: a triangle holds half the square', () => {
    const triangle = box(-0.5, -0.5, 9.5, 9.5).slice(0, 3);
    const { cells } = areaSummary(eastward, triangle);
    expect(Math.abs(cells - 50)).toBeLessThanOrEqual(5);
  });

  it('leaves out the sea, and tells the share without an answer', () => {
    const coast = made(
      (column) => column + 1,
      (column, row) => (row < 5 ? 0 : column < 5 ? 2 : 1),
    );
    const told = areaSummary(coast, box(-0.5, -0.5, 9.5, 9.5));
    expect(told).toMatchObject({ cells: 50, unanswered: 0.5 });
    expect(told.coldestTenth?.winters).toBe(6);
    expect(areaSummary(coast, box(-0.5, -0.5, 9.5, 4.5))).toMatchObject({
      cells: 0,
      middle: null,
      spot: null,
    });
    expect(areaSummary(coast, box(-0.5, 5, 4.5, 9.5))).toMatchObject({
      unanswered: 1,
      middle: null,
      spot: null,
    });
  });

  it('claims no more than the cells do', () => {
    const rare = made((column) => (column < 5 ? 20 : Infinity));
    const told = areaSummary(rare, box(-0.5, -0.5, 9.5, 9.5));
    expect(told.mildestTenth).toEqual({ winters: 100, beyond: true });
    expect(told.coldestTenth).toEqual({ winters: 20, beyond: false });
    expect(told.spot?.period).toEqual({ winters: 100, beyond: true });
  });

  it('says when it is smaller than a cell, and takes that one', () => {
    const told = areaSummary(eastward, box(3.2, 3.2, 3.3, 3.3));
    expect(told).toMatchObject({ cells: 1, oneCell: true, middle: { winters: 4 } });
    expect(areaSentence(told, 'Yuzu', 'wood')).toMatch(/smaller than a cell/);
  });

  it('is the same whichever way round and from whichever corner the area is told, and a turn of the globe on', () => {
    fc.assert(
      fc.property(fc.nat(3), fc.boolean(), (start, turned) => {
        const corners = box(1.3, 2.1, 7.7, 6.9);
        const round = [...corners.slice(start), ...corners.slice(0, start)];
        expect(areaSummary(eastward, turned ? round.reverse() : round)).toEqual(
          areaSummary(eastward, corners),
        );
      }),
    );
    const far = { ...eastward, west: 175 };
    const across = areaSummary(far, box(-178.5, 2.5, -176.5, 5.5));
    expect([across.cells, across.middle?.winters]).toEqual([6, 8.5]);
    expect(across.spot?.lon).toBe(-177);
  });
});

describe('an area in words', () => {
  const told = areaSummary(eastward, box(1.5, 2.5, 6.5, 5.5));

  it('sentence, cells, and the row on the axis', () => {
    expect(areaSentence(told, 'Yuzu', 'wood')).toBe(
      'A Yuzu loses major limbs in about 1 winter in 5 at the middling spot of the area; in its coldest tenth in about 1 winter in 3 or oftener, in its mildest tenth in about 1 winter in 7 or more rarely.',
    );
    expect(cellsWords(told)).toBe('15 cells of land, all answered');
    expect(cellsWords({ ...told, unanswered: 0.25 })).toBe('15 cells of land, 25% without an answer');
    expect(spreadHeadline(told)).toMatchObject({ low: 3, period: 5, high: 7, basis: 'fitted' });
    expect(areaSentence({ ...told, cells: 0 }, 'Yuzu', 'wood')).toMatch(/no land/);
  });

  it('a square has its sides as long as asked for: 10 km by the haversine of a sphere of 6371 km', () => {
    const [southWest, southEast, northEast] = squareAround({ lat: 31, lon: -42 }, 10);
    const km = (a: Corner, b: Corner): number => {
      const rad = Math.PI / 180;
      const h =
        Math.sin(((b.lat - a.lat) * rad) / 2) ** 2 +
        Math.cos(a.lat * rad) * Math.cos(b.lat * rad) * Math.sin(((b.lon - a.lon) * rad) / 2) ** 2;
      return 2 * 6371 * Math.asin(Math.sqrt(h));
    };
    expect(km(southEast, northEast)).toBeCloseTo(10, 1);
    expect(km(southWest, southEast)).toBeCloseTo(10, 1);
  });
});

describe('drawing an area', () => {
  it('needs three corners, takes back the last, passes over the same again and too many', () => {
    const draft = new AreaDraft();
    draft.add({ lat: 1, lon: 1 });
    expect(draft.corners).toBeNull();
    draft.begin();
    draft.add({ lat: 1, lon: 1 });
    draft.add({ lat: 1.00001, lon: 1 });
    draft.add({ lat: 2, lon: 1 });
    expect([draft.corners?.length, draft.canEnd, draft.end()]).toEqual([2, false, null]);
    draft.add({ lat: 2, lon: 2 });
    draft.undo();
    draft.add({ lat: 3, lon: 3 });
    expect(draft.end()).toEqual([
      { lat: 1, lon: 1 },
      { lat: 2, lon: 1 },
      { lat: 3, lon: 3 },
    ]);
    expect(draft.corners).toBeNull();
    draft.begin();
    for (let i = 0; i < 30; i++) draft.add({ lat: i, lon: i });
    expect(draft.corners).toHaveLength(CORNERS_MAX);
    draft.cancel();
    expect(draft.corners).toBeNull();
  });
});
