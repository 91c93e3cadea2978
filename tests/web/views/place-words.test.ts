import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ranking } from '../../../analysis/answer/assessment.ts';
import { errorWords, estimateSentence, heightMissing, isEstimated } from '../../../web/format/estimated.ts';
import { resolvePlace } from '../../../web/state/resolve-place.ts';
import { heightIn, heightToM } from '../../../web/views/place/height.ts';
import {
  evidenceLines,
  evidenceWords,
  heightWords,
  noteSentences,
  winterWarnings,
} from '../../../web/views/place/place-words.ts';
import { PACK } from '../state/sample-pack.ts';

const TOLD = {
  place: { label: 'SC 117', lat: 31.11, lon: -42, elevation_m: 40, basis: 'history', error_c: 0.8 },
  winters: { used: 24 },
  evidence: [
    { id: 'ZZ1', weight: 0.62, distanceKm: 12.4 },
    { id: 'ZZ3', weight: 0.38, distanceKm: 21 },
  ],
} as unknown as Ranking;
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('an estimated place', () => {
  it('is one between stations, not on one', () => {
    expect(isEstimated(TOLD)).toBe(true);
    expect(isEstimated({ place: { ...TOLD.place, error_c: 0 } })).toBe(false);
    expect(isEstimated({ place: { ...TOLD.place, basis: 'station', error_c: undefined } })).toBe(false);
  });

  it('tells its error as a difference, in either unit: 0.8 °C is 1.44 °F', () => {
    expect(plain(errorWords(0.8, 'F'))).toBe('± 1.4 °F');
    expect(plain(errorWords(0.8, 'C'))).toBe('± 0.8 °C');
    expect(plain(estimateSentence(TOLD, 'C'))).toMatch(/estimated from 2 stations around, .* ± 0.8 °C/);
  });

  it('whose height nobody knows says so beside the answer, and where to give it', () => {
    const place = { ...TOLD.place, elevation_m: null };
    expect(heightMissing(TOLD.place)).toEqual([]);
    expect(estimateSentence(TOLD, 'C')).not.toMatch(/height/);
    expect(estimateSentence({ ...TOLD, place }, 'C')).toMatch(
      /takes away\. Its height isn’t known, .* give the height under “Place”\.$/,
    );
  });

  it('names the stations behind it by weight, never one that stands in', () => {
    expect(plain(evidenceWords(TOLD, PACK.stations, 'C'))).toBe(
      '2 stations around, most from Harbour (62%, 12 km away)',
    );
    expect(evidenceLines(TOLD, PACK.stations, 'F').map(({ name, words }) => [name, plain(words)])).toEqual([
      ['Harbour', '62% of the weight, 7.7 mi away'],
      ['Hill Farm', '38% of the weight, 13 mi away'],
    ]);
  });

  it('says who told its height', () => {
    const place = (elevationM?: number) =>
      resolvePlace(
        { by: 'postcode', code: 'SC 117', ...(elevationM === undefined ? {} : { elevationM }) },
        PACK,
      ).found!;
    expect(plain(heightWords(TOLD, place(40), 'C'))).toBe('40 m, as you say');
    expect(plain(heightWords(TOLD, place(), 'F'))).toBe('131 ft, by the pack’s grid of heights');
    const unknown = { ...TOLD, place: { ...TOLD.place, elevation_m: null } };
    expect(heightWords(unknown, place(), 'F')).toMatch(/^not known/);
  });

  it('says the answer’s notes in the reader’s unit, without what the panel tells anyway', () => {
    const notes = [
      'These winters are estimated from 2 stations, most from Harbour, 12 km away. A yard in a hollow can differ.',
      "The height of the point isn't known: estimated for 31 m, the mean of the stations.",
      'Only 24 complete winters: read every range as wide (30 make a sound record).',
    ];
    expect(noteSentences({ ...TOLD, notes }, 'F').map(plain)).toEqual([
      'A yard in a hollow can differ.',
      'The height of the point isn’t known: estimated for 102 ft, the mean of the stations.',
    ]);
  });

  it('warns of few winters in the words of what they are', () => {
    expect(winterWarnings(12, true)[0]).toMatch(/^Only 12 estimated winters: too few/);
    expect(winterWarnings(3, false)[0]).toMatch(/^Only 3 complete winters: too few/);
    expect(winterWarnings(25, false)[0]).toMatch(/^25 complete winters are few/);
    expect(winterWarnings(0, false)[0]).toMatch(/No winter of this station is complete/);
    expect(winterWarnings(60, true)).toEqual([]);
  });
});

describe('a typed height', () => {
  it('is feet beside °F, metres beside °C, as a person writes it', () => {
    expect(heightToM('1,200', 'F')).toBe(366);
    expect(heightToM('1.200', 'C')).toBe(1200);
    expect(heightToM('12,4', 'C')).toBe(12);
    expect(heightToM(' 120 ', 'C')).toBe(120);
    expect(heightToM('\u22123', 'C')).toBe(-3);
    for (const nonsense of ['', 'high', '120 m', '99999', '1e3', '-'])
      expect(heightToM(nonsense, 'C')).toBeNull();
  });

  it('comes back within a metre from what is shown', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -430, max: 8848 }),
        fc.constantFrom('F' as const, 'C' as const),
        (m, unit) => {
          expect(Math.abs(heightToM(heightIn(m, unit), unit)! - m)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});
