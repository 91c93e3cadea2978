import { describe, expect, it } from 'vitest';

import type { NearbyStation } from '../../../../../analysis/archive/stations-nearby.ts';
import {
  ageWord,
  completeWord,
  directionWord,
  fetchedShare,
  heightWord,
  progressWord,
  yearsWord,
} from '../../../../../web/views/records/archive/archive-words.ts';

const STATION: NearbyStation = {
  id: 'ZZ000000001',
  name: 'TERN POINT',
  lat: 31,
  lon: -42,
  elevationM: 120,
  distanceKm: 5,
  bearing: 0,
  tmin: [2001, 2020],
  tmax: null,
  sharedYears: 0,
  expectedBytes: 1000,
};

describe('words of the archive', () => {
  it('name directions, years and heights', () => {
    expect([0, 22, 23, 90, 200, 315, 350].map(directionWord)).toEqual(['N', 'N', 'NE', 'E', 'S', 'NW', 'N']);
    expect([yearsWord([1948, 2024]), yearsWord(null)]).toEqual(['1948–2024', 'none']);
    expect(heightWord(STATION, null, 'C')).toBe('120\u00a0m');
    expect(heightWord(STATION, 20, 'C')).toBe('120\u00a0m (+100\u00a0m)');
    expect(heightWord(STATION, 150, 'C')).toBe('120\u00a0m (−30\u00a0m)');
    expect(heightWord({ ...STATION, elevationM: null }, 20, 'C')).toBe('–');
  });

  it('leave completeness open until the record has been read', () => {
    expect(completeWord(STATION, undefined)).toBe('not known yet');
    expect(completeWord(STATION, { phase: 'coming', come: 5, total: 9 })).toBe('not known yet');
    // 20 years have 7,305 days.
    expect(completeWord(STATION, { phase: 'there', bytes: 9, tminDays: 3700 })).toBe('50% of days');
    expect(completeWord(STATION, { phase: 'there', bytes: 9, tminDays: 7320 })).toBe('100% of days');
  });

  it('tell how far a record has come, and why one is left out', () => {
    expect(progressWord({ phase: 'coming', come: 5000, total: 90_000 })).toBe('5 kB of 90 kB');
    expect(progressWord({ phase: 'again', come: 5, reason: 'the connection was cut', waitMs: 1400 })).toBe(
      'the connection was cut; again in 2 s',
    );
    expect(progressWord({ phase: 'missing' })).toBe('the archive has no record of it; left out');
  });

  it('share what is done by bytes; what is left out is not waited for', () => {
    const stations = ['A', 'B', 'C', 'D'].map((id) => ({ ...STATION, id }));
    const progress = new Map([
      ['A', { phase: 'there', bytes: 600, tminDays: 1 }],
      ['B', { phase: 'coming', come: 300, total: 400 }],
      ['C', { phase: 'missing' }],
      ['D', { phase: 'waiting' }],
    ] as const);
    expect(fetchedShare(stations, progress)).toBeCloseTo(900 / (600 + 400 + 1000), 12);
    expect(fetchedShare([], progress)).toBe(0);
  });

  it('tell an age in whole days', () => {
    const now = Date.parse('2026-03-04T12:00:00Z');
    expect(ageWord('2026-03-04T01:00:00Z', now)).toBe('less than a day old');
    expect(ageWord('2026-03-03T12:00:00Z', now)).toBe('1 day old');
    expect(ageWord('2026-01-01T12:00:00Z', now)).toBe('62 days old');
  });
});
