import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CUSTOMER_ANSWERS,
  UNKNOWNS,
  type CustomerAnswers,
} from '../../../../analysis/answer/advice-customer.ts';
import { readAddress, writeAddress } from '../../../../web/state/address.ts';
import {
  canCarry,
  carriedToPage,
  readAnswersText,
  writeAnswersText,
} from '../../../../web/views/desk/counter/answers-text.ts';
import { findTyped } from '../../../../web/views/desk/counter/find-typed.ts';

describe('answers of a buyer as text', () => {
  const answers = fc.record(
    Object.fromEntries(UNKNOWNS.map((unknown) => [unknown, fc.constantFrom(...CUSTOMER_ANSWERS[unknown])])),
    { requiredKeys: [] },
  ) as fc.Arbitrary<CustomerAnswers>;

  it('come back as they were, by way of the address', () => {
    fc.assert(
      fc.property(answers, (given) => {
        const counter = writeAnswersText(given);
        const { chosen, ignored } = readAddress(writeAddress(counter === undefined ? {} : { counter }));
        expect(ignored).toEqual([]);
        expect(readAnswersText(chosen.counter ?? null)).toEqual({ answers: given, problem: null });
      }),
    );
  });

  it.each(['home-maybe', 'wall', 'home-no,home-yes', 'x-yes', 'toString-yes', ',,no'])(
    '“%s” says what was left out',
    (text) => {
      const { answers: read, problem } = readAnswersText(text);
      expect(problem).toMatch(/left out\.$/);
      expect(Object.keys(read).every((key) => (UNKNOWNS as readonly string[]).includes(key))).toBe(true);
    },
  );
});

describe('answers carried to the page', () => {
  it('become its choices; what the page has none for stays with the buyer', () => {
    const { change, left } = carriedToPage({
      home: 'no',
      wall: 'yes',
      young: 'yes',
      stands: 'pot',
      fruit: 'yes',
    });
    expect(readAddress(writeAddress(change)).chosen).toEqual({
      spot: 'heated-wall',
      ageYears: 2,
      container: true,
      fruitLoad: true,
    });
    expect(left).toEqual({ home: 'no' });
    expect(canCarry({ home: 'no', stands: 'ground' })).toBe(false);
  });
});

describe('what is typed or scanned', () => {
  const code = (text: string, name: string) => ({ code: text, name, lat: 31, lon: -42 });
  const station = {
    id: 'ZZ1',
    name: 'Invented Mill',
    lat: 31,
    lon: -42,
    elevation_m: 5,
    coast_km: 3,
    winters: { complete: 40, first: 1980, last: 2020 },
    basis: 'daily' as const,
    tile: 'n30w042',
  };
  const pack = {
    places: {
      postcodes: [
        code('SC 101', 'Harbour'),
        code('SC 109', 'Mill'),
        code('SC 140', 'Ford'),
        code('TD 140', 'Moor'),
      ],
      towns: [{ name: 'Tern', lat: 31, lon: -42, rank: 1 }],
    },
    stations: [station],
  };
  const labels = (typed: string) => {
    const { hits, near } = findTyped(typed, pack);
    return { near, labels: hits.map(({ label }) => label) };
  };

  it('is a postcode, a town, a station or a point', () => {
    expect(labels('sc-109')).toEqual({ near: false, labels: ['SC 109'] });
    expect(labels('tern')).toEqual({ near: false, labels: ['Tern'] });
    expect(labels('invented m')).toEqual({ near: false, labels: ['Invented Mill'] });
    expect(findTyped('31.1, -42.05', pack).hits[0].place).toEqual({ by: 'point', lat: 31.1, lon: -42.05 });
    expect(findTyped('91, 10', pack).hits.some(({ place }) => place.by === 'point')).toBe(false);
  });

  it('else those that begin alike, the nearest figures first', () => {
    expect(labels('SC 108')).toEqual({ near: true, labels: ['SC 109', 'SC 101', 'SC 140', 'TD 140'] });
    // TD 138 begins like none but TD 140, though the figures of SC 137 would lie nearer.
    const { hits } = findTyped('TD 138', {
      ...pack,
      places: { ...pack.places, postcodes: [...pack.places.postcodes, code('SC 137', 'Weir')] },
    });
    expect(hits.map(({ label }) => label)).toEqual(['TD 140', 'SC 137', 'SC 140', 'SC 109']);
    expect(labels('')).toEqual({ near: true, labels: [] });
    expect(labels('zz')).toEqual({ near: false, labels: ['Invented Mill'] });
  });

  it('any text is answered with places of the pack', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (typed) => {
        for (const { place } of findTyped(typed, pack).hits)
          if (place.by === 'point') expect(Math.abs(place.lat)).toBeLessThanOrEqual(90);
      }),
    );
  });
});
