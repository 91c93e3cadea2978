import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packTiles } from '../../../analysis/records/pack-tiles.ts';
import { tileOf } from '../../../analysis/records/winter-tile.ts';

const point = fc.record({
  lat: fc.double({ min: -90, max: 90, noNaN: true }),
  lon: fc.double({ min: -180, max: 180, noNaN: true }),
});

describe('winters tiles of a pack', () => {
  it('are those of 2 by 2 degrees where stations are few', () => {
    fc.assert(
      fc.property(fc.array(point, { maxLength: 12 }), (points) => {
        const stations = points.map((at, i) => ({ id: `S${i}`, ...at }));
        const tiles = packTiles(stations);
        for (const { id, lat, lon } of stations) expect(tiles.get(id)).toBe(tileOf(lat, lon));
      }),
      { seed: 1 },
    );
  });

  it('are quartered where they are many, each station in one that lies where it does', () => {
    const near = fc.record({
      lat: fc.double({ min: -1.9, max: 1.9, noNaN: true }),
      lon: fc.double({ min: -181.9, max: -178.1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(near, { minLength: 60, maxLength: 200 }), (points) => {
        const stations = points.map(({ lat, lon }, i) => ({
          id: `S${i}`,
          lat,
          lon: lon < -180 ? lon + 360 : lon,
        }));
        const tiles = packTiles(stations);
        const counts = new Map<string, number>();
        for (const { id, lat, lon } of stations) {
          const tile = tiles.get(id)!;
          expect(tile.split('-')[0]).toBe(tileOf(lat, lon));
          expect(tile).toMatch(/^[ns]\d\d[ew]\d{3}(-[0-3]{1,4})?$/);
          counts.set(tile, (counts.get(tile) ?? 0) + 1);
        }
        for (const [tile, count] of counts)
          if (tile.length < 'n30w042-0000'.length) expect(count).toBeLessThanOrEqual(12);
      }),
      { numRuns: 40, seed: 2 },
    );
  });

  it('number the quarters south-west, south-east, north-west, north-east', () => {
    const corners = [
      [30.1, -41.9],
      [30.1, -40.1],
      [31.9, -41.9],
      [31.9, -40.1],
    ];
    const stations = corners.flatMap(([lat, lon], q) =>
      Array.from({ length: 4 }, (_, i) => ({ id: `${q}${i}`, lat, lon })),
    );
    const tiles = packTiles(stations);
    for (const { id } of stations) expect(tiles.get(id)).toBe(`n30w042-${id[0]}`);
  });

  it('end at an eighth of a degree with many stations at one place', () => {
    const heap = Array.from({ length: 50 }, (_, i) => ({ id: `H${i}`, lat: 30.01, lon: -41.99 }));
    expect(new Set(packTiles(heap).values())).toEqual(new Set(['n30w042-0000']));
  });
});
