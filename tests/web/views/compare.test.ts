import { describe, expect, it } from 'vitest';
import type { LevelAnswer, Ranking } from '../../../analysis/answer/assessment.ts';
import { pinIndex, togglePin } from '../../../web/state/pins.ts';
import type { Place } from '../../../web/state/chosen.ts';
import {
  extremesOf,
  hitDates,
  stripWinters,
  typeRows,
  winterLevels,
  type Compared,
} from '../../../web/views/compare/compared.ts';
import { groundWords, reasonWords } from '../../../web/views/compare/terrain-words.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

function level(period: number, hits: readonly number[] = []): LevelAnswer {
  return {
    level: 'wood',
    hours: 4,
    headline: { period, low: period / 2, high: period * 2, basis: 'fitted', agrees: true },
    counted: { winters: 50, hits: hits.length, hit_winters: hits, hit_incomplete: [] },
  } as unknown as LevelAnswer;
}

function place(number: number, periods: Readonly<Record<string, number>>, ground = {}): Compared {
  const types = Object.entries(periods).map(([id, period]) => ({
    id,
    name: id,
    use: id.startsWith('stock') ? 'rootstock' : 'eating',
    levels: [level(period)],
  }));
  return {
    number,
    name: `Place (${number})`,
    ranking: { types, history: [] } as unknown as Ranking,
    nights: [],
    elevationM: 10,
    coastKm: 5,
    ...ground,
  };
}

describe('types to compare', () => {
  const places = [
    place(1, { a: 10, b: 20, c: 8, stock: 2, far: 400 }),
    place(2, { a: 12, b: 5, c: 40, stock: 90, far: 900 }),
  ];

  it('are the chosen one, then those with the widest ratio; rootstocks only when asked for', () => {
    const ids = (stocks: boolean, most?: number) =>
      typeRows(places, 'wood', 'a', stocks, most).map(({ type }) => type.id);
    // Ratios: b 4, c 5, stock 45; "far" lies beyond what is told of 50 winters at both places, so it doesn't differ.
    expect(ids(false)).toEqual(['a', 'c', 'b', 'far']);
    expect(ids(true, 3)).toEqual(['a', 'stock', 'c']);
    expect(typeRows([], 'wood', 'a', false)).toEqual([]);
    const twins = [place(1, { a: 10, twin: 10, b: 20 }), place(2, { a: 12, twin: 12, b: 20 })];
    expect(typeRows(twins, 'wood', 'a', false).map(({ type }) => type.id)).toEqual(['a', 'b']);
  });

  it('say where it is coldest and where mildest', () => {
    const [a, c] = typeRows(places, 'wood', 'a', false);
    expect([extremesOf(places, a)?.coldest.number, extremesOf(places, a)?.mildest.number]).toEqual([1, 2]);
    expect(extremesOf(places, c)?.coldest.number).toBe(1);
    expect(extremesOf([places[0]], a)).toBeNull();
  });
});

describe('the ground as a reason', () => {
  const low = { name: '1 Shore', elevationM: 5, coastKm: 1 };
  const high = { name: '2 Hill', elevationM: 105, coastKm: 11 };

  it('is told in the reader’s unit, and what is slight is left out', () => {
    expect(plain(groundWords(high, low, 'C'))).toBe('100 m higher, 10 km farther inland');
    expect(plain(groundWords(low, high, 'F'))).toBe('328 ft lower, 6.2 mi nearer the sea');
    expect(groundWords({ elevationM: 9, coastKm: 1.5 }, low, 'C')).toBe('');
  });

  it('names what goes with cold, what speaks against it, and does not make one up', () => {
    expect(plain(reasonWords(high, low, 'C'))).toBe(
      '2 Hill lies 100 m higher and 10 km farther inland than 1 Shore.',
    );
    const mixed = { ...high, coastKm: 0 };
    expect(plain(reasonWords(mixed, { ...low, coastKm: 8 }, 'C'))).toMatch(
      /100 m higher than 1 Shore, though 8.0 km nearer the sea/,
    );
    expect(reasonWords(low, high, 'C')).toMatch(/alone would make it milder: cold air that gathers/);
    expect(reasonWords({ ...low, name: '3 Twin' }, low, 'C')).toMatch(/differs little/);
    expect(reasonWords({ ...low, elevationM: null }, low, 'C')).toMatch(/isn’t known/);
    expect(plain(reasonWords({ ...high, elevationM: null }, low, 'C'))).toBe(
      '2 Hill lies 10 km farther inland than 1 Shore. How high they lie isn’t known to this pack.',
    );
  });
});

describe('winters of a place compared', () => {
  const history = [10, -4, -7, null, -1].map((value, i) => ({
    winter: 2000 + i,
    complete: i !== 1,
    m_c: { '4': value },
  }));
  const ranking = { history } as unknown as Ranking;

  it('the coldest and the middle of the complete ones', () => {
    expect(winterLevels(ranking, 4)).toEqual({ coldestC: -7, winter: 2002, middleC: -1 });
    expect(winterLevels({ history: [] } as unknown as Ranking, 4)).toBeNull();
  });

  it('hit, free, or not known', () => {
    expect(stripWinters(ranking, level(5, [2002])).map(({ state }) => state)).toEqual([
      'free',
      'unknown',
      'hit',
      'free',
      'free',
    ]);
  });

  it('dates run through the season: December comes before February, in the south June before August', () => {
    const nights = [
      { winter: 2001, date: '2001-02-10', kind: 'calm' },
      { winter: 2002, date: '2001-12-03', kind: 'windy' },
      { winter: 2003, date: '2002-11-20', kind: 'calm' },
    ] as const;
    expect(hitDates(nights, level(5, [2001, 2002]), 'north')).toEqual({
      first: '2001-12-03',
      last: '2001-02-10',
    });
    const southern = [
      { winter: 2001, date: '2001-08-01', kind: 'calm' },
      { winter: 2002, date: '2002-06-10', kind: 'calm' },
    ] as const;
    expect(hitDates(southern, level(5, [2001, 2002]), 'south')?.first).toBe('2002-06-10');
    expect(hitDates(nights, level(5), 'north')).toBeNull();
  });
});

describe('pins', () => {
  const places = Array.from({ length: 5 }, (_, i): Place => ({ by: 'station', id: `S${i}` }));

  it('go on and off, four at most, the same place once', () => {
    const four = places.reduce<readonly Place[]>((pins, next) => togglePin(pins, next), []);
    expect(four).toEqual(places.slice(0, 4));
    expect(togglePin(four, places[1])).toEqual([places[0], places[2], places[3]]);
    expect(pinIndex(four, { by: 'station', id: 'S2' })).toBe(2);
    const point: Place = { by: 'point', lat: 31, lon: -42 };
    expect(pinIndex([point], { ...point, lat: 31.00001 })).toBe(0);
    expect(pinIndex([point], { ...point, elevationM: 5 })).toBe(-1);
  });
});
