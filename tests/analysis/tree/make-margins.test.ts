import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitC } from '../../../analysis/answer/level-answer.ts';
import { MISSING_HUNDREDTHS } from '../../../analysis/records/nights.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { LEVELS, type Level } from '../../../analysis/tree/levels.ts';
import { atEveryLevel } from '../../../analysis/tree/level-gains.ts';
import { makeMargins, type MarginQuestion } from '../../../analysis/tree/make-margins.ts';
import { MATURE_TREE, type TreeState } from '../../../analysis/tree/penalties.ts';
import {
  AGE_CLASS_FROM,
  isHit,
  LOSSES,
  marginIndex,
  type TreeInWinter,
  type WinterMargins,
} from '../../../analysis/tree/winter-margins.ts';
import { toHundredths } from '../../../analysis/units/temperature.ts';
import { hitNights, hitsByWinter } from '../../../analysis/winter/hit-nights.ts';
import { seasonDayOf } from '../../../analysis/winter/season-day.ts';
import { NO_GAINS, winterMinima } from '../../../analysis/winter/winter-minima.ts';
import { anyLevelGains, anyQuestion, anyStates, evenStates, STATIONS, TREES } from './margin-questions.ts';

const WOODY = ['leaf', 'wood', 'kill'] as const;
const MATURE: TreeInWinter = { reading: 'hardened', ageClass: 3, bearing: false };

function marginsOf(made: WinterMargins, tree: TreeInWinter, level: Level): number[] {
  const loss = LOSSES.indexOf(level);
  return [...made.winter].map((_, w) => made.margins[marginIndex(w, tree) + loss]);
}

/** Winters hit by the margins, and by counting nights. */
function hitWinters(made: WinterMargins, tree: TreeInWinter, level: Level): number[] {
  const margins = marginsOf(made, tree, level);
  return [...made.winter].filter((_, w) => isHit(margins[w]));
}

/** Limit and hours by which hits are counted for a type's level. */
function limitOf({ type, gains }: MarginQuestion, level: Level, tree: TreeState) {
  return { hours: type.thresholds[level].hours, limitC: limitC({ type, level, tree }), gains: gains[level] };
}

describe('margins are what counting says', () => {
  it('for a mature, hardened tree without a crop: the same winters, and how far below the limit to the hundredth', () => {
    for (const hemisphere of ['north', 'south'] as const) {
      const { nights, winters } = STATIONS[hemisphere];
      const seen = new Set<Level>();
      fc.assert(
        fc.property(anyLevelGains, fc.integer(), (gains, seed) => {
          for (const type of CITRUS_TYPES) {
            const q = { type, tree: MATURE_TREE, gains, hangsUntil: null, hemisphere };
            const made = makeMargins(nights, winters, anyStates(nights, seed), q);
            for (const level of LEVELS) {
              const tree = level === 'fruit' ? { ...MATURE, bearing: true } : MATURE;
              const limit = limitOf(q, level, MATURE_TREE);
              const counted = hitsByWinter(nights, winters, limit).map(({ winter }) => winter);
              expect(hitWinters(made, tree, level)).toEqual(counted);
              if (counted.length > 0) seen.add(level);
              const minima = winterMinima(winters, limit.hours, limit.gains);
              expect(marginsOf(made, tree, level)).toEqual(
                Array.from(minima, (minimum) => toHundredths(limit.limitC) - minimum),
              );
            }
          }
        }),
        { numRuns: 2 },
      );
      expect(seen.size).toBe(LEVELS.length);
    }
  });

  it('for every age, with and without a crop, hardened and not at all', () => {
    fc.assert(
      fc.property(anyQuestion, (any) => {
        const q = { ...any, hangsUntil: null };
        const { nights, winters } = STATIONS[q.hemisphere];
        const soft = makeMargins(nights, winters, evenStates(nights, 0), q);
        for (const { ageClass, bearing } of TREES.filter(({ reading }) => reading === 'hardened')) {
          for (const level of WOODY) {
            const tree = {
              ...MATURE_TREE,
              ...q.tree,
              ageYears: AGE_CLASS_FROM[ageClass],
              fruitLoad: bearing,
            };
            for (const hardened of [true, false]) {
              const reading = hardened ? 'hardened' : 'night_by_night';
              const counted = hitsByWinter(nights, winters, limitOf(q, level, { ...tree, hardened }));
              expect(hitWinters(soft, { reading, ageClass, bearing }, level)).toEqual(
                counted.map(({ winter }) => winter),
              );
            }
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  it('with a crop that is picked: the load and the fruit count on the nights it hangs', () => {
    fc.assert(
      fc.property(anyQuestion, fc.integer({ min: 100, max: 300 }), (any, hangsUntil) => {
        const q = { ...any, hangsUntil };
        const { nights, winters } = STATIONS[q.hemisphere];
        const made = makeMargins(nights, winters, evenStates(nights, 1), q);
        const hangs = ({ day }: { day: number }): boolean => seasonDayOf(day, q.hemisphere) <= hangsUntil;
        const of = (level: Level, fruitLoad: boolean) =>
          hitNights(nights, limitOf(q, level, { ...MATURE_TREE, ...q.tree, fruitLoad }));
        const labels = (hits: readonly { winter: number }[]): number[] =>
          [...new Set(hits.map(({ winter }) => winter))].sort((a, b) => a - b);
        const bearing = { ...MATURE, bearing: true };
        expect(hitWinters(made, bearing, 'fruit')).toEqual(labels(of('fruit', false).filter(hangs)));
        for (const level of WOODY) {
          const loaded = of(level, true).filter(hangs);
          const bare = of(level, false).filter((night) => !hangs(night));
          expect(hitWinters(made, bearing, level)).toEqual(labels([...loaded, ...bare]));
        }
      }),
      { numRuns: 60 },
    );
  });

  it('leaves out nights of winters that are not asked about, and winters without nights have no margin', () => {
    const { nights, winters } = STATIONS.north;
    const [type] = CITRUS_TYPES;
    const q: MarginQuestion = {
      type,
      tree: MATURE_TREE,
      gains: atEveryLevel(NO_GAINS),
      hangsUntil: null,
      hemisphere: 'north',
    };
    const all = makeMargins(nights, winters, evenStates(nights, 1), q);
    const some = makeMargins(
      nights,
      { winter: Int16Array.of(1900, 1975, 1980, 2100), complete: Uint8Array.of(1, 0, 1, 1) },
      evenStates(nights, 1),
      q,
    );
    const of = (label: number): number => marginsOf(all, MATURE, 'leaf')[[...all.winter].indexOf(label)];
    expect(marginsOf(some, MATURE, 'leaf')).toEqual([
      MISSING_HUNDREDTHS,
      of(1975),
      of(1980),
      MISSING_HUNDREDTHS,
    ]);
    expect([...some.complete]).toEqual([1, 0, 1, 1]);
    expect(isHit(MISSING_HUNDREDTHS, 5000)).toBe(false);
  });

  it('refuses hours that are not kept', () => {
    const { nights, winters } = STATIONS.north;
    const [type] = CITRUS_TYPES;
    const odd = { ...type, thresholds: { ...type.thresholds, wood: { ...type.thresholds.wood, hours: 7 } } };
    const q = {
      tree: MATURE_TREE,
      gains: atEveryLevel(NO_GAINS),
      hangsUntil: null,
      hemisphere: 'north' as const,
    };
    expect(() => makeMargins(nights, winters, evenStates(nights, 1), { ...q, type: odd })).toThrow(
      /not for 7/,
    );
  });
});
