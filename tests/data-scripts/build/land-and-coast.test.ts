import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoastDistance } from '../../../analysis/gather/coast-distance.ts';
import { LandMask } from '../../../analysis/gather/land-mask.ts';
import { ringsOfLand, ringsOfOutlines } from '../../../analysis/gather/land-outlines.ts';
import { worldLand } from '../../../data-scripts/build/outlines.ts';

/** A square island from 10 to 12 E and 0 to 2 N with a square sea in it, and one across the antimeridian. */
const SQUARES = ringsOfOutlines({
  type: 'FeatureCollection',
  features: [
    {
      type: 'Feature',
      properties: { kind: 'land' },
      geometry: {
        type: 'Polygon',
        coordinates: [square(10, 0, 12, 2), square(10.9, 0.9, 11.1, 1.1)],
      },
    },
    {
      type: 'Feature',
      properties: { kind: 'land' },
      geometry: { type: 'MultiPolygon', coordinates: [[square(179, 0, -179, 2)]] },
    },
    {
      type: 'Feature',
      properties: { kind: 'hill' },
      geometry: { type: 'Polygon', coordinates: [square(50, 0, 52, 2)] },
    },
  ],
});

function square(west: number, south: number, east: number, north: number) {
  return [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
    [west, south],
  ];
}

/** Km of a degree on the sphere of 6371.0088 km. */
const DEGREE_KM = (Math.PI * 6371.0088) / 180;

describe('distance to the coast', () => {
  const coast = new CoastDistance(SQUARES);

  it('is what geometry says, from the inside', () => {
    // 0.3 degrees of latitude above the southern shore, far from the others.
    expect(coast.of({ lat: 0.3, lon: 11 })).toBeCloseTo(0.3 * DEGREE_KM, 1);
    // Near the equator a degree of longitude is as long.
    expect(coast.of({ lat: 1.5, lon: 10.05 })).toBeCloseTo(
      0.05 * DEGREE_KM * Math.cos((1.5 * Math.PI) / 180),
      1,
    );
    expect(coast.of({ lat: 0.7, lon: 11 })).toBeCloseTo(0.2 * DEGREE_KM, 1);
    expect(coast.of({ lat: 1, lon: 180 })).toBeCloseTo(DEGREE_KM, 0);
    expect(coast.of({ lat: 1, lon: -179.1 })).toBeCloseTo(0.1 * DEGREE_KM, 1);
  });

  it('is 0 on the sea, in a hole of the land, and infinite where there are no outlines', () => {
    expect(coast.of({ lat: 1, lon: 11 })).toBe(0);
    expect(coast.of({ lat: 1, lon: 20 })).toBe(0);
    expect(coast.toShore({ lat: 1, lon: 12.2 })).toBeCloseTo(0.2 * DEGREE_KM, 1);
    expect(new CoastDistance([]).toShore({ lat: 1, lon: 11 })).toBe(Infinity);
  });

  it('agrees with the plain minimum over all pieces of shore, for any place near the islands', () => {
    const pieces = SQUARES.flatMap((ring) => ring.slice(1).map((to, i) => [ring[i], to]));
    fc.assert(
      fc.property(
        fc.double({ min: 9.5, max: 12.5, noNaN: true }),
        fc.double({ min: -0.5, max: 2.5, noNaN: true }),
        (lon, lat) => {
          const east = DEGREE_KM * Math.cos((lat * Math.PI) / 180);
          const plain = Math.min(
            ...pieces.map(([[x1, y1], [x2, y2]]) => {
              const [ax, ay, bx, by] = [
                (x1 - lon) * east,
                (y1 - lat) * DEGREE_KM,
                (x2 - lon) * east,
                (y2 - lat) * DEGREE_KM,
              ];
              const [dx, dy] = [bx - ax, by - ay];
              const share = Math.max(0, Math.min(1, -(ax * dx + ay * dy) / (dx * dx + dy * dy)));
              return Math.hypot(ax + share * dx, ay + share * dy);
            }),
          );
          expect(Math.abs(coast.toShore({ lat, lon }) - plain)).toBeLessThan(0.15);
        },
      ),
    );
  });
});

describe('land and sea', () => {
  it('knows squares, holes and the far side of the antimeridian, and takes only land for land', () => {
    const mask = new LandMask(SQUARES);
    const lands = [
      [1, 10.5],
      [1, 179.5],
      [1, -179.5],
      [1, 180],
      [1, 180.5],
      [1, 370.5],
      [1.9, 11.9],
    ];
    const seas = [
      [1, 11],
      [1, 9.9],
      [2.1, 11],
      [1, 178.9],
      [1, -178.9],
      [1, 51],
      [-0.1, 11],
    ];
    for (const [lat, lon] of lands) expect(mask.has(lat, lon), `${lat}, ${lon}`).toBe(true);
    for (const [lat, lon] of seas) expect(mask.has(lat, lon), `${lat}, ${lon}`).toBe(false);
  });

  it('knows the Earth: places well inside land and sea', () => {
    const coast = new CoastDistance(ringsOfLand(worldLand()));
    const { mask } = coast;
    const lands = {
      Madrid: [40.42, -3.7],
      Chukotka: [67.5, -178],
      Wrangel: [71.2, 180],
      Taveuni: [-16.85, 179.97],
      'South Pole': [-89.5, 40],
      'Alice Springs': [-23.7, 133.88],
      Orlando: [28.54, -81.38],
    };
    const seas = {
      'mid-Atlantic': [31, -42],
      'Bering Sea': [58, 180],
      'Gulf of Mexico': [26, -90],
      'Ross Sea': [-75, 180],
    };
    for (const [name, [lat, lon]] of Object.entries(lands)) expect(mask.has(lat, lon), name).toBe(true);
    for (const [name, [lat, lon]] of Object.entries(seas)) expect(mask.has(lat, lon), name).toBe(false);
    // The antimeridian through Chukotka is no shore; Madrid lies some 300 km from the sea, Orlando some 55 km.
    expect(coast.of({ lat: 67.5, lon: 179.99 })).toBeGreaterThan(50);
    expect(coast.of({ lat: 40.42, lon: -3.7 })).toBeGreaterThan(290);
    expect(coast.of({ lat: 40.42, lon: -3.7 })).toBeLessThan(320);
    expect(coast.of({ lat: 28.54, lon: -81.38 })).toBeGreaterThan(45);
    expect(coast.of({ lat: 28.54, lon: -81.38 })).toBeLessThan(65);
  });
});
