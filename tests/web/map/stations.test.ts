import { describe, expect, it } from 'vitest';
import type { Headline } from '../../../analysis/answer/assessment.ts';
import { MARK_IMAGES } from '../../../web/map/mark-images.ts';
import { mapStyle } from '../../../web/map/map-style.ts';
import { sortStations } from '../../../web/map/sort-stations.ts';
import {
  classCounts,
  stationFeatures,
  stationWords,
  type MapStation,
} from '../../../web/map/station-features.ts';

const station = (id: string, name: string, complete: number, elevation: number | null): MapStation => ({
  id,
  name,
  lat: 31,
  lon: -42,
  elevation_m: elevation,
  winters: { complete, first: complete ? 1960 : null, last: complete ? 2019 : null },
});
const stations = [station('a', 'Beech', 60, 300), station('b', 'Ash', 12, null), station('c', 'Cedar', 0, 5)];
const answer = (period: number | null, basis: Headline['basis'], low: number | null = null) => ({
  winters: 60,
  headline: { period, low, high: null, basis, agrees: true } as Headline,
});
const periods = new Map([
  ['a', answer(7, 'fitted', 5)],
  ['b', answer(null, 'not seen', 4)],
]);

describe('stations on the map', () => {
  it('wait as plain dots, then take the mark of their class; no answer is no data', () => {
    const icons = (known: typeof periods | null) =>
      stationFeatures(stations, known).features.map(({ properties }) => properties!.icon);
    expect(icons(null)).toEqual(Array(3).fill('station-waiting'));
    expect(icons(periods)).toEqual(['station-to10', 'station-unseen', 'station-nodata']);
    for (const icon of [...icons(null), ...icons(periods)]) expect(MARK_IMAGES).toContain(icon);
  });
  it('are drawn colder over rarer', () => {
    const order = stationFeatures(stations, periods).features.map(
      ({ properties }) => properties!.order as number,
    );
    expect(order[0]).toBeGreaterThan(order[2]);
  });
  it('are counted by class', () => {
    expect(Object.fromEntries(classCounts(stations, periods)!)).toEqual({ to10: 1, unseen: 1, nodata: 1 });
    expect(classCounts(stations, null)).toBeNull();
  });
  it('are told in words: answer, winters, height in the shown unit', () => {
    expect(stationWords(stations[0], periods, 'F')).toEqual({
      name: 'Beech',
      answer: 'about 1 winter in 7',
      record: '60 complete winters, 1960 to 2019, 984\u00a0ft',
    });
    expect(stationWords(stations[2], periods, 'C')).toMatchObject({
      answer: 'no complete winter on record',
      record: '0 complete winters, 5\u00a0m',
    });
    expect(stationWords(stations[0], null, 'C').answer).toBe('not yet worked out');
  });
});

describe('the list of stations', () => {
  const order = (key: 'name' | 'period' | 'winters' | 'elevation', descending = false) =>
    sortStations(stations, periods, key, descending).map(({ name }) => name);
  it('sorts by each column both ways, what is unknown last', () => {
    expect(order('name')).toEqual(['Ash', 'Beech', 'Cedar']);
    expect(order('name', true)).toEqual(['Cedar', 'Beech', 'Ash']);
    expect(order('period')).toEqual(['Beech', 'Ash', 'Cedar']);
    expect(order('period', true)).toEqual(['Ash', 'Beech', 'Cedar']);
    expect(order('winters', true)).toEqual(['Beech', 'Ash', 'Cedar']);
    expect(order('elevation', true)).toEqual(['Beech', 'Cedar', 'Ash']);
  });
});

describe('the style', () => {
  const palette = {
    paper: 'rgb(250, 247, 240)',
    ink: 'rgb(36, 34, 29)',
    inkSoft: 'rgb(94, 89, 78)',
    rule: 'rgb(221, 214, 198)',
    accent: 'rgb(176, 74, 6)',
    land: 'rgb(243, 238, 226)',
    water: 'rgb(228, 232, 228)',
    coast: 'rgb(163, 156, 138)',
    cold: Array(6).fill('rgb(90, 142, 165)') as string[],
    warm: Array(3).fill('rgb(207, 174, 95)') as string[],
  };
  const empty = { type: 'FeatureCollection' as const, features: [] };
  it('asks for nothing from anywhere: no tiles, glyphs, sprite or address', () => {
    const style = mapStyle(palette, {
      land: null,
      graticule: empty,
      labels: empty,
      stations: empty,
      place: empty,
    });
    expect(style).not.toHaveProperty('glyphs');
    expect(style).not.toHaveProperty('sprite');
    expect(JSON.stringify(style)).not.toMatch(/https?:|\burl\b/);
    expect(Object.values(style.sources).every(({ type }) => type === 'geojson')).toBe(true);
  });
  it('has paint for every layer and a source behind each', () => {
    const style = mapStyle(palette, {
      land: null,
      graticule: empty,
      labels: empty,
      stations: empty,
      place: empty,
    });
    for (const layer of style.layers) {
      expect(layer.paint, layer.id).toBeDefined();
      if ('source' in layer) expect(style.sources).toHaveProperty(layer.source as string);
    }
  });
});
