import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverGains, coverParts } from '../../../analysis/cover/cover-gains.ts';
import { ALL_CHOICES, MEASURE_IDS } from '../../../analysis/cover/cover-ids.ts';
import { findMeasure, MEASURES } from '../../../analysis/cover/measures.ts';
import { countingIds, refusals } from '../../../analysis/cover/refusals.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import type { LevelGainSpreads } from '../../../analysis/tree/level-gains.ts';
import { LEVELS, type Level } from '../../../analysis/tree/levels.ts';
import { celsiusDifferenceToFahrenheit } from '../../../analysis/units/temperature.ts';
import type { GainSpread, Spread } from '../../../analysis/winter/gain-spread.ts';

const ENDS = ['lowC', 'centreC', 'highC'] as const;
const NIGHTS = ['calm', 'windy'] as const;

const endsF = (spread: Spread): number[] =>
  ENDS.map((end) => Math.round(celsiusDifferenceToFahrenheit(spread[end]) * 1e9) / 1e9);
const gainF = (ids: readonly string[], night: keyof GainSpread = 'calm', level: Level = 'leaf'): number[] =>
  endsF(coverGains(ids)[level][night]);

const everyEnd = function* (gains: LevelGainSpreads): Generator<[string, number]> {
  for (const level of LEVELS)
    for (const night of NIGHTS)
      for (const end of ENDS) yield [`${level} ${night} ${end}`, gains[level][night][end]];
};

describe('adding rule', () => {
  it('gains a single measure by its row, °F', () => {
    expect(gainF(['cloth-heavy'])).toEqual([6, 7, 8]);
    expect(gainF(['cloth-heavy', 'tied'], 'windy')).toEqual([2, 2.5, 3]);
    expect(gainF(['watered-soil'])).toEqual([0, 1, 2]);
    expect(gainF(['garage'], 'windy')).toEqual([8, 8, 8]);
  });

  // Common practice, no source: "cloth up to 7 °F, watered soil about 2 °F, together 9 to 10 °F on calm nights".
  it("holds the trade's sum of cloth and watered soil", () => {
    const [low, centre, high] = gainF(['cloth-heavy', 'watered-soil']);
    expect(centre).toBeGreaterThanOrEqual(8);
    expect(centre).toBeLessThanOrEqual(9);
    expect(high).toBeGreaterThanOrEqual(9);
    expect(high).toBeLessThanOrEqual(10);
    expect(low).toBeLessThan(centre);
    const [cloth] = [gainF(['cloth-heavy'])[1]];
    const soilAtMost = gainF(['watered-soil'])[2];
    expect(cloth).toBe(7);
    expect(soilAtMost).toBe(2);
    expect(cloth + soilAtMost).toBeGreaterThanOrEqual(9);
  });

  // S50 (practice): lights plus frost cloth 7 to 8 °F on calm nights, 3 to 4 °F on windy ones.
  it('never lets lights and cloth exceed what was measured of both', () => {
    for (const cloth of ['cloth-light', 'cloth-medium', 'cloth-heavy']) {
      const ids = [cloth, 'lights', 'lights-confirmed', 'tied'];
      const calm = gainF(ids);
      const windy = gainF(ids, 'windy');
      expect(calm[2]).toBeLessThanOrEqual(8);
      expect(windy[2]).toBeLessThanOrEqual(4);
      expect(calm[1]).toBeGreaterThanOrEqual(7);
      expect(calm[1]).toBeLessThanOrEqual(8);
    }
    expect(gainF(['cloth-heavy', 'lights', 'lights-confirmed', 'tied'], 'windy')[1]).toBe(3);
  });

  it('counts one cover of several, and one soil of two', () => {
    expect(gainF(['cloth-light', 'cloth-heavy', 'sheet'])).toEqual(gainF(['cloth-heavy']));
    expect(gainF(['bare-soil', 'watered-soil'])).toEqual([0.2, 1, 2]);
  });

  it('caps the sum at 10 °F on calm and 5 °F on windy nights', () => {
    const all = [
      'cloth-heavy',
      'tied',
      'lights',
      'lights-confirmed',
      'watered-soil',
      'bare-soil',
      'plastic-house',
    ];
    expect(gainF(all)[2]).toBe(10);
    for (const ends of [gainF(all, 'windy'), gainF(all, 'windy', 'kill')])
      for (const end of ends) expect(end).toBeLessThanOrEqual(5);
  });

  it('gains nothing in wind from a cover that is not tied', () => {
    for (const { id } of MEASURES.filter(({ tieable }) => tieable)) {
      expect(gainF([id], 'windy')).toEqual([0, 0, 0]);
      expect(gainF([id, 'tied'], 'windy')[1]).toBeGreaterThan(0);
    }
  });

  it('saves the graft and nothing above it with banks and wraps', () => {
    for (const id of ['soil-bank', 'trunk-wrap', 'wrap-sprinkler']) {
      for (const level of ['fruit', 'leaf', 'wood'] as const)
        expect(gainF([id], 'calm', level)).toEqual([0, 0, 0]);
      expect(gainF([id], 'calm', 'kill')[1]).toBeGreaterThan(0);
    }
    expect(gainF(['soil-bank', 'cloth-heavy'], 'calm', 'leaf')).toEqual([6, 7, 8]);
  });

  it('moves no tree indoors that stands in the ground', () => {
    expect(() => coverGains(['garage'], { container: false })).toThrow(/pot/);
    expect(coverParts(['garage'], { container: false }).alone.kill.calm.centreC).toBe(0);
    expect(coverGains(['garage'], { container: true })).toEqual(coverGains(['garage']));
  });

  it('keeps what stands alone out of the sum', () => {
    const { air, alone } = coverParts(['soil-bank', 'cloth-light']);
    expect(endsF(air.kill.calm)).toEqual([2, 3, 4]);
    expect(endsF(alone.kill.calm)).toEqual([5, 10, 10]);
    expect(endsF(alone.wood.calm)).toEqual([0, 0, 0]);
    expect(gainF(['soil-bank', 'cloth-light'], 'calm', 'kill')).toEqual([5, 10, 10]);
  });

  it('refuses by throwing, and an unknown id by name', () => {
    expect(() => coverGains(['lights'])).toThrow(InputError);
    expect(() => coverGains(['tinfoil'])).toThrow(/"tinfoil"/);
    expect(coverGains([]).kill.calm.highC).toBe(0);
  });
});

const allowed = fc.subarray([...MEASURE_IDS, 'tied', 'lights-confirmed']).map(countingIds);

describe('properties of gains', () => {
  it('more cover never lowers a gain', () => {
    fc.assert(
      fc.property(allowed, fc.constantFrom(...MEASURE_IDS, 'tied', 'lights-confirmed'), (ids, more) => {
        const larger = [...ids, more];
        fc.pre(refusals(ids).length === 0 && refusals(larger).length === 0);
        const before = new Map(everyEnd(coverGains(ids)));
        for (const [where, gain] of everyEnd(coverGains(larger)))
          expect(gain, where).toBeGreaterThanOrEqual(before.get(where)! - 1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  it('wind never gains more than a calm night, and ends keep their order', () => {
    fc.assert(
      fc.property(allowed, (ids) => {
        const gains = coverGains(ids);
        for (const level of LEVELS) {
          for (const end of ENDS) expect(gains[level].windy[end]).toBeLessThanOrEqual(gains[level].calm[end]);
          for (const night of NIGHTS) {
            const { lowC, centreC, highC } = gains[level][night];
            expect(lowC).toBeGreaterThanOrEqual(0);
            expect(centreC).toBeGreaterThanOrEqual(lowC);
            expect(highC).toBeGreaterThanOrEqual(centreC);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('the order of the ids does not matter', () => {
    fc.assert(
      fc.property(allowed, (ids) => {
        expect(coverGains([...ids].reverse())).toEqual(coverGains(ids));
      }),
    );
  });

  it('any choice either gains or is refused with a sentence', () => {
    fc.assert(
      fc.property(fc.subarray([...ALL_CHOICES]), (ids) => {
        const reasons = refusals(ids);
        if (reasons.length === 0) expect(() => coverGains(ids)).not.toThrow();
        else {
          expect(() => coverGains(ids)).toThrow(reasons[0]);
          for (const reason of reasons) expect(reason).toMatch(/^[A-Z].{20,}\.$/s);
        }
      }),
      { numRuns: 1000 },
    );
  });
});

describe('measures', () => {
  it('gain between the ends of the handbook’s rows, calm at least as much as windy', () => {
    for (const measure of MEASURES) {
      expect(findMeasure(measure.id)).toBe(measure);
      expect(measure.cautions.length).toBeGreaterThan(0);
      expect(measure.sources.length).toBeGreaterThan(0);
      if (measure.tieable) expect(measure.group).toBe('cover');
    }
    expect(MEASURES.map(({ id }) => id)).toEqual([...MEASURE_IDS]);
  });

  it('has no heat lamp', () => {
    expect(MEASURES.filter(({ id, name }) => /lamp/i.test(id + name))).toEqual([]);
  });
});
