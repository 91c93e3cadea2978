import { tableFromArrays, tableToIPC } from 'apache-arrow';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../analysis/records/input-error.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import { decodeWinterTile, encodeWinterTile, tileOf } from '../../../analysis/records/winter-tile.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';

function winters(first: number, count: number): WinterTable {
  const level = (k: number, j: number, w: number) =>
    (k + j + w) % 5 === 0 ? MISSING_HUNDREDTHS : -100 * k + 7 * j - w;
  return {
    winter: Int16Array.from({ length: count }, (_, w) => first + w),
    complete: Uint8Array.from({ length: count }, (_, w) => w % 2),
    reason: Array.from({ length: count }, (_, w) => (w % 2 ? '' : 'January misses 9 nights')),
    coldest: NIGHT_KINDS.map((_, k) =>
      SUSTAINED_HOURS.map((__, j) => Int16Array.from({ length: count }, (___, w) => level(k, j, w))),
    ),
    coldestDay: NIGHT_KINDS.map((_, k) =>
      SUSTAINED_HOURS.map((__, j) =>
        Int32Array.from({ length: count }, (___, w) =>
          level(k, j, w) === MISSING_HUNDREDTHS ? 0 : 5000 + 365 * w,
        ),
      ),
    ),
  };
}

describe('winters tile', () => {
  it('gives back what was written, missing levels and reasons included', () => {
    const stations = new Map([
      ['A', winters(1950, 6)],
      ['B', winters(1999, 1)],
    ]);
    expect(decodeWinterTile(encodeWinterTile(stations))).toEqual(stations);
  });

  it('keeps which winters have whole dates when all stations know it', () => {
    const known = { ...winters(1950, 6), datesWhole: Uint8Array.of(0, 1, 0, 0, 0, 1) };
    const all = new Map([['A', known]]);
    expect(decodeWinterTile(encodeWinterTile(all))).toEqual(all);
    const some = new Map([
      ['A', known],
      ['B', winters(1950, 6)],
    ]);
    expect(decodeWinterTile(encodeWinterTile(some)).get('A')?.datesWhole).toBeUndefined();
  });

  it('writes the same bytes from the same winters', () => {
    const write = () => encodeWinterTile(new Map([['A', winters(1950, 6)]]));
    expect(write()).toEqual(write());
  });

  it('refuses bytes that are no Arrow stream, and a stream of another table', () => {
    expect(() => decodeWinterTile(new Uint8Array([1, 2, 3, 4, 5, 6, 7, 8]), 'x.arrow')).toThrow(InputError);
    const other = tableToIPC(tableFromArrays({ a: Int32Array.of(1) }), 'stream');
    expect(() => decodeWinterTile(other, 'x.arrow')).toThrow('x.arrow: column "station" is missing');
  });

  it('names tiles by their south-west corner in all four quarters', () => {
    expect(tileOf(31.2, -41.5)).toBe('n30w042');
    expect(tileOf(-33.95, 151.17)).toBe('s34e150');
    expect(tileOf(0, 0)).toBe('n00e000');
    expect(tileOf(-0.1, -0.1)).toBe('s02w002');
    expect(tileOf(10, 180)).toBe(tileOf(10, -180));
  });
});
