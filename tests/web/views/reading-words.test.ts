import { describe, expect, it } from 'vitest';
import type { ThreeReadings } from '../../../analysis/answer/three-readings.ts';
import { changeSentence, movingHeadline, readingRows } from '../../../web/views/winters/reading-words.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const fitted = (period: number) =>
  ({ period, low: period / 2, high: period * 2, basis: 'fitted', agrees: true }) as const;
const READINGS: ThreeReadings = {
  whole: { winters: 60, hits: 6, first: 1960, last: 2019, headline: fitted(10) },
  last30: { winters: 30, hits: 2, first: 1990, last: 2019, headline: fitted(16) },
  moving: { winter: 2019, period: 40, low: 11, high: Infinity },
  change: { mannKendallP: 0.003, ratioP: 0.012, senCPerDecade: 0.3, movedC: 1.6 },
};

describe('the three readings', () => {
  it('each has a row with its period, range and what it is made from', () => {
    const rows = readingRows(READINGS, 'north', false);
    expect(rows.map(({ id, words, range, map }) => [id, words, range, map])).toEqual([
      ['all', 'about 1 winter in 10', 'range 1 in 5 to 1 in 20', 'all'],
      ['last30', 'about 1 winter in 16', 'range 1 in 8 to 1 in 32', 'last30'],
      ['moving', 'about 1 winter in 40', 'range 1 in 11 or rarer', null],
    ]);
    expect(rows[1].from).toBe('hit in 2 of 30 complete winters, 1989–90 to 2018–19');
    expect(rows[2].from).toBe('as it stands in 2018–19');
  });

  it('nothing is claimed beyond twice the record by the moving curve either', () => {
    expect(movingHeadline({ period: 500, low: 90, high: Infinity }, 60)).toMatchObject({
      basis: 'beyond',
      low: 90,
      high: null,
    });
    expect(movingHeadline({ period: Infinity, low: 300, high: Infinity }, 60).low).toBe(120);
  });

  it('leaves out what could not be told', () => {
    const rows = readingRows({ ...READINGS, last30: null, moving: null }, 'south', true);
    expect(rows.map(({ from }) => from)).toEqual(['hit in 6 of 60 estimated winters, 1960 to 2019']);
    expect(readingRows({ ...READINGS, whole: null }, 'north', false)).toEqual([]);
  });
});

describe('the sentence about a change', () => {
  const say = (mannKendallP: number, ratioP: number, senCPerDecade = 0.3): string =>
    plain(changeSentence({ mannKendallP, ratioP, senCPerDecade, movedC: 1 }, 'C'));

  it('calls a change one only when both tests do, and says which way', () => {
    expect(say(0.003, 0.012)).toMatch(/have grown milder by 0.30 °C a decade \(Mann-Kendall p = 0.003\)/);
    expect(say(0.003, 0.012, -0.3)).toMatch(/grown colder by 0.30 °C/);
    expect(say(0.4, 0.36)).toMatch(/no clear change \(Mann-Kendall p = 0.40\).* no better .* \(p = 0.36\)/);
    expect(say(0.003, 0.4)).toMatch(/^The signs of a change are mixed: milder/);
    expect(say(0.07, 0.07)).toMatch(/mixed/);
    expect(say(0.0002, 0.0001)).toMatch(/p under 0.001/);
  });

  it('converts a difference as a difference: 0.3 °C a decade is 0.54 °F', () => {
    const change = { mannKendallP: 0.001, ratioP: 0.001, senCPerDecade: 0.3, movedC: 1 };
    expect(plain(changeSentence(change, 'F'))).toContain('0.54 °F a decade');
    expect(changeSentence(null, 'F')).toBe('Too few winters to test for a change.');
  });
});
