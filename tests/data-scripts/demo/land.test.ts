import { kinks, polygon } from '@turf/turf';
import type { Polygon } from 'geojson';
import { describe, expect, it } from 'vitest';
import { coastDistanceKm, isLand } from '../../../data-scripts/demo/geography.ts';
import { landMap } from '../../../data-scripts/demo/land-map.ts';
import { POSTCODES, TOWNS } from '../../../data-scripts/demo/places.ts';
import { elevationAt, hollowDepthM } from '../../../data-scripts/demo/relief.ts';
import { siteAt } from '../../../data-scripts/demo/site-exposure.ts';
import { STATIONS } from '../../../data-scripts/demo/stations.ts';

const map = landMap();

describe('the invented land', () => {
  it('is light, named, and says on every shape that it is invented', () => {
    expect(JSON.stringify(map).length).toBeLessThan(60_000);
    for (const { properties } of map.features) {
      expect(properties).toMatchObject({ invented: true, name: expect.stringMatching(/\w/) });
      expect(['land', 'hill', 'water', 'river']).toContain(properties?.kind);
    }
    expect(map.features.filter((one) => one.properties?.kind === 'land').length).toBeGreaterThan(4);
  });

  it('lies in open ocean, far from every real shore', () => {
    for (const feature of map.features) {
      const { geometry } = feature;
      const points =
        geometry.type === 'Polygon'
          ? geometry.coordinates.flat()
          : (geometry as { coordinates: number[][] }).coordinates;
      for (const [lon, lat] of points) {
        expect(lon).toBeGreaterThan(-44.2);
        expect(lon).toBeLessThan(-41);
        expect(lat).toBeGreaterThan(30.2);
        expect(lat).toBeLessThan(32.6);
      }
    }
  });

  it('has closed counter-clockwise rings that never cross themselves', () => {
    for (const feature of map.features) {
      if (feature.geometry.type !== 'Polygon') continue;
      const [ring] = (feature.geometry as Polygon).coordinates;
      expect(ring[0]).toEqual(ring.at(-1));
      const doubleArea = ring.slice(1).reduce((sum, [x, y], i) => sum + ring[i][0] * y - x * ring[i][1], 0);
      expect(doubleArea).toBeGreaterThan(0);
      expect(kinks(polygon([ring])).features, feature.properties?.name).toEqual([]);
    }
  });

  it('rises from the sea to the Corrow Hills in the north-west', () => {
    expect(elevationAt(30.5, -41.5)).toBe(0);
    let highest = { m: 0, lat: 0, lon: 0 };
    for (let lat = 30.4; lat < 32.4; lat += 0.03) {
      for (let lon = -43.9; lon < -41.3; lon += 0.03) {
        const m = elevationAt(lat, lon);
        if (m > highest.m) highest = { m, lat, lon };
      }
    }
    expect(highest.m).toBeGreaterThan(490);
    expect(highest.m).toBeLessThan(550);
    expect(highest.lat).toBeGreaterThan(31.4);
    expect(highest.lon).toBeLessThan(-42.8);
  });

  it('has hollows where becks run and none on its highest top', () => {
    expect(hollowDepthM(31.69, -42.985)).toBeGreaterThan(20);
    expect(hollowDepthM(31.565, -43.115)).toBeLessThan(-30);
  });

  it('measures the distance to the sea, not to lakes', () => {
    expect(coastDistanceKm(31.2, -42.555)).toBeGreaterThan(35);
    expect(coastDistanceKm(31.08, -42.21)).toBeGreaterThan(10);
    expect(coastDistanceKm(30.5, -41.5)).toBe(0);
  });
});

describe('stations and places', () => {
  it('stand on land, inside the box, with ids no real network uses', () => {
    for (const place of [...STATIONS, ...TOWNS, ...POSTCODES]) {
      expect(isLand(place.lat, place.lon), place.name).toBe(true);
      expect(place.lat).toBeGreaterThan(30.2);
      expect(place.lat).toBeLessThan(31.9);
      expect(place.lon).toBeGreaterThan(-43.2);
      expect(place.lon).toBeLessThan(-41);
    }
    for (const { id } of STATIONS) expect(id).toMatch(/^ZZ[A-Z]\d{8}$/);
    expect(new Set(STATIONS.map((one) => one.id)).size).toBe(41);
  });

  it('number about sixty postcodes, each once', () => {
    expect(POSTCODES.length).toBeGreaterThanOrEqual(58);
    expect(new Set(POSTCODES.map((one) => one.code)).size).toBe(POSTCODES.length);
    expect(new Set(POSTCODES.map((one) => one.name)).size).toBe(POSTCODES.length);
    for (const { code } of POSTCODES) expect(code).toMatch(/^SC 1\d\d$/);
  });

  it('feel the sea only near it', () => {
    const skerry = siteAt('skerry', 30.425, -41.153);
    const strand = siteAt('strand', 31.165, -41.568);
    const plain = siteAt('plain', 31.205, -42.555);
    expect(skerry.marineWindy).toBeGreaterThan(0.8);
    expect(strand.marineWindy).toBeLessThan(0.3);
    expect(strand.marineCalm).toBeGreaterThan(0.6);
    expect(plain.marineCalm).toBe(0);
  });
});
