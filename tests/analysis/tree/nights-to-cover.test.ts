import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitC } from '../../../analysis/answer/level-answer.ts';
import { ACTION_MARGIN_C, coverNights } from '../../../analysis/cover/cover-nights.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';
import { meanHardeningOnColdNights } from '../../../analysis/tree/hardening-on-cold-nights.ts';
import { atEveryLevel } from '../../../analysis/tree/level-gains.ts';
import { coverIndex, nightsToCover } from '../../../analysis/tree/nights-to-cover.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { AGE_CLASS_FROM } from '../../../analysis/tree/winter-margins.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';
import { madeNights } from './made-nights.ts';
import { anyQuestion, anyStates, evenStates, STATIONS } from './margin-questions.ts';

const AGES = AGE_CLASS_FROM.length;

describe('nights to cover', () => {
  it('are those that the record of a cover tells, at every age, hardened and not', () => {
    fc.assert(
      fc.property(anyQuestion, fc.boolean(), (q, hardened) => {
        const { nights, winters } = STATIONS[q.hemisphere];
        const { type, tree, gains } = q;
        const hardening = hardened ? undefined : evenStates(nights, 0).hardening;
        const counts = nightsToCover(nights, winters, {
          ...q,
          spotGains: gains,
          withinC: ACTION_MARGIN_C,
          hardening,
        });
        AGE_CLASS_FROM.forEach((ageYears, ageClass) => {
          const state = { ...MATURE_TREE, ...tree, ageYears, hardened };
          const told = coverNights(nights, winters, {
            hours: type.thresholds.leaf.hours,
            limitC: limitC({ type, level: 'leaf', tree: state }),
            without: gains.leaf,
            withCover: gains.leaf,
          });
          const byWinter = new Map(told.winters.map(({ winter, toCover }) => [winter, toCover]));
          expect([...winters.winter].map((_, w) => counts[coverIndex(w, ageClass, false)])).toEqual(
            [...winters.winter].map((winter) => byWinter.get(winter) ?? 0),
          );
        });
      }),
      { numRuns: 40 },
    );
  });

  it('are those on which leaf or hanging fruit is in danger, for a tree with a crop', () => {
    fc.assert(
      fc.property(anyQuestion, (q) => {
        const { nights, winters } = STATIONS[q.hemisphere];
        const { type, tree, gains } = q;
        const ask = { spotGains: gains, withinC: ACTION_MARGIN_C };
        const always = nightsToCover(nights, winters, { ...q, ...ask, hangsUntil: null });
        const daysAt = (level: 'fruit' | 'leaf'): Set<number> => {
          const state = { ...MATURE_TREE, ...tree, ageYears: 10, hardened: true };
          const told = coverNights(nights, winters, {
            hours: type.thresholds[level].hours,
            limitC: limitC({ type, level, tree: state }),
            without: gains[level],
            withCover: gains[level],
          });
          return new Set(told.nights.map(({ day }) => day));
        };
        const days = new Set([...daysAt('fruit'), ...daysAt('leaf')]);
        [...winters.winter].forEach((winter, w) => {
          const own = [...nights.day].filter((day, i) => nights.winter[i] === winter && days.has(day));
          expect(always[coverIndex(w, 3, true)]).toBe(own.length);
        });
      }),
      { numRuns: 20 },
    );
  });

  it('are no fewer for a younger tree, nor when hardening counts night by night', () => {
    fc.assert(
      fc.property(anyQuestion, fc.integer(), (q, seed) => {
        const { nights, winters } = STATIONS[q.hemisphere];
        const ask = { ...q, spotGains: q.gains, withinC: ACTION_MARGIN_C };
        const plain = nightsToCover(nights, winters, ask);
        const soft = nightsToCover(nights, winters, { ...ask, hardening: anyStates(nights, seed).hardening });
        for (const counts of [plain, soft]) {
          expect(counts.some((count, i) => i % (2 * AGES) > 1 && count > counts[i - 2])).toBe(false);
          expect(counts.some((count, i) => i % 2 === 1 && count < counts[i - 1])).toBe(false);
        }
        expect(soft.some((count, i) => count < plain[i])).toBe(false);
      }),
      { numRuns: 40 },
    );
  });
});

describe('hardening on cold nights', () => {
  const type = findType('satsuma_owari')!; // leaf 20 °F: -6.67 °C, nights to -4.67 °C count
  const q = { type, tree: MATURE_TREE, gains: atEveryLevel(NO_GAINS) };
  const day = dayNumber(2021, 1, 1);
  const nights = madeNights([
    { day, level: -700 },
    { day: day + 1, level: -467 },
    { day: day + 2, level: -466 },
    { day: day + 3, level: 500 },
  ]);

  it('is the mean over nights that took the leaves or came within 2 °C of it', () => {
    const hardening = Float32Array.of(0.25, 0.75, 0, 0);
    expect(meanHardeningOnColdNights(nights, { hardening }, q)).toBe(0.5);
  });

  it('is unknown without such a night, and looks at the air with its gain', () => {
    const hardening = Float32Array.of(0.25, 0.75, 0, 0);
    const gains = atEveryLevel({ calmC: 1, windyC: 0 });
    expect(meanHardeningOnColdNights(nights, { hardening }, { ...q, gains })).toBe(0.25);
    const warm = atEveryLevel({ calmC: 9, windyC: 0 });
    expect(meanHardeningOnColdNights(nights, { hardening }, { ...q, gains: warm })).toBeNull();
  });
});
