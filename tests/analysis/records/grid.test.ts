import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cellAt,
  cellCentre,
  coastKmAt,
  decodeGrid,
  elevationAt,
  encodeGrid,
  type PlaceGrid,
} from '../../../analysis/records/grid.ts';
import { InputError } from '../../../analysis/records/input-error.ts';

/** Three columns by two rows from 10 E, 40 N, steps of 0.5 and 0.25 degrees. */
const SMALL: PlaceGrid = {
  columns: 3,
  rows: 2,
  west: 10,
  south: 40,
  stepLonDeg: 0.5,
  stepLatDeg: 0.25,
  elevationM: Float32Array.of(100, 200, NaN, 300, 400, -5),
  coastKm: Float32Array.of(1, 2, 0, 4, 5.5, 6),
  land: Uint8Array.of(1, 1, 0, 1, 1, 1),
};

const grids = fc
  .record({ columns: fc.integer({ min: 1, max: 12 }), rows: fc.integer({ min: 1, max: 12 }) })
  .chain(({ columns, rows }) => {
    const all = <T>(arb: fc.Arbitrary<T>) =>
      fc.array(arb, { minLength: columns * rows, maxLength: columns * rows });
    return fc
      .record({
        west: fc.double({ min: -180, max: 179.99, noNaN: true }),
        south: fc.double({ min: -85, max: 80, noNaN: true }),
        stepLonDeg: fc.double({ min: 1e-4, max: 3, noNaN: true }),
        stepLatDeg: fc.double({ min: 1e-4, max: 0.4, noNaN: true }),
        m: all(fc.oneof(fc.constant(NaN), fc.integer({ min: -400, max: 8000 }))),
        tenths: all(fc.oneof(fc.constant(NaN), fc.integer({ min: 0, max: 60_000 }))),
        land: all(fc.integer({ min: 0, max: 1 })),
      })
      .map(({ m, tenths, land, ...place }): PlaceGrid => ({
        columns,
        rows,
        ...place,
        elevationM: Float32Array.from(m),
        coastKm: Float32Array.from(tenths, (value) => value / 10),
        land: Uint8Array.from(land),
      }));
  });

describe('grid.bin', () => {
  it('is laid out as documented', () => {
    const bytes = encodeGrid(SMALL);
    const view = new DataView(bytes.buffer);
    expect(bytes.length).toBe(48 + 6 * 4 + 1);
    expect(new TextDecoder().decode(bytes.subarray(0, 4))).toBe('CWGR');
    expect([view.getUint16(4, true), view.getUint32(8, true), view.getUint32(12, true)]).toEqual([1, 3, 2]);
    expect([16, 24, 32, 40].map((at) => view.getFloat64(at, true))).toEqual([10, 40, 0.5, 0.25]);
    expect(view.getInt16(48 + 2, true)).toBe(200);
    expect(view.getInt16(48 + 4, true)).toBe(-32768);
    expect(view.getUint16(48 + 12 + 8, true)).toBe(55);
    expect(bytes.at(-1)).toBe(0b111011);
  });

  it('gives back what went in, for any grid', () => {
    fc.assert(
      fc.property(grids, (grid) => {
        const back = decodeGrid(encodeGrid(grid));
        expect(back).toEqual(grid);
      }),
    );
  });

  it('rounds to whole metres and tenths of a km', () => {
    const back = decodeGrid(
      encodeGrid({
        ...SMALL,
        elevationM: SMALL.elevationM.map((m) => m + 0.4),
        coastKm: SMALL.coastKm.map((km) => km + 0.04),
      }),
    );
    expect(back.elevationM).toEqual(SMALL.elevationM);
    expect(back.coastKm).toEqual(SMALL.coastKm);
  });

  it.each([
    [
      'cut',
      (bytes: Uint8Array) => bytes.subarray(0, 60),
      /g\.bin is damaged: 3 by 2 cells don't fill its 60 bytes/,
    ],
    ['longer', (bytes: Uint8Array) => Uint8Array.of(...bytes, 0), /don't fill its 74 bytes/],
    ['empty', () => new Uint8Array(0), /g\.bin: 0 bytes that are not a grid/],
    ['a page', () => new TextEncoder().encode('<!doctype html>'.repeat(9)), /135 bytes that are not a grid/],
    [
      'newer',
      (bytes: Uint8Array) => bytes.with(4, 2),
      /grid version 2 can't be read; this program reads version 1/,
    ],
    ['nowhere', (bytes: Uint8Array) => bytes.with(16 + 15, 0x7f), /is no place/],
  ])('%s is refused with one sentence', (_, change, sentence) => {
    const read = () => decodeGrid(change(encodeGrid(SMALL)), 'g.bin');
    expect(read).toThrow(InputError);
    expect(read).toThrow(sentence);
  });

  it('reads bytes that begin within a larger buffer', () => {
    const bytes = encodeGrid(SMALL);
    const larger = new Uint8Array(bytes.length + 7);
    larger.set(bytes, 7);
    expect(decodeGrid(larger.subarray(7))).toEqual(SMALL);
  });
});

describe('places on the grid', () => {
  it('has centres row by row from the south-west', () => {
    expect(cellCentre(SMALL, 0)).toEqual({ lat: 40, lon: 10 });
    expect(cellCentre(SMALL, 2)).toEqual({ lat: 40, lon: 11 });
    expect(cellCentre(SMALL, 4)).toEqual({ lat: 40.25, lon: 10.5 });
  });

  it('interpolates between four centres, worked by hand', () => {
    // A quarter of the way east and half of the way north between 100, 200 (south) and 300, 400 (north).
    expect(elevationAt(SMALL, 40.125, 10.125)).toBeCloseTo(0.5 * (100 + 25) + 0.5 * (300 + 25), 9);
    expect(coastKmAt(SMALL, 40.125, 10.125)).toBeCloseTo(0.5 * 1.25 + 0.5 * 4.375, 5);
  });

  it('leaves out neighbours that are not known', () => {
    // South-east corner is sea: weights 1/4 each of 200, 400 and -5.
    expect(elevationAt(SMALL, 40.125, 10.75)).toBeCloseTo((200 + 400 - 5) / 3, 9);
    expect(elevationAt(SMALL, 40, 11)).toBeNull();
  });

  it('reaches half a cell beyond the outer centres and no further', () => {
    expect(elevationAt(SMALL, 40, 9.76)).toBe(100);
    expect(elevationAt(SMALL, 39.88, 10)).toBe(100);
    expect(elevationAt(SMALL, 40, 9.74)).toBeNull();
    expect(elevationAt(SMALL, 40.4, 10)).toBeNull();
    expect(elevationAt(SMALL, 40, -170)).toBeNull();
  });

  it('finds its own centres, for any grid, whatever turn a longitude is on', () => {
    fc.assert(
      fc.property(grids, fc.nat(), fc.constantFrom(-360, 0, 360), (grid, pick, turn) => {
        const i = pick % (grid.columns * grid.rows);
        const { lat, lon } = cellCentre(grid, i);
        expect(cellAt(grid, lat, lon + turn)).toBe(i);
        const value = elevationAt(grid, lat, lon + turn);
        if (Number.isNaN(grid.elevationM[i])) return;
        expect(value).toBeCloseTo(grid.elevationM[i], 1);
      }),
    );
  });

  it('goes on over the antimeridian', () => {
    const grid = { ...SMALL, west: 179.75 };
    expect(cellCentre(grid, 1).lon).toBe(180.25);
    expect(elevationAt(grid, 40, -179.75)).toBe(200);
    expect(elevationAt(grid, 40, 180.25)).toBe(200);
    expect(cellAt(grid, 40, -179.75)).toBe(1);
  });
});
