import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { productLimit, riskSets, type WatchedSpan } from '../../../analysis/extremes/kaplan-meier.ts';
import reference from '../../reference/life/survival.json' with { type: 'json' };

const { made_by: _made_by, ...cases } = reference;

describe("against R's survival package (tests/reference/life/survival.R names the data sets)", () => {
  test.each(Object.entries(cases))('%s', (_name, { spans, times }) => {
    const watched = spans.map(([after, until, died]) => ({
      after: after!,
      until: until!,
      died: died === 1,
    }));
    const oldest = Math.max(...watched.map(({ until }) => until));
    const sets = riskSets(watched, oldest);
    const share = productLimit(sets);
    for (const [time, atRisk, deaths, survival] of times) {
      expect(sets.atRisk[time! - 1]).toBe(atRisk);
      expect(sets.deaths[time! - 1]).toBe(deaths);
      expect(share[time! - 1]).toBeCloseTo(survival!, 12);
    }
    // Every death is at a time that R names.
    const total = times.reduce((sum, [, , deaths]) => sum + deaths!, 0);
    expect(sets.deaths.reduce((sum, d) => sum + d, 0)).toBe(total);
  });

  test('the data sets have late entry, and watching that pauses', () => {
    expect(cases.heart_transplanted.spans.some(([after]) => after! > 0)).toBe(true);
    expect(cases.heart_paused.spans.length).toBeGreaterThan(cases.heart.spans.length);
  });
});

describe('properties', () => {
  const span = fc
    .record({ after: fc.nat(20), length: fc.integer({ min: 1, max: 20 }), died: fc.boolean() })
    .map(({ after, length, died }): WatchedSpan => ({ after, until: after + length, died }));

  test('shares fall from 1 towards 0', () => {
    fc.assert(
      fc.property(fc.array(span), fc.integer({ min: 1, max: 40 }), (spans, oldest) => {
        let before = 1;
        for (const share of productLimit(riskSets(spans, oldest))) {
          expect(share).toBeLessThanOrEqual(before);
          expect(share).toBeGreaterThanOrEqual(0);
          before = share;
        }
      }),
    );
  });

  test('followed from the start and to the end, it is the plain share living', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 31 }), { minLength: 1 }), (ages) => {
        // 31: outlives the oldest age.
        const spans = ages.map((age) => ({ after: 0, until: Math.min(age, 30), died: age <= 30 }));
        const share = productLimit(riskSets(spans, 30));
        share.forEach((s, a) => {
          expect(s).toBeCloseTo(ages.filter((age) => age > a + 1).length / ages.length, 10);
        });
      }),
    );
  });

  test('cutting a span in two where nothing happens changes nothing', () => {
    fc.assert(
      fc.property(fc.array(span, { minLength: 1 }), fc.nat(), (spans, seed) => {
        const cut = spans.flatMap((s, i) => {
          const at = s.after + ((seed + i) % (s.until - s.after));
          if (at === s.after) return [s];
          return [
            { ...s, until: at, died: false },
            { ...s, after: at },
          ];
        });
        expect(riskSets(cut, 25)).toEqual(riskSets(spans, 25));
      }),
    );
  });
});

test('an age that nobody is watched at leaves the share as it was', () => {
  const sets = riskSets(
    [
      { after: 0, until: 2, died: true },
      { after: 0, until: 2, died: false },
      { after: 4, until: 5, died: false },
    ],
    6,
  );
  expect([...sets.atRisk]).toEqual([2, 2, 0, 0, 1, 0]);
  expect([...productLimit(sets)]).toEqual([1, 0.5, 0.5, 0.5, 0.5, 0.5]);
  expect([...productLimit(riskSets([], 2))]).toEqual([1, 1]);
});
