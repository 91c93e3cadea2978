import { describe, expect, it } from 'vitest';

import { checkElevation, pointPlace, readPoint, zipPlace } from '../../../web/archive/archive-place.ts';

describe('a point as people type it', () => {
  it.each([
    ['29.95, -90.07', 29.95, -90.07],
    ['29.95 -90.07', 29.95, -90.07],
    ['29,95; -90,07', 29.95, -90.07],
    ['29.95° N, 90.07° W', 29.95, -90.07],
    ['33.9S 18.4e', -33.9, 18.4],
    ['-33,9,18,4', -33.9, 18.4],
    ['40,4 N 3,7 O', 40.4, -3.7],
    ['29,90', 29, 90],
  ])('%j', (typed, lat, lon) => expect(readPoint(typed)).toEqual({ lat, lon }));

  it.each([
    ['', /is no point/],
    ['New Orleans', /is no point: type degrees north and degrees east/],
    ['91, 0', /^The latitude is 91, but must be from -90 to 90\.$/],
    ['0, 181', /^The longitude is 181/],
    ['1, 2, 3', /is no point/],
    [`${'9'.repeat(5000)}, 1`, /is no point/],
  ])('%j is refused in one sentence', (typed, sentence) => expect(() => readPoint(typed)).toThrow(sentence));
});

describe('places', () => {
  it('are told by their point or their ZIP code', () => {
    expect(pointPlace(29.951234, -90.07)).toEqual({
      lat: 29.9512,
      lon: -90.07,
      label: '29.95° N, 90.07° W',
      elevationM: null,
    });
    const codes = [{ code: '70115', name: 'New Orleans, LA', lat: 29.92, lon: -90.1 }];
    for (const typed of ['70115', ' 70115-1234 ']) {
      expect(zipPlace(typed, codes).label).toBe('70115 New Orleans, LA');
    }
    expect(() => zipPlace('99999', codes)).toThrow('The list of ZIP codes has no “99999”.');
  });

  it('lie no deeper or higher than land does', () => {
    expect(checkElevation(12.6)).toBe(13);
    for (const metres of [-5000, 9000, NaN]) expect(() => checkElevation(metres)).toThrow(/No land lies at/);
  });
});
