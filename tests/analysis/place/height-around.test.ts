import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import { heightAroundM } from '../../../analysis/place/height-around.ts';
import { placeHistory } from '../../../analysis/place/place-history.ts';
import { PlaceModel } from '../../../analysis/place/place-model.ts';
import type { Site } from '../../../analysis/place/site.ts';
import { InventedLand, wintersOf } from './invented-land.ts';

const KM_PER_DEGREE = 111.195;

function site(northKm: number, elevationM: number | null, lon = 10): Site {
  return { lat: northKm / KM_PER_DEGREE, lon, elevationM, coastKm: null };
}

describe('height above the stations around', () => {
  it('is their weighted mean difference, with one more at the site’s own height', () => {
    // By hand: a weight of 1 at 15 km, of 4 exp(-3) = 0.19915 at 30 km.
    const lower = site(15, 100);
    const higher = site(-30, 900);
    expect(heightAroundM(site(0, 400), [lower])).toBeCloseTo(150, 1);
    expect(heightAroundM(site(0, 400), [lower, higher])).toBeCloseTo((300 - 0.19915 * 500) / 2.19915, 1);
  });

  it('is 0 where nothing tells: no station, none near, none whose height is known, the site’s own unknown', () => {
    expect(heightAroundM(site(0, 400), [])).toBe(0);
    expect(heightAroundM(site(0, 400), [site(100, 0)])).toBe(0);
    expect(Math.abs(heightAroundM(site(0, 400), [site(59, 0)]))).toBeLessThan(1);
    expect(heightAroundM(site(0, 400), [site(10, null)])).toBe(0);
    expect(heightAroundM(site(0, null), [site(10, 0)])).toBe(0);
  });

  it('is not told by a station on the site itself, nor does it jump as the site nears one', () => {
    const around = [site(15, 100), site(-25, 700)];
    const on = site(0, 300);
    expect(heightAroundM(on, [...around, on])).toBe(heightAroundM(on, around));
    // A station a stone's throw away and 50 m higher: a survey's slip, no slope.
    expect(Math.abs(heightAroundM(on, [...around, site(0.1, 350)]) - heightAroundM(on, around))).toBeLessThan(
      0.2,
    );
  });

  it('is the same when all heights are raised, and across the antimeridian', () => {
    const height = fc.integer({ min: 0, max: 2500 });
    const place = fc.record({ northKm: fc.integer({ min: -60, max: 60 }), height });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 8 }), height, height, (places, own, raised) => {
        const at = (lift: number, lon: number) =>
          heightAroundM(
            site(0, own + lift, lon),
            places.map(({ northKm, height: h }) => site(northKm, h + lift, -lon)),
          );
        const there = places.map(({ northKm, height: h }) => site(northKm, h));
        expect(at(raised, 180)).toBeCloseTo(heightAroundM(site(0, own), there), 6);
        expect(Math.abs(at(0, 180))).toBeLessThanOrEqual(2500);
      }),
    );
  });
});

describe('winters of slopes and hollows', () => {
  // Pairs of stations on a valley's floor and 400 m above it on its ridge, the floors at 100 to 500 m: a ridge is milder than a
  // hollow of its height by 4 °C. Between them, new sites on floors and ridges.
  it('are told apart where the stations show it', () => {
    const land = new InventedLand({ seed: 11, winters: 40, share: 0.95 });
    const places = Array.from({ length: 30 }, (_, i) => {
      const [east, north] = [((i % 6) - 2.5) * 60, (Math.floor(i / 6) - 2) * 60];
      const floorM = 100 + 100 * ((3 * i) % 5);
      return [
        { east, north, heightM: floorM, milderC: 0 },
        { east: east + 12, north, heightM: floorM + 400, milderC: 4 },
      ];
    }).flat();
    const minimaC = ({ milderC }: { milderC: number }, at: Site, i: number) =>
      land.minimaC(at, i).map((level) => level + milderC);
    const members = places.map((place, i) => {
      const at = land.site(place.east, place.north, place.heightM);
      return { id: `S${100 + i}`, site: at, winters: wintersOf(minimaC(place, at, i)) };
    });
    const model = new PlaceModel(members, fitPlaceParameters(members));
    const errors = places.map((place, i) => {
      const at = land.site(place.east, place.north + 6, place.heightM);
      const truth = minimaC(place, at, 900 + i);
      return (
        placeHistory(model, at).errors![0].meanC - truth.reduce((sum, level) => sum + level, 0) / truth.length
      );
    });
    const size = errors.reduce((sum, error) => sum + Math.abs(error), 0) / errors.length;
    // Height above the sea alone, the neighbour on the floor or ridge beside it included, leaves 0.8 °C.
    expect(size).toBeLessThan(0.45);
  });
});
